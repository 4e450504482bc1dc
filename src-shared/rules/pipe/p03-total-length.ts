import type { DerivedNetwork } from '../../derived/derived.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';

/**
 * P3: all pipe of a network together is short enough.
 * Measure: total length in space [m].
 * Limit: total pipe length, from the unit profile.
 * Not checked: nothing is drawn yet, or the limit is blank.
 */
export const p03TotalLength = defineRule<DerivedNetwork>({
  id: 'P3',
  title: 'Total length',
  severity: 'stop',
  measure: 'length',
  basis: { formula: 'sum of all pipe lengths in space ≤ limit', source: 'unit profile' },
  limitKeys: ['totalPipeLength_m'],
  subjects: networkSubjects,
  check({ totalLength_m, pipes, profile, level }, { say }) {
    const { limit, ...missing } = limitOrBlank(profile, 'totalPipeLength_m');
    if ('blank' in missing) return missing.blank;
    if (pipes.length === 0 || !limit) return notChecked('no pipe is drawn yet.');
    const figures = atMost(totalLength_m, limit, LENGTH_SLACK_m);
    const { value: all, limit: allowed } = say.against(totalLength_m, limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Has ${all} of pipe; ${allowed} is allowed.`
        : `Has ${all} of pipe; ${allowed} is allowed. Shorten it.`,
      place: { level: level.id, at: pipes.flatMap(({ from, to }) => [from, to]) },
    };
  },
});
