import type { EnclosureDesign, FillSums } from '../../calculations/design/design.ts';
import { fixedFillBasis } from '../../calculations/formulas/fixed-fill.ts';
import { atLeast, atMost, defineRule, notChecked } from '../rule.ts';
import { cylinderWords, placeOfEnclosure, servedEnclosuresThat } from '../enclosure-subjects.ts';
import { slackOf } from '../slack.ts';

/** "3 cylinders fit", "3, 4 or 5 cylinders fit", or that none does. */
function fittingWords(fitting: FillSums['fitting']): string {
  const last = fitting.at(-1);
  if (last === undefined) return 'No number of cylinders fits.';
  if (fitting.length === 1) return `${cylinderWords(last)} ${last === 1 ? 'fits' : 'fit'}.`;
  return `${fitting.slice(0, -1).join(', ')} or ${cylinderWords(last)} fit.`;
}

/**
 * E4: the cylinders, whose fill cannot be chosen, suit the volume: enough agent when coldest, enough oxygen when hottest.
 * Measure: net volume [m³]. Limit: least and greatest volume of this number of cylinders, the nearer one shown.
 * Not asked where the design counts on nobody inside: there is then no oxygen limit, and E2 judges the other end.
 * Not checked: agent, supply or people cannot be worked out.
 */
export const e04FixedFill = defineRule<EnclosureDesign>({
  id: 'E4',
  title: 'Fixed fill',
  severity: 'stop',
  measure: 'volume',
  basis: { formula: fixedFillBasis.formula, source: fixedFillBasis.source, caution: fixedFillBasis.caution },
  limitKeys: ['agentMass_kg'],
  subjects: servedEnclosuresThat(({ enclosure }) => enclosure.people.exposure !== 'none'),
  check(design, { say }) {
    const { fill } = design;
    const place = placeOfEnclosure(design);
    if (!fill.isKnown) return notChecked(fill.because, place);
    const { net_m3, cylinders, least_m3, greatest_m3, fitting } = fill.sums;
    const above = atLeast(net_m3, { value: least_m3, source: fixedFillBasis.source }, slackOf(least_m3));
    const below = atMost(net_m3, { value: greatest_m3, source: fixedFillBasis.source }, slackOf(greatest_m3));
    const nearer = above.margin < below.margin ? above : below;
    const { value, limit } = say.quantityAgainst(net_m3, nearer.limit, 'volume');
    const their = cylinderWords(cylinders);
    if (above.isKept && below.isKept) {
      const other = say.quantity(nearer === above ? greatest_m3 : least_m3, 'volume');
      const [least, greatest] = nearer === above ? [limit, other] : [other, limit];
      return { ...nearer, text: `${their} ${cylinders === 1 ? 'suits' : 'suit'} ${least} to ${greatest}; its net volume is ${value}.`, place };
    }
    const text =
      nearer === above
        ? `Its net volume is ${value}, less than the ${limit} of ${their}: too little oxygen is left when it is hottest.`
        : `Its net volume is ${value}, more than the ${limit} of ${their}: too little agent when it is coldest.`;
    const both = above.isKept || below.isKept ? '' : ' Both limits are missed.';
    return {
      ...nearer,
      text: `${text}${both} ${fittingWords(fitting)}`,
      place,
      cure: {
        kind: 'advice',
        text: fitting.length > 0 ? `Change the number of cylinders: ${fittingWords(fitting)}` : 'Narrow the range of temperature, take a unit with another fill, or count on another stay of people.',
      },
    };
  },
});
