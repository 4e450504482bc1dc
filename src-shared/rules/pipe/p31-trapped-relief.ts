import type { DerivedNetwork } from '../../derived/derived.ts';
import { trappedStretches } from '../../derived/trapped-stretches.ts';
import { defineRule, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';

/**
 * P31: every stretch of the discharge assembly in which agent can be shut in has a relief valve.
 * Measure: stretches between a valve that lets nothing back and the next one that can shut, without a relief valve.
 * Limit: none. The valve of the cylinder counts as one that lets nothing back, since it is shut again after a discharge.
 * Not checked: no part of the discharge assembly is listed.
 */
export const p31TrappedRelief = defineRule<DerivedNetwork>({
  id: 'P31',
  title: 'Trapped stretch has relief',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'a relief valve between every two valves that can hold agent between them',
    source: '46 CFR 95.16-10 (b)(2); also NFPA 2001 and ISO 14520-1 (memory)',
    caution: 'Valves in the drawn pipe are not known to the plan. Where the relief valve blows to, and at what pressure, the manual says.',
  },
  subjects: networkSubjects,
  check({ network }, { say }) {
    if (network.assembly.length === 0) return notChecked('no part of the discharge assembly is listed.');
    const stretches = trappedStretches(network.assembly);
    const bare = stretches.filter(({ hasRelief }) => !hasRelief);
    const figures = { kind: 'judged' as const, measured: bare.length, limit: 0, margin: -bare.length, isKept: bare.length === 0 };
    const [first] = bare;
    if (stretches.length === 0) return { ...figures, text: 'No stretch of its discharge assembly can be shut at both ends.' };
    if (!first) return { ...figures, text: stretches.length === 1 ? 'The stretch that can be shut at both ends has a relief valve.' : `Each of the ${say.quantity(stretches.length, 'count')} stretches that can be shut at both ends has a relief valve.` };
    const where = `between ${first.from ? `“${first.from.name}”` : 'the valve of the cylinder'} and “${first.to.name}”`;
    return {
      ...figures,
      text: `Agent can be shut in ${where}, where no relief valve is${bare.length > 1 ? `, and in ${bare.length - 1} more ${bare.length === 2 ? 'stretch' : 'stretches'}` : ''}. List a relief valve there.`,
      cure: { kind: 'advice', text: `Put a relief valve ${where}.` },
    };
  },
});
