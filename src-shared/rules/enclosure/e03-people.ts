import { EXPOSURES } from '../../model/basis-of-design.ts';
import type { Enclosure } from '../../model/plan.ts';
import type { EnclosureDesign, Exposure, PeopleSums } from '../../calculations/design/design.ts';
import { EXPOSURE_LIMITS, exposureBasis } from '../../calculations/formulas/exposure.ts';
import { type CheckContext, defineRule, notChecked } from '../rule.ts';
import { placeOfEnclosure, servedEnclosureSubjects, stayWords } from '../enclosure-subjects.ts';

/** The gravest band that a room may come to, whatever its design counts on. */
const GRAVEST: Readonly<Record<Exclude<Enclosure['occupancy'], 'unknown'>, Exposure>> = { 'normally-occupied': '3-min', 'normally-unoccupied': '30-s', unoccupiable: 'none' };

const graveness = (exposure: Exposure): number => EXPOSURES.indexOf(exposure);
const milder = (a: Exposure, b: Exposure): Exposure => (graveness(a) < graveness(b) ? a : b);

/** The judgement that decides: the one chosen, or the graver of both. */
function decidingOf({ hot }: PeopleSums, by: 'stricter' | 'concentration' | 'oxygen'): 'concentration' | 'oxygen' {
  if (by !== 'stricter') return by;
  return graveness(hot.byOxygen) > graveness(hot.byConcentration) ? 'oxygen' : 'concentration';
}

/** What people would breathe against a band, and how the two ways of judging it differ. */
function breathed(people: PeopleSums, allowed: Exposure, { basis, say }: CheckContext) {
  const { hot, doBandsAgree } = people;
  const { exposureBy } = basis;
  const deciding = decidingOf(people, exposureBy);
  const limits = EXPOSURE_LIMITS[allowed];
  const isOpen = allowed === 'none';
  const [measured, limit] = deciding === 'oxygen' ? [hot.oxygenSeaLevel_pct / 100, limits.leastOxygen_pct / 100] : [hot.concentration_pct / 100, limits.greatest_pct / 100];
  const printed = say.quantityAgainst(measured, limit, 'ratio');
  const bound = isOpen ? '' : ` (${printed.limit} at ${deciding === 'oxygen' ? 'least' : 'most'})`;
  const agent = deciding === 'concentration' ? `${printed.value} agent${bound}` : `${say.quantity(hot.concentration_pct / 100, 'ratio')} agent`;
  const oxygen = deciding === 'oxygen' ? `${printed.value} oxygen${bound}` : `${say.quantity(hot.oxygenSeaLevel_pct / 100, 'ratio')} oxygen`;
  const counts = { stricter: 'the stricter one counts', concentration: 'the concentration counts, as the basis of design has it', oxygen: 'the oxygen counts, as the basis of design has it' }[exposureBy];
  const differing = doBandsAgree ? '' : ` Judged by concentration ${stayWords(hot.byConcentration)}, by oxygen ${stayWords(hot.byOxygen)}: ${counts}.`;
  return {
    figures: isOpen ? { measured } : { measured, limit, limitSource: exposureBasis.source, margin: deciding === 'oxygen' ? measured - limit : limit - measured },
    text: `With all its agent at ${say.quantity(hot.temperature_K, 'temperature')} it has ${agent} and ${oxygen}, as at sea level: ${stayWords(people.exposure)}.${differing}`,
  };
}

/**
 * E3: with everything installed in it and at its hottest, the enclosure leaves people the stay that the design counts
 * on and that its use demands.
 * Measure: concentration or sea-level oxygen, whichever decides [share]. Limit: that of the band allowed.
 * A room where people work: 52 % or 10 % oxygen at worst; where people come now and then: 62 % or 8 %; beyond that nobody can be inside.
 * Not checked: the atmosphere cannot be worked out, or the use of the room is not known.
 */
export const e03People = defineRule<EnclosureDesign>({
  id: 'E3',
  title: 'People in the gas',
  severity: 'stop',
  measure: 'ratio',
  basis: { formula: exposureBasis.formula, source: exposureBasis.source, caution: exposureBasis.caution },
  limitKeys: ['agentMass_kg'],
  subjects: servedEnclosureSubjects,
  check(design, context) {
    const { people, enclosure } = design;
    const place = placeOfEnclosure(design);
    if (!people.isKnown) return notChecked(people.because, place);
    const { occupancy } = enclosure;
    const counted = enclosure.people.exposure;
    const allowed = occupancy === 'unknown' ? counted : milder(counted, GRAVEST[occupancy]);
    const isKept = graveness(people.sums.exposure) <= graveness(allowed);
    const { figures, text } = breathed(people.sums, allowed, context);
    if (isKept) {
      if (occupancy === 'unknown') return notChecked(`whether people work or come here is not known. ${text}`, place);
      return { kind: 'judged', isKept, ...figures, text, place };
    }
    const why = graveness(people.sums.exposure) > graveness(counted) ? `the design counts on that ${stayWords(counted)}` : `a room of this use must allow that ${stayWords(allowed)}`;
    return {
      kind: 'judged',
      isKept,
      ...figures,
      text: `${text} But ${why}.`,
      place,
      cure: { kind: 'advice', text: 'Take fewer cylinders or a smaller fill if the agent still suffices, lower the highest temperature, or count on a shorter stay with a shorter way out.' },
    };
  },
});
