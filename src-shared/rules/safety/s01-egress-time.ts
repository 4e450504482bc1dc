import type { EnclosureDesign } from '../../calculations/design/design.ts';
import { egressKept, exposureConditionsBasis } from '../../calculations/formulas/exposure.ts';
import { openingMiddle } from '../../derived/wall-places.ts';
import type { Place } from '../finding.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { placeOfEnclosure, servedEnclosuresThat, stayWords } from '../enclosure-subjects.ts';

/** The doors, else the whole enclosure. */
function placeOfDoors(design: EnclosureDesign): Place {
  const { enclosure, ref } = design;
  const at = Object.values(enclosure.openings).flatMap((opening) => (opening.kind === 'door' ? (openingMiddle(enclosure, opening) ?? []) : []));
  return at.length > 0 ? { level: ref.level, at } : placeOfEnclosure(design);
}

/**
 * S1: everybody is out before the gas harms.
 * Measure: time that everybody needs to leave [s]. Limit: longest stay of the band that the enclosure comes to with all its agent.
 * Not asked where nobody can be inside.
 * Not checked: the time to leave is not entered, or the atmosphere cannot be worked out.
 */
export const s01EgressTime = defineRule<EnclosureDesign>({
  id: 'S1',
  title: 'Time to leave',
  severity: 'stop',
  measure: 'time',
  basis: { formula: 'time to leave ≤ longest stay of the band reached with all agent in and the room hottest', source: exposureConditionsBasis.source, caution: exposureConditionsBasis.caution },
  limitKeys: ['agentMass_kg'],
  subjects: servedEnclosuresThat(({ enclosure }) => enclosure.occupancy !== 'unoccupiable'),
  check(design, { say }) {
    const { people, enclosure } = design;
    const { egress_s } = enclosure.people;
    const place = placeOfDoors(design);
    if (!people.isKnown) return notChecked(people.because, place);
    if (egress_s === null) return notChecked('the time that everybody needs to leave is not entered.', place);
    const { exposure, longest_s } = people.sums;
    const isKept = egressKept(egress_s, exposure);
    const figures = { ...atMost(egress_s, { value: longest_s, source: exposureConditionsBasis.source }, 0), isKept };
    const { value } = say.quantityAgainst(egress_s, longest_s, 'time');
    const stay = `with all agent in, ${stayWords(exposure)}`;
    if (isKept) return { ...figures, text: `Everybody is out after ${value}; ${stay}.`, place };
    return {
      ...figures,
      text: `Everybody is out only after ${value}; ${stay}.`,
      place,
      cure: { kind: 'advice', text: 'Shorten the way out, or lower the concentration that all agent gives.' },
    };
  },
});
