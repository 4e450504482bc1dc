import type { DerivedNetwork } from '../../derived/derived.ts';
import { defineRule, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';

/**
 * P1: the pipe of a network is one tree fed by its source: no gaps, no loops, every end a nozzle.
 * Measure: faults found. Limit: none.
 * Not checked: nothing is drawn yet.
 */
export const p01Network = defineRule<DerivedNetwork>({
  id: 'P1',
  title: 'One source tree',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'every pipe reached once from the source; every open end carries a nozzle', source: 'unit profile; geometry' },
  subjects: networkSubjects,
  check({ faults, pipes, nozzles, level }) {
    if (pipes.length === 0 && nozzles.length === 0) return notChecked('no pipe is drawn yet.');
    const [first] = faults;
    const figures = { kind: 'judged', measured: faults.length, limit: 0, limitSource: 'geometry', margin: -faults.length } as const;
    if (!first) return { ...figures, margin: 0, isKept: true, text: 'Is one tree from its source to every nozzle.' };
    const more = faults.length > 1 ? ` (${faults.length - 1} more)` : '';
    const at = faults.flatMap((fault) => fault.at);
    return { ...figures, isKept: false, text: `${first.text}${more}`, place: at.length > 0 ? { level: level.id, at, heights: at } : undefined };
  },
});
