import type { EnclosureDesign } from '../../calculations/design/design.ts';
import { allowedLeakageBasis } from '../../calculations/formulas/hold-leakage.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { placeOfEnclosure, servedEnclosureSubjects } from '../enclosure-subjects.ts';
import { slackOf } from '../slack.ts';

/**
 * E7: the enclosure leaks no more than the required hold time allows.
 * Measure: equivalent leakage area at 10 Pa, tested or entered [m²]. Limit: area with which the hold time is just kept.
 * Not checked: leaks or hold time are not known.
 */
export const e07LeakageArea = defineRule<EnclosureDesign>({
  id: 'E7',
  title: 'Leakage area',
  severity: 'warn',
  measure: 'area',
  basis: { formula: allowedLeakageBasis.formula, source: allowedLeakageBasis.source, caution: allowedLeakageBasis.caution },
  subjects: servedEnclosureSubjects,
  check(design, { say }) {
    const { leaks, hold } = design;
    const place = placeOfEnclosure(design);
    if (!leaks.isKnown) return notChecked(leaks.because, place);
    if (!hold.isKnown) return notChecked(hold.because, place);
    const remarks = leaks.sums.remarks.map((remark) => ` ${remark}`).join('');
    const { allowedLeakage_m2 } = hold.sums;
    if (!Number.isFinite(allowedLeakage_m2)) {
      return { kind: 'judged', isKept: true, measured: leaks.sums.area_m2, text: `Leaks as ${say.area(leaks.sums.area_m2)} at 10 Pa would; it holds its gas with any leaks of this kind.${remarks}`, place };
    }
    const figures = atMost(leaks.sums.area_m2, { value: allowedLeakage_m2, source: 'hold time of the basis of design' }, slackOf(allowedLeakage_m2));
    const { value, limit } = say.areaAgainst(figures.measured, figures.limit);
    if (figures.isKept) return { ...figures, text: `Leaks as ${value} at 10 Pa would; ${limit} are allowed.${remarks}`, place };
    return {
      ...figures,
      text: `Leaks as ${value} at 10 Pa would; only ${limit} are allowed.${remarks}`,
      place,
      cure: { kind: 'advice', text: `Seal ${say.area(-figures.margin)} of leaks, low ones first, and test again.` },
    };
  },
});
