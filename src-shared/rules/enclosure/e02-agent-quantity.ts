import type { EnclosureDesign } from '../../calculations/design/design.ts';
import { floodingMassBasis } from '../../calculations/formulas/agent-quantity.ts';
import { type Answer, type CheckContext, atLeast, defineRule, notChecked } from '../rule.ts';
import { cylinderWords, enclosureSubjects, placeOfEnclosure } from '../enclosure-subjects.ts';
import { slackOf } from '../slack.ts';

type Judged = Extract<Answer, { kind: 'judged' }>;

/** The fault of a design concentration below the least of the chosen edition; undefined while it is kept or cannot be judged. */
function tooThin({ enclosure, minimum, ...design }: EnclosureDesign, { say }: CheckContext): Judged | undefined {
  if (!minimum.isKnown || enclosure.concentration_pct === null) return undefined;
  const figures = atLeast(enclosure.concentration_pct / 100, { value: minimum.sums.concentration_pct / 100, source: minimum.sums.source }, slackOf(1));
  if (figures.isKept) return undefined;
  const { value, limit } = say.quantityAgainst(figures.measured, figures.limit, 'ratio');
  return {
    ...figures,
    measure: 'ratio',
    text: `Its design concentration is ${value}, below the ${limit} that ${minimum.sums.source} asks for what can burn here.`,
    place: placeOfEnclosure({ enclosure, minimum, ...design }),
    cure: { kind: 'advice', text: `Choose a design concentration of ${limit} or more.` },
  };
}

/**
 * E2: what is installed is enough for the enclosure when it is coldest, at its altitude, and the concentration that it
 * is designed for is enough for what can burn there.
 * Measure: mass installed [kg]. Limit: mass that the flooding formula asks; beside it the least design concentration of the chosen edition.
 * Not checked: the agent, the supply or the least concentration cannot be worked out; an enclosure without a nozzle says so here alone.
 */
export const e02AgentQuantity = defineRule<EnclosureDesign>({
  id: 'E2',
  title: 'Agent quantity',
  severity: 'stop',
  measure: 'mass',
  basis: {
    formula: 'cylinders × fill ≥ (V/s_cold)·ln(100/(100 − C))·altitude factor, and C ≥ least design concentration of the edition',
    source: floodingMassBasis.source,
    caution: 'The listing of the unit and the adopted edition govern the design concentration.',
  },
  limitKeys: ['agentMass_kg'],
  subjects: enclosureSubjects,
  check(design, context) {
    const { agent, supply, minimum, cylindersNeeded } = design;
    const { say } = context;
    const place = placeOfEnclosure(design);
    const thin = tooThin(design, context);
    if (!supply.isKnown || !agent.isKnown) {
      const missing = supply.isKnown ? agent : supply;
      return thin ?? notChecked(missing.isKnown ? 'the agent is not worked out.' : missing.because, place);
    }
    const { massNeeded_kg, least_K } = agent.sums;
    const mass = atLeast(supply.sums.installed_kg, { value: massNeeded_kg, source: floodingMassBasis.source }, slackOf(massNeeded_kg));
    const { value: installed, limit: needed } = say.quantityAgainst(mass.measured, mass.limit, 'mass');
    const held = `${cylinderWords(supply.sums.cylinders)} ${supply.sums.cylinders === 1 ? 'holds' : 'hold'} ${installed}`;
    const cold = say.quantity(least_K, 'temperature');
    if (!mass.isKept) {
      const also = thin ? ` ${thin.text}` : minimum.isKnown ? '' : ` Whether its design concentration suffices is not checked: ${minimum.because}`;
      return {
        ...mass,
        text: `Short of agent: ${held}, but ${needed} are needed at ${cold}.${also}`,
        place,
        cure: { kind: 'advice', text: cylindersNeeded.isKnown ? `It needs ${cylinderWords(cylindersNeeded.sums)} full.` : 'Add cylinders.' },
      };
    }
    if (thin) return { ...thin, text: `${thin.text} For that, ${held} and ${needed} are needed.` };
    if (!minimum.isKnown) return notChecked(`${minimum.because} Its agent is enough for the concentration chosen: ${held}; ${needed} are needed.`, place);
    return { ...mass, text: `Has enough agent: ${held}; ${needed} are needed at ${cold}.`, place };
  },
});
