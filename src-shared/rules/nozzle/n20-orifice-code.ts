import type { NetworkDesign, OrificeSums } from '../../calculations/design/design.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import { type Answer, type CheckContext, defineRule, notChecked } from '../rule.ts';
import { type NozzleSubject, askedNozzle, perNetworkWithSums, placeOfNozzle } from '../subjects.ts';

/** A drawn area this near to that of a code is meant to be it [share]. */
const SAME_CODE = 0.001;
/** How near a hole can be drilled to an area [share]. */
const DRILLED = 0.025;
/** Float noise of a comparison of shares. */
const NOISE = 1e-9;

type Judged = Extract<Answer, { kind: 'judged' }>;

/** Whether the flow needed is beyond every orifice that the nozzle is made with. */
function isBeyondCodes({ needed_m2, made }: OrificeSums, { orifices }: UnitProfile): boolean {
  if (orifices.length === 0) return false;
  return !made || needed_m2 > Math.max(...orifices.map(({ area_m2 }) => area_m2)) * (1 + DRILLED);
}

/** Compares a drawn orifice with the calculated one. */
function judged(drawn_m2: number, orifice: OrificeSums, profile: UnitProfile | undefined, { say }: CheckContext): Judged {
  const { needed_m2, made } = orifice;
  const wanted_m2 = made?.area_m2 ?? needed_m2;
  const { value, limit } = say.quantityAgainst(drawn_m2, wanted_m2, 'orificeArea');
  const isKept = Math.abs(drawn_m2 / wanted_m2 - 1) <= (made ? SAME_CODE : DRILLED) + NOISE;
  const wanted = made ? `orifice ${made.code} (${limit})` : limit;
  const figures = { kind: 'judged', measured: drawn_m2, limit: wanted_m2, limitSource: made ? 'calculated; orifices of the unit profile' : 'calculated; common practice ±2.5 % for a drilled hole' } as const;
  if (profile && isBeyondCodes(orifice, profile)) {
    return {
      ...figures,
      isKept: false,
      text: `It needs ${say.quantity(needed_m2, 'orificeArea')}, which is ${made ? 'more than the largest' : 'less than the smallest'} orifice that the nozzle is made with.`,
      cure: { kind: 'advice', text: 'Change the number of nozzles or cylinders until an orifice of the unit profile suits.' },
    };
  }
  if (isKept) return { ...figures, isKept, text: made ? `Is drawn with ${wanted}, as calculated.` : `Is drawn with ${value}; ${wanted} are calculated.` };
  return {
    ...figures,
    isKept,
    text: `Is drawn with ${value}, but ${made ? `${wanted} is` : `${wanted} are`} calculated.`,
    cure: { kind: 'advice', text: made ? `Choose orifice ${made.code}.` : `Choose an orifice of ${limit}.` },
  };
}

/** A nozzle with the sums of its network. */
interface Asked {
  readonly nozzle: NozzleSubject;
  readonly network: NetworkDesign;
}

/**
 * N20: the orifice drawn is the one calculated for an even share of the unit's flow.
 * Measure: area drawn [m²]. Limit: area of the code that the nozzle is made with and that the sums choose, equal within
 * 0.1 %; without a list of codes the area needed, within 2.5 % (common practice, drilling). Codes that all are too large
 * or too small are a stop.
 * Not checked: no orifice is chosen, or the calculated one is not known.
 */
export const n20OrificeCode = defineRule<Asked>({
  id: 'N20',
  title: 'Orifice code',
  severity: 'stop',
  measure: 'orificeArea',
  basis: {
    formula: 'orifice drawn = orifice calculated for the flow that the manual of the unit states, shared by volume',
    source: 'calculation; common practice ±2.5 % where no code is listed',
    caution: 'The flow calculation that the unit is listed with governs.',
  },
  limitKeys: ['peakFlow_kg_s', 'nozzleCoefficient'],
  subjects: perNetworkWithSums((derived, network) =>
    derived.nozzles.map((each) => {
      const { subject: nozzle, ...named } = askedNozzle(each);
      return { ...named, subject: { nozzle, network } };
    }),
  ),
  check({ nozzle, network }, context) {
    const place = nozzle.at && placeOfNozzle(nozzle, nozzle.at);
    const { orifices } = network;
    if (!orifices.isKnown) return notChecked(orifices.because, place);
    const orifice = orifices.sums.find(({ ref }) => ref.id === nozzle.ref.id);
    if (!orifice) return notChecked('the calculated orifice is not known.', place);
    if (orifice.drawn_m2 === null) {
      const { made, needed_m2 } = orifice;
      const needed = context.say.quantity(made?.area_m2 ?? needed_m2, 'orificeArea');
      return notChecked(`no orifice is chosen. The calculated one is ${made ? `${made.code} (${needed})` : needed}.`, place);
    }
    return { ...judged(orifice.drawn_m2, orifice, nozzle.profile, context), place };
  },
});
