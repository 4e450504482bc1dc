import type { EnclosureDesign } from '../../calculations/design/design.ts';
import { dischargeLimitBasis } from '../../calculations/formulas/design-concentration.ts';
import type { Place } from '../finding.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { placeOfEnclosure, servedEnclosureSubjects } from '../enclosure-subjects.ts';
import { staleDischarge } from '../design-subjects.ts';
import { slackOf } from '../slack.ts';

/**
 * E5: every space of the enclosure comes to 95 % of its design concentration in time.
 * Measure: time from the start of the discharge, of the slowest space [s]. Limit: of the chosen edition for what can burn here.
 * A space that never gets there is a stop.
 * Not checked: the discharge or its limit cannot be worked out.
 */
export const e05DischargeTime = defineRule<EnclosureDesign>({
  id: 'E5',
  title: 'Discharge time',
  severity: 'stop',
  measure: 'time',
  basis: { formula: dischargeLimitBasis.formula, source: dischargeLimitBasis.source, caution: dischargeLimitBasis.caution },
  limitKeys: ['cylinderVolume_m3', 'agentMass_kg', 'filledMass_kg', 'cylinderDiameter_m', 'nozzleCoefficient'],
  subjects: servedEnclosureSubjects,
  check(design, { say }) {
    const { filling } = design;
    if (!filling.isKnown) return notChecked(filling.because, placeOfEnclosure(design));
    const { spaces, timeTo95_s, limit_s, limitSource, isStale } = filling.sums;
    const slowest = spaces.reduce<(typeof spaces)[number] | undefined>((slow, each) => (slow && (slow.timeTo95_s ?? Infinity) >= (each.timeTo95_s ?? Infinity) ? slow : each), undefined);
    const place: Place = slowest ? { level: design.ref.level, at: slowest.space.outline } : placeOfEnclosure(design);
    const where = slowest && spaces.length > 1 ? `Its slowest space, “${slowest.space.name}”,` : 'It';
    const stale = staleDischarge(isStale);
    const cure = { kind: 'advice', text: 'Take larger pipe or orifices, a shorter way, or more cylinders where people allow it.' } as const;
    if (timeTo95_s === undefined) {
      const limit = say.quantity(limit_s, 'time');
      return { kind: 'judged', isKept: false, limit: limit_s, limitSource, text: `${where} never reaches 95 % of its design concentration; ${limit} are allowed.${stale}`, place, cure };
    }
    const figures = atMost(timeTo95_s, { value: limit_s, source: limitSource }, slackOf(limit_s));
    const { value, limit } = say.quantityAgainst(timeTo95_s, limit_s, 'time');
    return figures.isKept
      ? { ...figures, text: `${where} has 95 % of its design concentration after ${value}; ${limit} are allowed.${stale}`, place }
      : { ...figures, text: `${where} has 95 % of its design concentration only after ${value}; ${limit} are allowed.${stale}`, place, cure };
  },
});
