import type { DerivedNetwork, NetworkFault } from '../../derived/derived.ts';
import { oddAngleCure, twoPiecesFor } from '../../derived/odd-angle.ts';
import type { Cure } from '../finding.ts';
import { moveWords } from '../move-words.ts';
import { defineRule, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';
import type { Wording } from '../wording.ts';

const BECOMES = { 'elbow-90': 'it becomes a 90° turn', 'elbow-45': 'it becomes a 45° turn', straight: 'the pipe runs straight on', tee: 'the tee is square' } as const;

/** The nearest way in which a turn can be built. */
function cureOf({ node, pipes }: NetworkFault, { network, ref }: DerivedNetwork, say: Wording): Cure | undefined {
  const at = network.nodes[node ?? '']?.at;
  if (node === undefined || !at) return undefined;
  const cure = oddAngleCure(network, node);
  if (cure) return { kind: 'move-node', text: `Move this place ${moveWords(at, cure.to, say)} and ${BECOMES[cure.becomes]}`, node: { network: ref.id, id: node }, to: cure.to };
  const two = twoPiecesFor(network, node, pipes);
  return two && { kind: 'advice', text: `Lay it in two pieces: straight on for ${say.length(two.onward_m)}, then square across for ${say.length(two.across_m)}.` };
}

/**
 * P1: the pipe of a network is one tree fed by its source: no gaps, no loops, every end a nozzle; and every turn of it
 * is one that a fitting makes: 90°, 45°, or a square tee.
 * Measure: faults found. Limit: none.
 * Not checked: nothing is drawn yet.
 */
export const p01Network = defineRule<DerivedNetwork>({
  id: 'P1',
  title: 'One source tree',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'every pipe reached once from the source; every open end carries a nozzle; every turn 90° or 45° within 1°', source: 'unit profile; geometry; fittings of ASME B16.3' },
  subjects: networkSubjects,
  check(subject, { say }) {
    const { faults, pipes, nozzles, level } = subject;
    if (pipes.length === 0 && nozzles.length === 0) return notChecked('no pipe is drawn yet.');
    const [first] = faults;
    const figures = { kind: 'judged', measured: faults.length, limit: 0, limitSource: 'geometry', margin: -faults.length } as const;
    if (!first) return { ...figures, margin: 0, isKept: true, text: 'Is one tree from its source to every nozzle.' };
    const more = faults.length > 1 ? ` (${faults.length - 1} more)` : '';
    const at = faults.flatMap((fault) => fault.at);
    return { ...figures, isKept: false, text: `${first.text}${more}`, place: at.length > 0 ? { level: level.id, at, heights: at } : undefined, cure: () => cureOf(first, subject, say) };
  },
});
