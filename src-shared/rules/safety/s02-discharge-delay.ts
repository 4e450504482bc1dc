import type { EnclosureDesign } from '../../calculations/design/design.ts';
import { atLeast, atMost, defineRule, notChecked } from '../rule.ts';
import { placeOfEnclosure, servedEnclosureSubjects } from '../enclosure-subjects.ts';

/**
 * S2: the discharge waits until everybody is out, and no longer than the authority allows.
 * Measure: delay from the alarm to the discharge [s]. Limit: at least the time to leave, at most the authority's greatest delay.
 * While the authority's limit is not entered, the first half alone is judged and the finding says so.
 * Where nobody can be inside nobody has to leave.
 * Not checked: the delay or the time to leave is not entered.
 */
export const s02DischargeDelay = defineRule<EnclosureDesign>({
  id: 'S2',
  title: 'Delay before discharge',
  severity: 'stop',
  measure: 'time',
  basis: {
    formula: 'time to leave ≤ delay ≤ longest delay that the authority allows',
    source: 'authority having jurisdiction; OSHA 29 CFR 1910.160 and .162: alarm before the discharge with time to leave (memory)',
  },
  subjects: servedEnclosureSubjects,
  check(design, { basis, say }) {
    const { occupancy, people } = design.enclosure;
    const { delay_s } = people;
    const egress_s = occupancy === 'unoccupiable' ? 0 : people.egress_s;
    const place = placeOfEnclosure(design);
    const { greatestDelay_s } = basis;
    if (delay_s === null) return notChecked('the delay before the discharge is not chosen.', place);
    const upper = greatestDelay_s === null ? undefined : atMost(delay_s, { value: greatestDelay_s, source: 'authority, as the basis of design has it' }, 0);
    if (upper && !upper.isKept) {
      const { value, limit } = say.quantityAgainst(delay_s, upper.limit, 'time');
      const both = egress_s !== null && egress_s > upper.limit ? ' People need longer than that to leave: the way out must be shortened.' : '';
      return {
        ...upper,
        text: `The discharge waits ${value}; the authority allows ${limit} at most.${both}`,
        place,
        cure: { kind: 'advice', text: `Choose a delay of ${limit} or less.` },
      };
    }
    if (egress_s === null) return notChecked('the time that everybody needs to leave is not entered.', place);
    const lower = atLeast(delay_s, { value: egress_s, source: 'time to leave, as entered' }, 0);
    const { value, limit } = say.quantityAgainst(delay_s, egress_s, 'time');
    if (!lower.isKept) {
      const both = greatestDelay_s !== null && egress_s > greatestDelay_s ? ' The authority does not allow such a delay: the way out must be shortened.' : '';
      return {
        ...lower,
        text: `The discharge waits ${value}, but everybody is out only after ${limit}.${both}`,
        place,
        cure: { kind: 'advice', text: both === '' ? `Choose a delay of ${limit} or more.` : 'Shorten the way out.' },
      };
    }
    const open = upper ? '' : ' The longest delay that the authority allows is not entered in the basis of design, so that part is not checked.';
    const figures = upper && upper.margin < lower.margin ? upper : lower;
    return { ...figures, text: `The discharge waits ${value}; everybody is out after ${limit}.${open}`, place };
  },
});
