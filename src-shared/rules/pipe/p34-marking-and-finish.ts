import type { DerivedNetwork } from '../../derived/derived.ts';
import { defineRule } from '../rule.ts';
import { networksWithPipe } from '../subjects.ts';

/**
 * P34: the plan says how the pipe is marked, and what protects it against corrosion.
 * Measure: which of the two is not said yet; it is a note.
 */
export const p34MarkingAndFinish = defineRule<DerivedNetwork>({
  id: 'P34',
  title: 'Marking and finish',
  severity: 'note',
  measure: 'count',
  basis: { formula: 'marking along the pipe and finish against corrosion both shown', source: 'common practice' },
  subjects: networksWithPipe,
  check({ network }) {
    const { marking, finish } = network.installation;
    const open = [marking.trim() === '' && 'how the pipe is marked', finish.trim() === '' && 'what protects it against corrosion'].filter((each) => each !== false);
    if (open.length === 0) return { kind: 'judged', isKept: true, text: `Marked: ${marking.trim()}. Finish: ${finish.trim()}.` };
    return { kind: 'judged', isKept: false, text: `The plan does not say yet ${open.join(' and ')}. Enter it with the network.` };
  },
});
