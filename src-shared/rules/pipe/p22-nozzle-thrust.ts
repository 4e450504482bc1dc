import type { ThrustSums } from '../../calculations/design/design.ts';
import { holeThrustBasis, nozzleThrustBasis } from '../../calculations/formulas/thrust.ts';
import { type Member, memberSubjects, nozzleAt, perPipedNetwork, placeOn, supportSumsOf, staleDischarge } from '../design-subjects.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';

/**
 * P22: the support nearest to a nozzle bears its thrust, even with a hole blocked.
 * Measure: the greater of the thrust with all holes open and with the worst one blocked [N].
 * Limit: what the support bears.
 * Not checked: no support is drawn, the thrust is not known, or nobody stated what the support bears.
 */
export const p22NozzleThrust = defineRule<Member<ThrustSums>>({
  id: 'P22',
  title: 'Thrust on support',
  severity: 'stop',
  measure: 'force',
  basis: {
    formula: `thrust of the nozzle, worst of all holes open and one blocked ≤ what its nearest support bears; ${nozzleThrustBasis.formula}`,
    source: `${nozzleThrustBasis.source}; ${holeThrustBasis.source}`,
    caution: holeThrustBasis.caution,
  },
  subjects: perPipedNetwork((network) => {
    const supports = supportSumsOf(network);
    return memberSubjects(network, supports.isKnown ? network.thrusts : supports, ({ ref, name }) => ({ ref, name }));
  }),
  check({ network, member }, { say }) {
    if (!member.isKnown) return notChecked(member.because);
    const { ref, open_N, blocked_N, support } = member.sums;
    const at = nozzleAt(network, ref);
    const place = placeOn(network, [...(at ? [at] : []), ...(support ? [support.support.at] : [])]);
    const thrust_N = Math.max(open_N, blocked_N);
    const when = blocked_N > open_N ? 'with one hole blocked' : 'with all holes open';
    const { discharge } = network;
    const stale = staleDischarge(discharge.isKnown && discharge.sums.isStale);
    const pushes = `Pushes with ${say.quantity(thrust_N, 'force')} ${when}`;
    if (!support) return notChecked(`no support holds its pipe. ${pushes}.${stale}`, place);
    const capacity_N = support.support.capacity_N;
    if (capacity_N === null) return notChecked(`nobody has stated what its support bears. ${pushes}.${stale}`, place);
    const figures = atMost(thrust_N, { value: capacity_N, source: 'support, as stated on the plan' }, slackOf(capacity_N));
    const { value: push, limit: bears } = say.quantityAgainst(thrust_N, capacity_N, 'force');
    return {
      ...figures,
      text: figures.isKept ? `Pushes with ${push} ${when}; its support bears ${bears}.${stale}` : `Pushes with ${push} ${when}; its support bears only ${bears}. Brace it.${stale}`,
      place,
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Brace the pipe beside the nozzle, or use a stronger support.' },
    };
  },
});
