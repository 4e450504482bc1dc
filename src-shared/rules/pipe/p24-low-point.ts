import type { DerivedNetwork } from '../../derived/derived.ts';
import { lowPointsOf } from '../../derived/low-points.ts';
import type { Cure } from '../finding.ts';
import { defineRule } from '../rule.ts';
import { networksWithPipe } from '../subjects.ts';

/**
 * P24: water that gathers in the pipe finds a way out.
 * Measure: places that pipe falls to and rises from, without a nozzle, drain or dirt trap; a level stretch is one place.
 * Limit: none. The place where the pipe begins is not judged: it belongs to the discharge assembly.
 */
export const p24LowPoint = defineRule<DerivedNetwork>({
  id: 'P24',
  title: 'Low point drained',
  severity: 'warn',
  measure: 'count',
  basis: { formula: 'no place that all its pipe rises from without a nozzle, drain or dirt trap', source: 'common practice', caution: 'Pipe that is tested with water, or that stands in damp air, gathers it here.' },
  subjects: networksWithPipe,
  check(network, { say }) {
    const low = lowPointsOf(network);
    const figures = { kind: 'judged', measured: low.length, limit: 0, limitSource: 'common practice', margin: 0 - low.length } as const;
    const [first] = low;
    if (!first) return { ...figures, isKept: true, text: 'Has no low point that lacks a drain.' };
    const at = low.flatMap((point) => point.at);
    const ends = low.flatMap(({ deadEnd }) => deadEnd ?? []);
    const turns = low.flatMap(({ deadEnd, turn }) => (deadEnd === undefined ? (turn ?? []) : []));
    const cure: Cure =
      ends.length + turns.length === low.length
        ? { kind: 'add-drains', text: low.length === 1 ? 'Put a drain there' : 'Put a drain at each', network: network.ref.id, turns, ends }
        : { kind: 'advice', text: 'Raise the pipe, or let it fall to a nozzle or to a tee with a drain.' };
    return {
      ...figures,
      isKept: false,
      text: `${low.length === 1 ? 'One place is' : `${low.length} places are`} lower than all pipe beside ${low.length === 1 ? 'it' : 'them'} and ${low.length === 1 ? 'has' : 'have'} no drain: water gathers there, ${say.length(first.at[0]?.z ?? 0)} above the floor. Put a drain there, or raise the pipe.`,
      place: { level: network.level.id, at, heights: at },
      cure,
    };
  },
});
