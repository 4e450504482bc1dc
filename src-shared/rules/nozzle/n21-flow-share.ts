import type { NetworkDesign, ShareSums } from '../../calculations/design/design.ts';
import type { Space } from '../../derived/derived.ts';
import { defineRule, notChecked } from '../rule.ts';
import { perNetworkWithSums } from '../subjects.ts';

/** Greatest deviation of a flow share from its volume share, of the volume share. */
const GREATEST = 0.05;
/** Float noise of a comparison of shares. */
const NOISE = 1e-9;

/** One of several spaces of a network; its shares are missing while the discharge is not known. */
interface SpaceShare {
  readonly network: NetworkDesign;
  readonly space: Space;
  readonly share: ShareSums | undefined;
}

/**
 * N21: each of the spaces that a network serves gets its part of the agent.
 * Measure: flow share over volume share, less one [share]. Limit: ±5 % (common practice).
 * A network with one space has nothing to share and is not asked.
 * Not checked: the discharge is not known.
 */
export const n21FlowShare = defineRule<SpaceShare>({
  id: 'N21',
  title: 'Flow share',
  severity: 'warn',
  measure: 'ratio',
  basis: {
    formula: '|share of the agent ÷ share of the volume − 1| ≤ 5 %',
    source: 'common practice; the manual of the unit may ask for more',
    caution: 'What one space gets too much another lacks: look at the discharge time and at the oxygen of each.',
  },
  limitKeys: ['cylinderVolume_m3', 'agentMass_kg', 'filledMass_kg', 'cylinderDiameter_m', 'nozzleCoefficient'],
  subjects: perNetworkWithSums((derived, network) => {
    const spaces = [...new Map(derived.nozzles.flatMap(({ space }) => (space ? [[space.key, space] as const] : []))).values()];
    if (spaces.length < 2) return [];
    const { shares } = network;
    if (!shares.isKnown) return spaces.slice(0, 1).map((space) => ({ subject: { network, space, share: undefined }, ref: network.ref, name: network.name }));
    return spaces.map((space) => ({ subject: { network, space, share: shares.sums.find((each) => each.space.key === space.key) }, ref: network.ref, name: space.name }));
  }),
  check({ network, space, share }, { say }) {
    const place = { level: space.level.id, at: space.outline };
    if (!share) return notChecked(network.shares.isKnown ? 'its share of the flow is not worked out.' : network.shares.because, place);
    const { flowShare, volumeShare } = share;
    const off = flowShare / volumeShare - 1;
    const isKept = Math.abs(off) <= GREATEST + NOISE;
    const { value, limit } = isKept ? { value: say.quantity(Math.abs(off), 'ratio'), limit: say.quantity(GREATEST, 'ratio') } : say.quantityAgainst(Math.abs(off), GREATEST, 'ratio');
    const gets = `Gets ${say.quantity(flowShare, 'ratio')} of the agent for ${say.quantity(volumeShare, 'ratio')} of the volume: ${value} ${off < 0 ? 'too little' : 'too much'}`;
    return {
      kind: 'judged',
      isKept,
      measured: Math.abs(off),
      limit: GREATEST,
      limitSource: 'common practice',
      margin: GREATEST - Math.abs(off),
      text: isKept ? `${gets}, within ${limit}.` : `${gets}; ${limit} is the most.`,
      place,
      cure: isKept ? undefined : { kind: 'advice', text: `Choose ${off < 0 ? 'larger' : 'smaller'} orifices in “${space.name}”, or the opposite in the other spaces.` },
    };
  },
});
