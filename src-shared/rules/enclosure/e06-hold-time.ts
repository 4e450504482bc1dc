import type { EnclosureDesign } from '../../calculations/design/design.ts';
import { interfaceTimeBasis } from '../../calculations/formulas/hold-time.ts';
import type { Place } from '../finding.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { placeOfEnclosure, servedEnclosureSubjects } from '../enclosure-subjects.ts';
import { slackOf } from '../slack.ts';

/**
 * E6: the lowest place that must stay protected keeps enough agent for long enough. Nitrogen mixed with air is lighter
 * than air: it leaves below, and the air below it rises.
 * Measure: hold time by the model of the basis of design [s]. Limit: hold time of the basis of design.
 * Not checked: leaks, lowest protected place, volume or concentration are not known.
 */
export const e06HoldTime = defineRule<EnclosureDesign>({
  id: 'E6',
  title: 'Hold time',
  severity: 'stop',
  measure: 'time',
  basis: {
    formula: `time until the lowest protected place has less than the wanted share of the design concentration ≥ required; ${interfaceTimeBasis.formula}`,
    source: interfaceTimeBasis.source,
    caution: 'A door-fan test on site decides. Ventilation that goes on shortens the time greatly.',
  },
  subjects: servedEnclosureSubjects,
  check(design, { say }) {
    const { hold } = design;
    const whole = placeOfEnclosure(design);
    if (!hold.isKnown) return notChecked(hold.because, whole);
    const { time_s, required_s, endConcentration_pct, lowestProtected_m, allowedLeakage_m2 } = hold.sums;
    const place: Place = { ...whole, heights: whole.at.slice(0, 1).map(({ x, y }) => ({ x, y, z: lowestProtected_m })) };
    const lowest = `${say.length(Math.abs(lowestProtected_m))} ${lowestProtected_m < 0 ? 'below' : 'above'} the floor`;
    const what = `${say.quantity(endConcentration_pct / 100, 'ratio')} agent at the lowest protected place, ${lowest}`;
    if (!Number.isFinite(time_s)) {
      return { kind: 'judged', isKept: true, limit: required_s, limitSource: 'basis of design', text: `Keeps ${what}, for longer than a day; ${say.quantity(required_s, 'time')} are required.`, place };
    }
    const figures = atLeast(time_s, { value: required_s, source: 'basis of design' }, slackOf(required_s));
    const { value, limit } = say.quantityAgainst(time_s, required_s, 'time');
    if (figures.isKept) return { ...figures, text: `Keeps ${what}, for ${value}; ${limit} are required.`, place };
    return {
      ...figures,
      text: `Keeps ${what}, for only ${value}; ${limit} are required.`,
      place,
      cure: { kind: 'advice', text: `Seal leaks until at most ${say.area(allowedLeakage_m2)} are left at 10 Pa, low ones first.` },
    };
  },
});
