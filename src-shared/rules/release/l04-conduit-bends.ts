import type { NetworkDesign } from '../../calculations/design/design.ts';
import { notWorked, worked } from '../../calculations/design/worked.ts';
import { GREATEST_BENDS_rad, bendsSum_rad, conduitBendsBasis } from '../../calculations/formulas/conduit-bends.ts';
import { ANGLE_SLACK_rad } from '../../geometry/tolerance.ts';
import type { Release } from '../../model/plan.ts';
import { type Member, memberSubjects } from '../design-subjects.ts';
import { perNetworkSums } from '../subjects.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { namesApart } from './releasing-circuits.ts';

type Pull = Release['pulls'][number];

const pullSubjects = (network: NetworkDesign) => {
  const { release } = network.network;
  if (!release) return [];
  const names = namesApart(release.pulls.map(({ name }) => name), 'pull');
  const pulls = release.pulls.length > 0 ? worked(release.pulls) : notWorked('no pull points of the conduit are listed.');
  return memberSubjects<Pull>(network, pulls, ({ name }, i) => ({ ref: network.ref, name: `${network.name}, ${names[i] ?? name}` }));
};

/**
 * L4: wires can be pulled through every stretch of conduit.
 * Measure: all bends between two pull points together [rad].
 * Limit: 360°.
 * Not checked: no pull points are listed.
 */
export const l04ConduitBends = defineRule<Member<Pull>>({
  id: 'L4',
  title: 'Bends between pulls',
  severity: 'warn',
  measure: 'angle',
  basis: conduitBendsBasis,
  subjects: perNetworkSums(pullSubjects),
  check({ member }, { say }) {
    if (!member.isKnown) return notChecked(member.because);
    const sum_rad = bendsSum_rad(member.sums.bends_rad);
    const figures = atMost(sum_rad, { value: GREATEST_BENDS_rad, source: conduitBendsBasis.source }, ANGLE_SLACK_rad);
    const { value: turns, limit: most } = say.angleAgainst(sum_rad, GREATEST_BENDS_rad);
    return {
      ...figures,
      text: figures.isKept ? `Its bends turn ${turns} in all; ${most} is allowed.` : `Its bends turn ${turns} in all; only ${most} is allowed. Add a pull box.`,
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Add a pull box between the bends.' },
    };
  },
});
