import { behindOpening } from '../../derived/behind-opening.ts';
import { type Neighbour, neighbourName } from '../../derived/neighbours.ts';
import type { Adjoining } from '../../model/plan.ts';
import { type Asked, defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, areTogether, perServedRoom, placeOfRoom } from '../served-rooms.ts';
import type { Place } from '../finding.ts';

type AskedSide = Pick<ServedRoom, 'ref' | 'enclosure'> & {
  /** undefined: the room itself, of which nothing that touches it is drawn. */
  readonly neighbour: Neighbour | undefined;
  /** Names of openings that do not close and lead there. */
  readonly open: readonly string[];
};

const GAS_WORDS: Readonly<Record<Exclude<Adjoining['gas'], 'not-assessed'>, string>> = { 'does-not-reach': 'gas does not reach it', alarmed: 'an alarm warns people in it', ventilated: 'it is ventilated' };
const SIDE_WORDS: Readonly<Record<Neighbour['side'], string>> = { beside: 'beside it', below: 'under it', above: 'over it' };

const asked = (neighbour: Neighbour): boolean => neighbour.beyond.kind === 'enclosure' || neighbour.beyond.adjoining.kind !== 'outdoors';

/** Every space that touches a room, but outdoors and rooms that are discharged with it; the room alone where none is drawn. */
function sidesOf({ ref, name, enclosure, neighbours }: ServedRoom): Asked<AskedSide>[] {
  const about = neighbours.filter((each) => asked(each) && !(each.beyond.kind === 'enclosure' && areTogether(each.beyond.enclosure, enclosure)));
  if (neighbours.length === 0) return [{ subject: { ref, enclosure, neighbour: undefined, open: [] }, ref, name }];
  return about.map((neighbour) => {
    const open = Object.values(enclosure.openings).filter((opening) => opening.closes === false && behindOpening(enclosure, opening, [neighbour]).length > 0);
    return {
      subject: { ref, enclosure, neighbour, open: open.map((opening) => opening.name) },
      ref: neighbour.beyond.ref,
      name: `${neighbourName(neighbour)}, ${SIDE_WORDS[neighbour.side].replace('it', name)}`,
    };
  });
}

/** Low places hold no nitrogen by its weight, but nobody would notice it there either. */
const isLow = ({ beyond, side }: Neighbour): boolean => side === 'below' || (beyond.kind === 'adjoining' && (beyond.adjoining.kind === 'pit' || beyond.adjoining.floor_m < 0));
const LOW = ' Nitrogen mixed with air is a little lighter than air: it does not gather in low places by its weight, but it fills them when it is blown there.';

function placeOf({ neighbour, ref, enclosure }: AskedSide): Place {
  if (!neighbour) return placeOfRoom({ ref, enclosure });
  const shared = neighbour.stretches.flatMap(({ stretch }) => [stretch.a, stretch.b]);
  if (neighbour.beyond.kind === 'adjoining') return { level: neighbour.beyond.ref.level, at: neighbour.beyond.adjoining.outline, areas: [[neighbour.beyond.adjoining.outline]] };
  return shared.length > 0 ? { level: ref.level, at: shared } : placeOfRoom({ ref, enclosure });
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
    const { neighbour, enclosure, open } = side;
    const place = placeOf(side);
    const words = enclosure.adjacent.trim();
    const inputs = words ? [{ label: 'What lies on the other sides', value: words }] : [];
    if (!neighbour) {
      return words ? { kind: 'judged', isKept: true, text: 'Nothing that touches it is drawn; what lies on the other sides is told in words.', inputs, place } : notChecked('nobody has said what lies beside, under and over the room. Draw the adjoining spaces, or tell it in words.', place);
    }
    const low = isLow(neighbour) ? LOW : '';
    if (neighbour.beyond.kind === 'enclosure') {
      if (words) return { kind: 'judged', isKept: true, text: `Is protected by itself; what gas does that drifts into it is told in words at ${enclosure.name}.${low}`, inputs, place };
      return notChecked(`nobody has said at ${enclosure.name} what gas does that drifts over; it is not discharged together with it.${low}`, place);
    }
    const { gas } = neighbour.beyond.adjoining;
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
