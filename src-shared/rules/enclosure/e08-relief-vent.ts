import type { EnclosureDesign } from '../../calculations/design/design.ts';
import { reliefVentBasis } from '../../calculations/formulas/relief-vent.ts';
import { openingMiddle, wallMiddle } from '../../derived/wall-places.ts';
import type { Place } from '../finding.ts';
import { type Answer, type CheckContext, atLeast, atMost, defineRule, notChecked } from '../rule.ts';
import { placeOfEnclosure, servedEnclosureSubjects } from '../enclosure-subjects.ts';
import { staleDischarge } from '../design-subjects.ts';
import { slackOf } from '../slack.ts';

type Judged = Extract<Answer, { kind: 'judged' }>;

/** The vents that are there, else the wall that gives way first. */
function placeOfVents(design: EnclosureDesign): Place {
  const { enclosure, ref, weakest } = design;
  const vents = Object.values(enclosure.openings).filter(({ kind }) => kind === 'relief-vent');
  const at = vents.flatMap((vent) => openingMiddle(enclosure, vent) ?? []);
  const wall = weakest.isKnown ? wallMiddle(enclosure, weakest.sums.wall.id) : undefined;
  if (at.length > 0 || wall) return { level: ref.level, at: at.length > 0 ? at : wall ? [wall] : [] };
  return placeOfEnclosure(design);
}

/** The fault that the calculated discharge brings more pressure than the weakest wall bears. */
function tooHard({ filling, weakest }: EnclosureDesign, { say }: CheckContext): Judged | undefined {
  if (!filling.isKnown || !weakest.isKnown) return undefined;
  const { pressure_Pa, wallName } = weakest.sums;
  const figures = atMost(filling.sums.peakOverpressure_Pa, { value: pressure_Pa, source: 'declared pressure of the weakest wall' }, slackOf(pressure_Pa));
  if (figures.isKept) return undefined;
  const { value, limit } = say.quantityAgainst(figures.measured, figures.limit, 'pressureDifference');
  return { ...figures, measure: 'pressureDifference', text: `The discharge brings ${value} over the pressure outdoors, but ${wallName} bears only ${limit}.${staleDischarge(filling.sums.isStale)}` };
}

/**
 * E8: the relief vents let out enough for the weakest wall.
 * Measure: free area of the vents, with the leaks where the basis of design counts them [m²]; or the overpressure of the calculated discharge [Pa].
 * Limit: area that the flow needs at the pressure that the weakest wall bears; that pressure itself.
 * Not checked: flow, agent, the free area of a vent or the strength of a wall is not known (E9 asks for it).
 */
export const e08ReliefVent = defineRule<EnclosureDesign>({
  id: 'E8',
  title: 'Pressure relief',
  severity: 'stop',
  measure: 'area',
  basis: { formula: reliefVentBasis.formula, source: reliefVentBasis.source, caution: reliefVentBasis.caution },
  limitKeys: ['agentMass_kg', 'peakFlow_kg_s'],
  subjects: servedEnclosureSubjects,
  check(design, context) {
    const { vent, weakest } = design;
    const { say } = context;
    const place = placeOfVents(design);
    const hard = tooHard(design, context);
    const enlarge = { kind: 'advice', text: 'Enlarge the relief vents or strengthen the weakest wall.' } as const;
    if (!vent.isKnown) return hard ? { ...hard, place, cure: enlarge } : notChecked(vent.because, place);
    const { needed_m2, provided_m2, vents, flowSource, countedLeakage_m2 } = vent.sums;
    const figures = atLeast(provided_m2, { value: needed_m2, source: flowSource }, slackOf(needed_m2));
    const { value, limit } = say.areaAgainst(provided_m2, needed_m2);
    const wall = weakest.isKnown ? ` for what ${weakest.sums.wallName} bears, ${say.quantity(weakest.sums.pressure_Pa, 'pressureDifference')}` : '';
    const leaks = countedLeakage_m2 > 0 ? `, leaks of ${say.area(countedLeakage_m2)} counted` : '';
    if (!figures.isKept) {
      const what = vents.length === 0 ? `It has no relief vent${leaks}, but ${limit} of free area are needed${wall}.` : `Its free relief area is ${value}${leaks}; ${limit} are needed${wall}.`;
      return {
        ...figures,
        text: hard ? `${what} ${hard.text}` : what,
        place,
        cure: { kind: 'advice', text: `Give it ${say.area(-figures.margin)} more free area, leading outdoors.` },
      };
    }
    if (hard) return { ...hard, text: `${hard.text} Its free relief area of ${value} suits the flow that it is sized for.`, place, cure: enlarge };
    return { ...figures, text: `Its free relief area is ${value}${leaks}; ${limit} are needed${wall}.`, place };
  },
});
