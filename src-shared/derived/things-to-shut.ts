import { isInsideRegion } from '../geometry/inside.ts';
import type { Enclosure, RefOf, Shutdown } from '../model/plan.ts';
import { thingName } from '../model/thing-name.ts';
import type { DerivedLevel } from './derived.ts';
import { ductsThrough } from './duct-crossings.ts';

/** Something drawn that a row of the release matrix of an enclosure may shut. */
export interface ThingToShut {
  readonly ref: RefOf<'opening'> | RefOf<'obstruction'> | RefOf<'device'>;
  /** As the user knows it: "Damper D1". */
  readonly name: string;
  /** What a row for it shuts. */
  readonly kind: Shutdown['kind'];
  /** It must be shut, and no row names it. */
  readonly isWanting: boolean;
}

/**
 * What can be shut around an enclosure: its dampers and those of ducts that go through its walls, the diffusers in it, its
 * doors and those ducts. A damper is wanting while no row names it or its duct, a diffuser while none names it and no row stops a
 * fan that is not drawn.
 */
export function thingsToShut(enclosure: Enclosure, { level, spaces }: DerivedLevel): ThingToShut[] {
  const rows = Object.values(enclosure.shutdowns);
  const named = new Set(rows.map(({ target }) => target));
  const hasFan = rows.some(({ kind, target }) => kind === 'fan' && target === null);
  const own = spaces.filter(({ enclosureRef }) => enclosureRef.id === enclosure.id);
  const nameOf = (ref: ThingToShut['ref']): string => thingName({ levels: { [level.id]: level }, networks: {} }, ref);
  const thing = (ref: ThingToShut['ref'], kind: Shutdown['kind'], isWanting: boolean): ThingToShut => ({ ref, name: nameOf(ref), kind, isWanting });
  const ducts = ductsThrough(own, level).map(({ duct, crossings }) => ({ duct, dampers: crossings.flatMap(({ dampers }) => dampers) }));
  const viaDuct = new Map(ducts.flatMap(({ duct, dampers }) => dampers.map(({ ref }) => [ref.id, { ref, isNamed: named.has(duct.ref.id) }] as const)));
  const openings = Object.values(enclosure.openings).map((opening) => ({ opening, ref: { kind: 'opening', level: level.id, enclosure: enclosure.id, id: opening.id } as const }));
  const dampers = new Map([...openings.flatMap(({ opening, ref }) => (opening.kind === 'damper' ? [[opening.id, { ref, isNamed: false }] as const] : [])), ...viaDuct]);
  const [room] = own;
  return [
    ...[...dampers].map(([id, { ref, isNamed }]) => thing(ref, 'damper', !isNamed && !named.has(id))),
    ...Object.values(level.devices).flatMap(({ kind, id, at }) =>
      kind === 'diffuser' && room && isInsideRegion(at, room.outline, room.holes) ? [thing({ kind: 'device', level: level.id, id }, 'fan', !hasFan && !named.has(id))] : [],
    ),
    ...openings.flatMap(({ opening, ref }) => (opening.kind === 'door' ? [thing(ref, 'door', false)] : [])),
    ...ducts.map(({ duct }) => thing(duct.ref, 'damper', false)),
  ];
}
