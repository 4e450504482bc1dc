import { behindOpening } from '../../derived/behind-opening.ts';
import { neighbourName } from '../../derived/neighbours.ts';
import { openingMiddle } from '../../derived/wall-places.ts';
import type { Place } from '../finding.ts';
import { type Answer, defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, areTogether, groupName, perServedRoom, placeOfRoom } from '../served-rooms.ts';

interface Fault {
  readonly text: string;
  readonly cure: string;
  readonly severity?: 'warn';
  readonly place: Place;
}
type AskedRoom = Pick<ServedRoom, 'ref' | 'enclosure' | 'neighbours' | 'together' | 'sharedNetworks'>;

/** Another enclosure is fed by the same pipe, and nobody has said that both are discharged together. */
function ofNetworks({ enclosure, sharedNetworks, ...room }: AskedRoom): Fault[] {
  return sharedNetworks
    .filter((other) => !areTogether(other, enclosure))
    .map(({ network, enclosure: other }) => ({
      text: `“${network}” also blows into ${other}, but the two are not said to be discharged together.`,
      cure: `Enter the same name under “Discharged together with” at this room and at ${other}, or give each its own pipe.`,
      place: placeOfRoom({ enclosure, ...room }),
    }));
}

/** Openings that stay open toward an enclosure that is not discharged with this one. */
function ofOpenings({ ref, enclosure, neighbours }: AskedRoom): Fault[] {
  return Object.values(enclosure.openings).flatMap((opening) => {
    if (opening.closes !== false || opening.kind === 'relief-vent' || opening.kind === 'penetration') return [];
    const other = behindOpening(enclosure, opening, neighbours).find(({ beyond }) => beyond.kind === 'enclosure' && !areTogether(beyond.enclosure, enclosure));
    const at = openingMiddle(enclosure, opening);
    if (!other || !at) return [];
    return [
      {
        text: `“${opening.name}” stays open to ${neighbourName(other)}, which is not discharged together with this room.`,
        cure: `Make it close, or discharge both together: enter the same name at both rooms.`,
        place: { level: ref.level, at: [at] },
      },
    ];
  });
}

/** The void over a ceiling that lets gas through and whose walls end below the slab; what is missing where that cannot be told. */
function ofVoid({ enclosure, ...room }: AskedRoom): Fault[] | 'not-known' {
  const { ceilingVoid, ceiling, outline, holes } = enclosure;
  if (!ceilingVoid || ceilingVoid.isProtected) return [];
  const place = { ...placeOfRoom({ enclosure, ...room }), areas: [[placeOfRoom({ enclosure, ...room }).at], ...holes.map((hole) => [hole.map(({ x, y }) => ({ x, y }))])] };
  if (ceiling.make === 'open') return [{ text: 'Its ceiling is open: the void over it fills with gas as well, and is not protected.', cure: 'Protect the void over the ceiling, or close the ceiling.', place }];
  const isLow = [outline, ...holes].flat().some(({ wall }) => wall.reaches === 'ceiling');
  if (!isLow || ceiling.make === 'hard') return [];
  if (ceiling.make === 'unknown') return 'not-known';
  return [{ text: 'Walls end at its ceiling of tiles: through the void over it, which is not protected, the room is one with what lies beside.', cure: 'Build the walls up to the slab, protect the void, or hang a ceiling that is closed and held down.', place }];
}

/** A name for discharging together that no other enclosure has. */
function ofGroup({ enclosure, together, ...room }: AskedRoom): Fault[] {
  if (groupName(enclosure) === '' || together.length > 0) return [];
  return [{ severity: 'warn', text: `Is said to be discharged together under “${enclosure.dischargedWith.trim()}”, but no other room has that name.`, cure: 'Enter the same name at the other room, or leave it blank.', place: placeOfRoom({ enclosure, ...room }) }];
}

/**
 * E15: no unprotected space is one with the room when it is discharged, and rooms that share pipe or an open way are
 * discharged together.
 * Openings that lead elsewhere are E12's, voids that nobody protects or leaves out are N16's and N17's.
 * Not checked: what a ceiling is made of under a void beside walls that end at it.
 */
export const e15ConnectedSpace = defineRule<AskedRoom>({
  id: 'E15',
  title: 'Connected spaces',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'no opening stays open and no ceiling lets gas through to a space that is not discharged together with the room; rooms on one network are discharged together',
    source: 'ISO 14520-1 and NFPA 2001: spaces in open connection are protected together or closed off (memory)',
  },
  subjects: perServedRoom(({ ref, name, enclosure, neighbours, together, sharedNetworks }) => [{ subject: { ref, enclosure, neighbours, together, sharedNetworks }, ref, name }]),
  check(asked): Answer {
    const overhead = ofVoid(asked);
    const faults = [...ofNetworks(asked), ...ofOpenings(asked), ...(overhead === 'not-known' ? [] : overhead), ...ofGroup(asked)];
    const [first] = faults;
    const { together, enclosure } = asked;
    const inputs = [{ label: 'Discharged together with', value: together.length > 0 ? together.join(', ') : groupName(enclosure) ? `“${enclosure.dischargedWith.trim()}”, nobody else` : 'no other room' }];
    const figures = { kind: 'judged', measured: faults.length, limit: 0, limitSource: 'common practice', inputs } as const;
    if (first) {
      const severity = faults.every((fault) => fault.severity === 'warn') ? { severity: 'warn' as const } : {};
      return { ...figures, ...severity, isKept: false, margin: -faults.length, text: faults.map(({ text }) => text).join(' '), place: first.place, cure: { kind: 'advice', text: first.cure } };
    }
    if (overhead === 'not-known') return notChecked('walls end at its ceiling under a void that is not protected, and what the ceiling is made of is not said.', placeOfRoom(asked));
    const how = together.length > 0 ? `Is discharged together with ${together.join(', ')}.` : 'Is discharged by itself; no space that is not protected is in open connection with it.';
    return { ...figures, isKept: true, margin: 0, text: how, place: placeOfRoom(asked) };
  },
});
