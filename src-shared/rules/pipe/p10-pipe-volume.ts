import type { DerivedNetwork } from '../../derived/derived.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { networkSubjects } from '../subjects.ts';

/**
 * P10: the pipe of a network holds no more than the unit can fill.
 * Measure: inside volume of all pipe together [m³]. Limit: pipe volume, from the unit profile.
 * Not checked: no pipe is drawn yet, or the limit is blank.
 */
export const p10PipeVolume = defineRule<DerivedNetwork>({
  id: 'P10',
  title: 'Pipe volume',
  severity: 'warn',
  measure: 'volume',
  basis: { formula: 'sum of π/4 · bore² · length of all pipe ≤ limit', source: 'unit profile' },
  limitKeys: ['pipeVolume_m3'],
  subjects: networkSubjects,
  check({ pipeVolume_m3, pipes, profile, level }, { say }) {
    const { limit, ...missing } = limitOrBlank(profile, 'pipeVolume_m3');
    if ('blank' in missing) return missing.blank;
    if (pipes.length === 0 || !limit) return notChecked('no pipe is drawn yet.');
    const figures = atMost(pipeVolume_m3, limit, slackOf(limit.value));
    const { value: holds, limit: allowed } = say.quantityAgainst(pipeVolume_m3, limit.value, 'volume');
    return {
      ...figures,
      text: figures.isKept ? `Its pipe holds ${holds}; ${allowed} is allowed.` : `Its pipe holds ${holds}; ${allowed} is allowed. Shorten it, or use smaller pipe.`,
      place: { level: level.id, at: pipes.flatMap(({ from, to }) => [from, to]) },
    };
  },
});
