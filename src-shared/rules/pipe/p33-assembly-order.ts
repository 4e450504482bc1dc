import { lacksManifold, orderFaults, reversedParts } from '../../derived/assembly-order.ts';
import { assemblyRunOf } from '../../derived/assembly-run.ts';
import type { DerivedNetwork } from '../../derived/derived.ts';
import { PART_WORDS } from '../../derived/part-words.ts';
import { type Answer, defineRule, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';
import { gapText } from './gap-text.ts';

/**
 * P33: the discharge assembly has the parts of the manual in its order, each with its arrow along the flow, several
 * cylinders meet in a manifold, and the lengths of its rigid parts add up (warning).
 * One cylinder may have a manifold, but needs none.
 * Not checked: no part is listed; nothing else is wrong and the order is blank in the unit profile.
 */
export const p33AssemblyOrder = defineRule<DerivedNetwork>({
  id: 'P33',
  title: 'Assembly order and arrows',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'parts from the valve to the pipe = those of the manual, in its order; every arrow along the flow; one manifold for several cylinders; rigid lengths = their way, within 3 mm',
    source: 'unit profile; manifold, arrows and lengths: common practice',
    caution: 'The manual also says which part fits to which, and how they are tightened.',
  },
  subjects: networkSubjects,
  check(derived, { say }) {
    const { network, profile, level } = derived;
    if (network.assembly.length === 0) return notChecked('no part of the discharge assembly is listed.');
    const at = Object.values(network.cylinders).map((cylinder) => ({ x: cylinder.at.x, y: cylinder.at.y }));
    const place = at.length > 0 ? { level: level.id, at } : undefined;
    const fault = (text: string, advice: string, more: Partial<Extract<Answer, { kind: 'judged' }>> = {}): Answer => ({ kind: 'judged', isKept: false, text, place, cure: { kind: 'advice', text: advice }, ...more });
    const [reversed, ...others] = reversedParts(network.assembly);
    if (reversed) return fault(`“${reversed.name}”${others.length > 0 ? ` and ${others.length} more are` : ' is'} turned against the flow, so that no agent passes.`, 'Turn it so that its arrow points to the pipe.');
    if (lacksManifold(network)) return fault(`${Object.keys(network.cylinders).length} cylinders feed the pipe, and no manifold is listed in which they meet.`, 'List the manifold, or lay the assembly out.');
    const order = profile?.assemblyOrder;
    if (!order) return notChecked(profile ? `the order of the discharge assembly is blank in the unit profile “${profile.name}”.` : 'the network has no unit profile.', place);
    const [first, ...rest] = orderFaults(order, network);
    const sequence = order.map((kind) => PART_WORDS[kind]).join(', ');
    if (first) return fault(`${first.text}${rest.length > 0 ? ` ${rest.map(({ text }) => text).join(' ')}` : ''} Its order from the valve on: ${sequence}.`, 'Put the parts in the order of the manual.');
    const { gaps } = assemblyRunOf(derived);
    const [gap] = gaps;
    if (gap) {
      const text = `${gapText(gap, network.cylinders, say)}${gaps.length > 1 ? ` ${gaps.length - 1} more ${gaps.length === 2 ? 'length does' : 'lengths do'} not add up.` : ''} ${gap.kind === 'drawn' ? 'Change the length it is listed with, or where it runs.' : 'Lay the assembly out, or change the places and lengths.'}`;
      return fault(text, 'Change where the hose ends, the manifold, or the lengths.', { severity: 'warn', place: { level: level.id, at: gaps.map((each) => each.at), heights: gaps.map((each) => each.at) } });
    }
    return { kind: 'judged', isKept: true, text: `Its parts stand in the order of the manual, from the valve on: ${network.assembly.map(({ kind }) => PART_WORDS[kind]).join(', ')}.`, place };
  },
});
