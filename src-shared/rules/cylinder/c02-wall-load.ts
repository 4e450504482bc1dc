import type { MountSums } from '../../calculations/design/design.ts';
import { wallLoadBasis } from '../../calculations/formulas/wall-load.ts';
import { type Member, placeOn } from '../design-subjects.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { cylinderAt, wallMountSubjects } from './wall-mounts.ts';

/**
 * C2: the wall behind a cylinder is declared load-bearing and bears it.
 * Measure: filled weight times the load factor of the basis of design [N].
 * Limit: weight that the wall was declared to bear at the rail of one cylinder.
 * Not checked: the filled mass is blank, or nobody declared what the wall bears.
 */
export const c02WallLoad = defineRule<Member<MountSums>>({
  id: 'C2',
  title: 'Wall behind cylinder',
  severity: 'stop',
  measure: 'force',
  basis: { formula: `wall load-bearing, and load ≤ its capacity; ${wallLoadBasis.formula}`, source: wallLoadBasis.source, caution: wallLoadBasis.caution },
  limitKeys: ['filledMass_kg'],
  subjects: wallMountSubjects,
  check(subject, { say }) {
    const { network, member } = subject;
    if (!member.isKnown) return notChecked(member.because);
    const { wall, isLoadBearing, capacity_N, load_N, factor } = member.sums;
    const place = placeOn(network, cylinderAt(subject));
    const fault = (text: string) => ({ kind: 'judged', isKept: false, measured: load_N, text: `${text} Stand it on a floor frame.`, place, cure: floorFrame } as const);
    if (!wall) return fault('No wall is near behind it that could carry it.');
    if (isLoadBearing === false) return fault('The wall behind it is not load-bearing.');
    const load = `It puts ${say.quantity(load_N, 'force')} on the wall (its filled weight × ${factor})`;
    if (isLoadBearing === null) return notChecked(`nobody has declared whether the wall behind it is load-bearing. ${load}.`, place);
    if (capacity_N === null) return notChecked(`nobody has declared what the wall behind it bears. ${load}.`, place);
    const figures = atMost(load_N, { value: capacity_N, source: 'wall, as declared on the plan' }, slackOf(capacity_N));
    const { value: puts, limit: bears } = say.quantityAgainst(load_N, capacity_N, 'force');
    const text = `Puts ${puts} on the wall (its filled weight × ${factor}); the wall bears`;
    return {
      ...figures,
      text: figures.isKept ? `${text} ${bears}.` : `${text} only ${bears}. Stand it on a floor frame.`,
      place,
      cure: figures.isKept ? undefined : floorFrame,
    };
  },
});

const floorFrame = { kind: 'advice', text: 'Stand the cylinder on a floor frame, or have the wall strengthened.' } as const;
