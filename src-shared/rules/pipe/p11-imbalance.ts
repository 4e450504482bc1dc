import type { DerivedNetwork } from '../../derived/derived.ts';
import { askedNetwork, perNetwork } from '../subjects.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';

/**
 * P11: the ways to the nozzles of a network are about equally long, so that the agent comes to all of them together.
 * Measure: (longest path − shortest) ÷ longest. Limit: greatest difference between paths, from the unit profile.
 * Not checked: the limit is blank, or no pipe leads to a nozzle. One nozzle alone has nothing to be compared with.
 */
export const p11Imbalance = defineRule<DerivedNetwork>({
  id: 'P11',
  title: 'Even paths',
  severity: 'warn',
  measure: 'ratio',
  basis: { formula: '(longest path − shortest path) ÷ longest path ≤ limit, lengths in space from source to orifice', source: 'unit profile' },
  limitKeys: ['pathImbalance'],
  subjects: perNetwork((network) => (network.nozzles.length > 0 ? [askedNetwork(network)] : [])),
  check(network, { say }) {
    const { nozzles, paths } = network;
    if (nozzles.length === 1) return { kind: 'judged', isKept: true, text: 'Has one nozzle: no other path to compare.' };
    const { limit, ...missing } = limitOrBlank(network.profile, 'pathImbalance');
    if ('blank' in missing) return missing.blank;
    const lost = nozzles.find(({ nozzle }) => !paths.some((path) => path.nozzle === nozzle.id));
    if (lost) return notChecked(`no pipe leads to nozzle ${lost.nozzle.name} from the cylinder.`);
    const inOrder = [...paths].sort((a, b) => a.length_m - b.length_m);
    const [shortest, longest] = [inOrder[0], inOrder.at(-1)];
    if (!limit || !shortest || !longest || longest.length_m === 0) return notChecked('the paths have no length.');
    const nameOf = (id: string): string => nozzles.find(({ nozzle }) => nozzle.id === id)?.nozzle.name ?? id;
    const off = (longest.length_m - shortest.length_m) / longest.length_m;
    const figures = atMost(off, limit, slackOf(limit.value));
    const { value, limit: most } = say.quantityAgainst(off, limit.value, 'ratio');
    const at = [longest, shortest].flatMap(({ nodes }) => network.network.nodes[nodes.at(-1) ?? '']?.at ?? []);
    const both = `The path to ${nameOf(longest.nozzle)} is ${say.length(longest.length_m)}, that to ${nameOf(shortest.nozzle)} ${say.length(shortest.length_m)}: they differ by ${value}`;
    return {
      ...figures,
      text: figures.isKept ? `${both}; ${most} is allowed.` : `${both}, and only ${most} is allowed. Move a tee.`,
      place: { level: network.level.id, at, heights: at },
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Move a tee toward the far nozzle, or lead the short branch a longer way.' },
    };
  },
});
