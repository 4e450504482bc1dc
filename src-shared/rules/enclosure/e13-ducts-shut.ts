import { type Damper, type DuctCrossing, ductsThrough } from '../../derived/duct-crossings.ts';
import type { Solid } from '../../derived/derived.ts';
import { devicesOfKind } from '../../derived/devices-by-kind.ts';
import { spacesOfEnclosure } from '../../derived/spaces-of-enclosure.ts';
import { isInsideRegion } from '../../geometry/inside.ts';
import { midpoint } from '../../geometry/point.ts';
import type { Device, Enclosure, RefOf, Shutdown } from '../../model/plan.ts';
import { thingName } from '../../model/thing-name.ts';
import type { Cure, Place } from '../finding.ts';
import { type Answer, type Asked, defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, perServedRoom, placeOfRoom } from '../served-rooms.ts';

interface Common {
  readonly room: RefOf<'enclosure'>;
  readonly enclosure: Enclosure;
  readonly place: Place;
}
type AskedAir = Common &
  (
    | { readonly kind: 'none' }
    | { readonly kind: 'duct'; readonly duct: Solid; readonly crossings: readonly DuctCrossing[] }
    | { readonly kind: 'damper'; readonly damper: Damper }
    | { readonly kind: 'diffuser'; readonly device: Device }
    | { readonly kind: 'row'; readonly row: Shutdown }
  );

const rowsFor = ({ shutdowns }: Enclosure, ...targets: readonly string[]): Shutdown[] => Object.values(shutdowns).filter(({ target }) => target !== null && targets.includes(target));
const rowName = ({ name, kind }: Shutdown): string => (name.trim() ? `“${name.trim()}”` : `a ${kind}`);

/** A row that shuts or stops a thing at the first detector, for the room's release matrix. */
const addRow = (room: RefOf<'enclosure'>, name: string, kind: Shutdown['kind'], target: string): Cure => ({
  kind: 'add-shutdowns',
  text: `Add a row for “${name}” to the release matrix`,
  enclosure: room,
  rows: [{ name, kind, target, on: 'first-detector' }],
});

/** Ducts, dampers and diffusers of a room, and rows of its release matrix whose thing has gone; the room itself where there is none. */
function askedOf(room: ServedRoom): Asked<AskedAir>[] {
  const { ref, name, enclosure, on } = room;
  const { level } = on;
  const spaces = spacesOfEnclosure(on.spaces, ref.id);
  const named = (at: Parameters<typeof thingName>[1]): string => `${thingName({ levels: { [level.id]: level }, networks: {} }, at)}, ${name}`;
  const ducts = ductsThrough(spaces, level).map(({ duct, crossings }): Asked<AskedAir> => {
    const place = { level: level.id, at: crossings.map(({ at }) => midpoint(at.a, at.b)), areas: [[duct.footprint]] };
    return { subject: { kind: 'duct', room: ref, enclosure, place, duct, crossings }, ref: duct.ref, name: named(duct.ref) };
  });
  const inDucts = new Set(ducts.flatMap(({ subject }) => (subject.kind === 'duct' ? subject.crossings.flatMap(({ dampers }) => dampers.map((damper) => damper.ref.id)) : [])));
  const dampers = Object.values(enclosure.openings)
    .filter(({ kind, id }) => kind === 'damper' && !inDucts.has(id))
    .map((opening): Asked<AskedAir> => {
      const at = { kind: 'opening', level: level.id, enclosure: ref.id, id: opening.id } as const;
      return { subject: { kind: 'damper', room: ref, enclosure, place: placeOfRoom(room), damper: { ref: at, opening } }, ref: at, name: named(at) };
    });
  const [space] = spaces;
  const diffusers = devicesOfKind(level, 'diffuser')
    .filter((device) => space !== undefined && isInsideRegion(device.at, space.outline, space.holes))
    .map((device): Asked<AskedAir> => {
      const at = { kind: 'device', level: level.id, id: device.id } as const;
      return { subject: { kind: 'diffuser', room: ref, enclosure, place: { level: level.id, at: [device.at] }, device }, ref: at, name: named(at) };
    });
  const isThere = (id: string): boolean => Object.hasOwn(level.obstructions, id) || Object.hasOwn(level.devices, id) || Object.values(level.enclosures).some(({ openings }) => Object.hasOwn(openings, id));
  const lost = Object.values(enclosure.shutdowns)
    .filter(({ target }) => target !== null && !isThere(target))
    .map((row): Asked<AskedAir> => ({ subject: { kind: 'row', room: ref, enclosure, place: placeOfRoom(room), row }, ref, name: `${name}, ${rowName(row)} of the release matrix` }));
  const all = [...ducts, ...dampers, ...diffusers, ...lost];
  return all.length > 0 ? all : [{ subject: { kind: 'none', room: ref, enclosure, place: placeOfRoom(room) }, ref, name }];
}

/** A duct at the first place where something is wanting. */
function ductAnswer({ duct, crossings, room, enclosure, place }: Extract<AskedAir, { kind: 'duct' }>): Answer {
  const many = crossings.length === 1 ? '' : ` at one of ${crossings.length} places`;
  const [bare] = crossings.filter(({ dampers }) => dampers.length === 0);
  if (bare) {
    return {
      kind: 'judged',
      isKept: false,
      text: `Goes through a wall of the room${many} without a damper: gas would leave by it.`,
      place: { ...place, at: [midpoint(bare.at.a, bare.at.b)] },
      cure: { kind: 'advice', text: 'Draw a damper in the wall where the duct goes through, and add a row for it to the release matrix.' },
    };
  }
  const dampers = crossings.flatMap((each) => each.dampers);
  const open = dampers.find(({ opening }) => opening.closes === false);
  if (open) return { kind: 'judged', isKept: false, text: `Its damper “${open.opening.name}” does not close.`, place, cure: { kind: 'advice', text: 'Take a damper that closes on the signal of the panel.' } };
  const unknown = dampers.find(({ opening }) => opening.closes === null);
  if (unknown) return notChecked(`nobody has said whether its damper “${unknown.opening.name}” closes.`, place);
  const unlisted = crossings.find((each) => rowsFor(enclosure, duct.ref.id, ...each.dampers.map(({ ref }) => ref.id)).length === 0);
  if (unlisted) {
    const [damper] = unlisted.dampers;
    const cure = damper && addRow(room, damper.opening.name || 'Damper', 'damper', damper.ref.id);
    return { kind: 'judged', isKept: false, text: 'Has a damper, but no row of the release matrix of the room shuts it.', place, cure };
  }
  const rows = crossings.flatMap((each) => rowsFor(enclosure, duct.ref.id, ...each.dampers.map(({ ref }) => ref.id)));
  return { kind: 'judged', isKept: true, text: `Is shut by ${rows[0] ? rowName(rows[0]) : 'its row'} of the release matrix.`, place };
}

/**
 * E13: every duct that goes through a wall of the room is shut by a damper there, every damper and every diffuser by a row
 * of the release matrix.
 * A fan that is not drawn counts for every diffuser of the room.
 * Not checked: nobody has said whether a damper closes.
 */
export const e13DuctsShut = defineRule<AskedAir>({
  id: 'E13',
  title: 'Ducts shut',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'each duct through a wall: a damper there that closes, and a row of the release matrix; each diffuser: a row that stops its fan or shuts it',
    source: 'NFPA 2001 and ISO 14520-1: ventilation is shut down and dampers close before or with the discharge (memory)',
    caution: 'Only ducts that are drawn are asked. Look above the ceiling and under the floor.',
  },
  subjects: perServedRoom(askedOf),
  check(asked) {
    const { room, enclosure, place } = asked;
    const inputs = [{ label: 'Rows of the release matrix', value: String(Object.keys(enclosure.shutdowns).length) }];
    const judged = (isKept: boolean, text: string, cure?: Cure): Answer => ({ kind: 'judged', isKept, text, inputs, place, cure });
    switch (asked.kind) {
      case 'none':
        return judged(true, 'No duct goes through its walls, and no damper or diffuser is drawn in it.');
      case 'duct': {
        const answer = ductAnswer(asked);
        return answer.kind === 'judged' ? { ...answer, inputs } : answer;
      }
      case 'damper': {
        const [row] = rowsFor(enclosure, asked.damper.ref.id);
        return row ? judged(true, `Is shut by ${rowName(row)} of the release matrix.`) : judged(false, 'No row of the release matrix of the room shuts it.', addRow(room, asked.damper.opening.name || 'Damper', 'damper', asked.damper.ref.id));
      }
      case 'diffuser': {
        const [row] = [...rowsFor(enclosure, asked.device.id).filter(({ kind }) => kind === 'fan' || kind === 'damper'), ...Object.values(enclosure.shutdowns).filter(({ kind, target }) => kind === 'fan' && target === null)];
        return row ? judged(true, `Is stopped by ${rowName(row)} of the release matrix.`) : judged(false, 'No row of the release matrix of the room stops its fan or shuts it: air would carry the gas away.', addRow(room, `Fan of ${asked.device.name || 'a diffuser'}`, 'fan', asked.device.id));
      }
      case 'row':
        return { kind: 'judged', isKept: false, text: 'Shuts something that is no longer drawn. Say anew what it shuts, or take it out.', inputs, place, cure: { kind: 'advice', text: 'Say anew what the row shuts, or take it out.' } };
    }
  },
});
