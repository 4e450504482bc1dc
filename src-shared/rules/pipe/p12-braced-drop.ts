import type { DerivedNetwork, DerivedPipe } from '../../derived/derived.ts';
import { flowOrderOf } from '../../derived/flow-order.ts';
import { placedSupportsOf } from '../../derived/placed-supports.ts';
import type { PlanPoint3 } from '../../geometry/point.ts';
import { along3 } from '../../geometry/segment3.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';

/** A falling pipe up to this long needs no support of its own [m]: 2 ft, common practice. */
const FREE_DROP_m = 0.6096;
const lengthOf = (drop: readonly DerivedPipe[]): number => drop.reduce((sum, { length_m }) => sum + length_m, 0);

/** Middle of the longest pipe of a drop. */
function middleOf(drop: readonly DerivedPipe[]): PlanPoint3[] {
  const [longest] = [...drop].sort((a, b) => b.length_m - a.length_m);
  return longest ? [along3({ a: longest.from, b: longest.to }, 1 / 2)] : [];
}

/**
 * P12: a long drop is held by a support on it, so that it does not swing.
 * Measure: longest falling pipe without a support on it [m]. Limit: 2 ft (0.610 m).
 * Not checked: no pipe is drawn yet, or there is a longer drop and no support at all is drawn.
 */
export const p12BracedDrop = defineRule<DerivedNetwork>({
  id: 'P12',
  title: 'Drop leg held',
  severity: 'warn',
  measure: 'length',
  basis: { formula: 'length of every falling pipe without a support on it ≤ 2 ft (0.610 m)', source: 'common practice', caution: 'The greatest rise or fall that the manual allows is not judged here.' },
  subjects: networkSubjects,
  check(network, { say }) {
    if (network.pipes.length === 0) return notChecked('no pipe is drawn yet.');
    const supports = placedSupportsOf(network);
    const held = new Set(supports.flatMap(({ pipe }) => pipe?.pipe.id ?? []));
    const bare = flowOrderOf(network).drops.filter((drop) => !drop.some(({ pipe }) => held.has(pipe.id)));
    const [longest] = [...bare].sort((a, b) => lengthOf(b) - lengthOf(a));
    if (!longest) return { kind: 'judged', isKept: true, text: 'Every falling pipe has a support on it, or none falls.' };
    const figures = atMost(lengthOf(longest), { value: FREE_DROP_m, source: 'common practice' }, LENGTH_SLACK_m);
    const { value: long, limit: allowed } = say.against(lengthOf(longest), FREE_DROP_m);
    const tooLong = bare.filter((drop) => !(FREE_DROP_m - lengthOf(drop) >= -LENGTH_SLACK_m));
    const at = (figures.isKept ? [longest] : tooLong).flatMap((drop) => drop.flatMap(({ from, to }) => [from, to]));
    const place = { level: network.level.id, at, heights: at };
    if (figures.isKept) return { ...figures, text: `No falling pipe without a support is longer than ${long}; ${allowed} is allowed.`, place };
    if (supports.length === 0) return notChecked('no support is drawn; place them by the table.', place);
    return {
      ...figures,
      text: `${tooLong.length === 1 ? 'A falling pipe has' : `${tooLong.length} falling pipes have`} no support: ${long} where ${allowed} is allowed. Add one.`,
      place,
      cure: { kind: 'add-supports', text: 'Add a rigid support on each drop', network: network.ref.id, places: tooLong.flatMap(middleOf) },
    };
  },
});
