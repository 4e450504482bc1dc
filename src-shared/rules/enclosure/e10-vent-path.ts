import type { VentSums } from '../../calculations/design/design.ts';
import type { Worked } from '../../calculations/design/worked.ts';
import { ventChain, ventChainBasis } from '../../calculations/formulas/relief-vent.ts';
import { spacesOfEnclosure } from '../../derived/spaces-of-enclosure.ts';
import { polar } from '../../geometry/point.ts';
import type { VentStep } from '../../model/plan.ts';
import type { FindingInput, Place } from '../finding.ts';
import { type AskedOpening, openingsOf, placeOfOpening } from '../openings.ts';
import { type CheckContext, atLeast, defineRule, notChecked } from '../rule.ts';
import { perServedRoom } from '../served-rooms.ts';
import { slackOf } from '../slack.ts';
import { stepName, ventEndOf } from './vent-way.ts';

interface AskedVent extends AskedOpening {
  readonly vent: Worked<VentSums>;
  /** Direction out of the room through it [rad]; undefined when its wall has gone. */
  readonly out_rad: number | undefined;
}

const SOURCE = 'New York City Fire Code 904.3.7.2.6: relief to outdoors; ISO 21805 for the way there (memory)';
/** How long the way out is drawn on the plan [m]. */
const SHOWN_m = 1;

/** Free area that this vent must let out: its part of what the room needs, by its share of the free area there is. */
function neededOf({ opening, vent }: AskedVent): number | undefined {
  if (!vent.isKnown || !opening.freeArea_m2) return undefined;
  const { needed_m2, countedLeakage_m2, vents } = vent.sums;
  const all_m2 = vents.reduce((sum, { freeArea_m2 }) => sum + freeArea_m2, 0);
  return all_m2 > 0 ? (Math.max(0, needed_m2 - countedLeakage_m2) * opening.freeArea_m2) / all_m2 : undefined;
}

const sizedSteps = (path: readonly VentStep[]): VentStep[] => path.filter(({ through }) => through !== 'outdoors');

const inputsOf = ({ opening: { freeArea_m2, ventPath } }: AskedVent, { say }: CheckContext): FindingInput[] => [
  { label: 'Free area of the vent', value: freeArea_m2 === null ? 'not known' : say.area(freeArea_m2) },
  ...sizedSteps(ventPath).map((step) => ({ label: `Free area of ${stepName(step)}`, value: step.freeArea_m2 === null ? 'not known' : say.area(step.freeArea_m2) })),
];

function placeOf(asked: AskedVent): Place {
  const place = placeOfOpening(asked);
  const [from] = place.at;
  return from && asked.out_rad !== undefined ? { ...place, rays: [{ from, to: polar(from, asked.out_rad, SHOWN_m) }] } : place;
}

/** The spaces drawn behind the vent. */
const areasOf = ({ behind }: AskedVent): Place['areas'] => {
  const drawn = behind.flatMap(({ beyond }) => (beyond.kind === 'adjoining' ? [[beyond.adjoining.outline]] : []));
  return drawn.length > 0 ? drawn : undefined;
};

/**
 * E10: what a relief vent lets out comes outdoors, through no corridor, way out or other protected room, and every part
 * of its way is large enough, alone and all in turn.
 * Measure: free area of the one opening that stands for vent and steps in series, or of the narrowest step [m²].
 * Limit: the part of the needed relief area that falls on this vent.
 * Not checked: where it leads, the area of a step, or the needed area is not known.
 */
export const e10VentPath = defineRule<AskedVent>({
  id: 'E10',
  title: 'Way of the relief vent',
  severity: 'stop',
  measure: 'area',
  basis: {
    formula: `leads outdoors, not through corridor, way out or protected room; each step and all in series ≥ needed area: ${ventChainBasis.formula}`,
    source: `${SOURCE}; ${ventChainBasis.source}`,
    caution: ventChainBasis.caution,
  },
  subjects: perServedRoom((room) =>
    openingsOf(room, ({ kind }) => kind === 'relief-vent').map(({ subject, ...named }) => {
      const face = spacesOfEnclosure(room.on.spaces, room.ref.id)[0]?.walls.find(({ ref }) => ref.id === subject.opening.wall);
      return { ...named, subject: { ...subject, vent: room.sums.vent, out_rad: face && face.inward_rad + Math.PI } };
    }),
  ),
  check(asked, context) {
    const { opening, vent, behind } = asked;
    const { say } = context;
    const place = placeOf(asked);
    const inputs = inputsOf(asked, context);
    const end = ventEndOf(opening, behind);
    if (end.kind === 'wrong') {
      return { kind: 'judged', isKept: false, text: end.text, inputs, place: { ...place, areas: areasOf(asked) }, cure: { kind: 'advice', text: 'Lead it outdoors through a duct of its own, or put the vent in an outer wall.' } };
    }
    if (end.kind === 'unknown') return notChecked('where the vent leads is not said.', place);
    const steps = sizedSteps(opening.ventPath);
    if (steps.length === 0) return { kind: 'judged', isKept: true, text: 'Opens straight to outdoors.', inputs, place };
    const needed_m2 = neededOf(asked);
    if (needed_m2 === undefined) return notChecked(vent.isKnown ? 'the free area of the vent is not known.' : `it leads outdoors, but what its way must let through is not worked out: ${vent.because}`, place);
    if (needed_m2 === 0) return { kind: 'judged', isKept: true, limit: 0, limitSource: vent.isKnown ? vent.sums.flowSource : '', text: 'Leads outdoors; the leaks that are counted let out all that is needed.', inputs, place };
    const open = steps.find(({ freeArea_m2 }) => freeArea_m2 === null);
    const sized = steps.flatMap((step) => (step.freeArea_m2 === null ? [] : [{ step, area_m2: step.freeArea_m2 }]));
    const [narrowest] = [...sized].sort((one, other) => one.area_m2 - other.area_m2);
    const limit = { value: needed_m2, source: vent.isKnown ? vent.sums.flowSource : '' };
    const alone = narrowest && atLeast(narrowest.area_m2, limit, slackOf(needed_m2));
    const enlarge = { kind: 'advice', text: 'Give the narrow parts of its way more free area.' } as const;
    if (narrowest && alone && !alone.isKept) {
      const { value, limit: needed } = say.areaAgainst(alone.measured, needed_m2);
      return { ...alone, text: `${stepName(narrowest.step).replace(/^a/, 'A')} on its way outdoors has a free area of ${value}; ${needed} are needed.`, inputs, place, cure: enlarge };
    }
    if (open) return notChecked(`the free area of ${stepName(open)} on its way outdoors is not known.`, place);
    const coefficient = context.basis.ventCoefficient;
    const chain_m2 = ventChain([{ area_m2: opening.freeArea_m2 ?? 0 }, ...sized].map(({ area_m2 }) => ({ area_m2, dischargeCoefficient: coefficient }))).area_m2;
    const figures = atLeast(chain_m2, limit, slackOf(needed_m2));
    const { value, limit: needed } = say.areaAgainst(chain_m2, needed_m2);
    const way = steps.map(stepName).join(', then ');
    if (figures.isKept) return { ...figures, text: `Leads outdoors through ${way}; all in turn let through as one opening of ${value}, and ${needed} are needed.`, inputs, place };
    return { ...figures, text: `Vent and ${way}, one after the other, let through only as one opening of ${value}; ${needed} are needed.`, inputs, place, cure: enlarge };
  },
});
