import { behindOpening } from '../../derived/behind-opening.ts';
import { type Neighbour, neighbourName } from '../../derived/neighbours.ts';
import type { Adjoining } from '../../model/plan.ts';
import { type Asked, defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, areTogether, perServedRoom, placeOfRoom } from '../served-rooms.ts';
import type { Place } from '../finding.ts';

/** An adjoining space of a room, or its protected neighbours, for which one sentence at the room speaks; none where nothing is drawn around it. */
type AskedSide = Pick<ServedRoom, 'ref' | 'enclosure'> &
  (
    | { readonly kind: 'space'; readonly neighbour: Neighbour; readonly space: Adjoining; /** Names of openings that do not close and lead there. */ readonly open: readonly string[] }
    | { readonly kind: 'rooms'; readonly neighbours: readonly Neighbour[] }
  );

const GAS_WORDS: Readonly<Record<Exclude<Adjoining['gas'], 'not-assessed'>, string>> = { 'does-not-reach': 'gas does not reach it', alarmed: 'an alarm warns people in it', ventilated: 'it is ventilated' };
const SIDE_WORDS: Readonly<Record<Neighbour['side'], string>> = { beside: 'beside', below: 'under', above: 'over' };

/** The adjoining spaces that touch a room, but outdoors, and the room itself for its neighbours that are not discharged with it, or where nothing is drawn around it. */
function sidesOf({ ref, name, enclosure, neighbours }: ServedRoom): Asked<AskedSide>[] {
  const rooms = neighbours.filter(({ beyond }) => beyond.kind === 'enclosure' && !areTogether(beyond.enclosure, enclosure));
  const spaces = neighbours.flatMap((neighbour): Asked<AskedSide>[] => {
    const { beyond, side } = neighbour;
    if (beyond.kind === 'enclosure' || beyond.adjoining.kind === 'outdoors') return [];
    const open = Object.values(enclosure.openings).filter((opening) => opening.closes === false && behindOpening(enclosure, opening, [neighbour]).length > 0);
    const subject = { kind: 'space' as const, ref, enclosure, neighbour, space: beyond.adjoining, open: open.map((opening) => opening.name) };
    return [{ subject, ref: beyond.ref, name: `${neighbourName(neighbour)}, ${SIDE_WORDS[side]} ${name}` }];
  });
  return rooms.length > 0 || neighbours.length === 0 ? [...spaces, { subject: { kind: 'rooms', ref, enclosure, neighbours: rooms }, ref, name }] : spaces;
}

/** Low places hold no nitrogen by its weight, but nobody would notice it there either. */
const isLow = ({ beyond, side }: Neighbour): boolean => side === 'below' || (beyond.kind === 'adjoining' && (beyond.adjoining.kind === 'pit' || beyond.adjoining.floor_m < 0));
const LOW = ' Nitrogen mixed with air is a little lighter than air: it does not gather in low places by its weight, but it fills them when it is blown there.';

function placeOf(side: AskedSide): Place {
  const { ref } = side;
  if (side.kind === 'space') return { level: ref.level, at: side.space.outline, areas: [[side.space.outline]] };
  const shared = side.neighbours.flatMap(({ stretches }) => stretches.flatMap(({ stretch }) => [stretch.a, stretch.b]));
  return shared.length > 0 ? { level: ref.level, at: shared } : placeOfRoom(side);
}

/** "Room 1", "Room 1 and Room 2", "Room 1, Room 2 and Room 3". */
function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

/**
 * S9: of every space beside, under and over the room somebody has said what gas does that drifts into it.
 * Another protected room that is not discharged together counts as such a space; the words at the room speak for it.
 * Measure: none. Not checked: nobody has assessed it, or nothing that touches the room is drawn or told in words.
 */
export const s09AdjacentSpaces = defineRule<AskedSide>({
  id: 'S9',
  title: 'Adjacent spaces',
  severity: 'warn',
  measure: 'count',
  basis: {
    formula: 'each space that touches the room: gas does not reach it, or an alarm warns people in it, or it is ventilated',
    source: 'common practice; NFPA 2001 and ISO 14520-1 ask to consider gas that leaks into adjacent spaces (memory)',
    caution: 'Nitrogen has no smell. A space that looks safe on the plan is measured after the first discharge.',
  },
  subjects: perServedRoom(sidesOf),
  check(side) {
    const { enclosure } = side;
    const place = placeOf(side);
    const words = enclosure.adjacent.trim();
    const inputs = words ? [{ label: 'What lies on the other sides', value: words }] : [];
    if (side.kind === 'rooms') {
      const { neighbours } = side;
      const low = neighbours.some(isLow) ? LOW : '';
      const names = listed([...new Set(neighbours.map(neighbourName))]);
      if (neighbours.length === 0) {
        if (words) return { kind: 'judged', isKept: true, text: 'Nothing that touches it is drawn; what lies on the other sides is told in words.', inputs, place };
        return notChecked('nobody has said what lies beside, under and over the room. Draw the adjoining spaces, or tell it in words.', place);
      }
      if (words) return { kind: 'judged', isKept: true, text: `Touches ${names}; what gas does that drifts there is told in words.${low}`, inputs, place };
      return notChecked(`nobody has said what gas does that drifts to ${names}; ${neighbours.length === 1 ? 'it is' : 'they are'} not discharged together with this room.${low}`, place);
    }
    const { neighbour, open, space } = side;
    const low = isLow(neighbour) ? LOW : '';
    const { gas } = space;
    if (gas === 'not-assessed') return notChecked(`nobody has assessed what gas does that drifts into it from ${enclosure.name}.${low}`, place);
    if (gas === 'does-not-reach' && open.length > 0) {
      return {
        kind: 'judged',
        isKept: false,
        text: `Is said to be out of reach of the gas, but “${open[0]}” of ${enclosure.name} leads to it and does not close.${low}`,
        inputs,
        place,
        cure: { kind: 'advice', text: 'Make the opening close, or warn or ventilate the space.' },
      };
    }
    return { kind: 'judged', isKept: true, text: `Is assessed: ${GAS_WORDS[gas]}.${low}`, inputs, place };
  },
});
