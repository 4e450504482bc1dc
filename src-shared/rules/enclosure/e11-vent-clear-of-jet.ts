import { openingFace } from '../../derived/behind-opening.ts';
import type { DerivedNozzle, Space } from '../../derived/derived.ts';
import { type JetAtOpening, type OpeningFace, jetsAtOpening } from '../../derived/vent-in-jet.ts';
import { openingMiddle } from '../../derived/wall-places.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Opening } from '../../model/plan.ts';
import { thingName } from '../../model/thing-name.ts';
import { feet_m } from '../../units/convert.ts';
import type { Place } from '../finding.ts';
import { atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { perServedSpace } from '../subjects.ts';

interface VentAndNozzles {
  readonly space: Space;
  readonly opening: Opening;
  readonly nozzles: readonly DerivedNozzle[];
}

/** Least way from a hole to a vent in its jet [m]. */
export const VENT_CLEAR_m = feet_m(6);
const SOURCE = 'common practice: 6 ft';

/** The space of its enclosure that a vent opens from, by the height of its middle. */
export function opensFrom({ bottom_m, height_m, ...opening }: Opening, { kind, enclosure, ...space }: Space): boolean {
  const middle_m = bottom_m + height_m / 2;
  const at = openingMiddle(enclosure, opening);
  if (middle_m < 0 && enclosure.underFloor) return kind === 'under-floor';
  const ceiling_m = kind === 'ceiling-void' ? space.floor_m : at && space.ceilingAt_m(at);
  const isAbove = enclosure.ceilingVoid !== null && kind !== 'under-floor' && ceiling_m !== undefined && middle_m > ceiling_m;
  return isAbove ? kind === 'ceiling-void' : kind === 'room';
}

const placeOf = ({ space, opening }: VentAndNozzles, jet?: JetAtOpening): Place => {
  const middle = openingMiddle(space.enclosure, opening);
  const at = [...(middle ? [middle] : []), ...(jet ? [jet.from] : [])];
  return { level: space.level.id, at: at.length > 0 ? at : space.outline, ...(jet ? { dimension: { a: jet.from, b: jet.to } } : {}) };
};

/**
 * E11: no nozzle blows at a relief vent from near: the jet would push agent straight out, and hold the vent open or shut.
 * Measure: from a hole to the nearest part of the vent that lies in its jet, which spreads as a cone [m]. Limit: 6 ft, common practice.
 * Not checked: the spread of a jet is blank and none blows straight at the vent.
 */
export const e11VentClearOfJet = defineRule<VentAndNozzles>({
  id: 'E11',
  title: 'Relief vent clear of jets',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: 'hole to the part of the vent within its jet ≥ 6 ft (1.83 m)',
    source: SOURCE,
    caution: 'The manual of the nozzle may ask for more.',
  },
  limitKeys: ['jetSpread_rad'],
  subjects: perServedSpace((space, nozzles) => {
    if (nozzles.length === 0) return [];
    const vents = Object.values(space.enclosure.openings).filter((opening) => opening.kind === 'relief-vent' && opensFrom(opening, space));
    return vents.map((opening) => {
      const ref = { kind: 'opening', level: space.level.id, enclosure: space.enclosure.id, id: opening.id } as const;
      return { subject: { space, opening, nozzles }, ref, name: `${thingName({ levels: { [space.level.id]: space.level }, networks: {} }, ref)}, ${space.enclosure.name}` };
    });
  }),
  check(asked, { say }) {
    const { space, opening, nozzles } = asked;
    const on = openingFace(space.enclosure, opening);
    if (!on) return notChecked('its wall has gone.', placeOf(asked));
    const face: OpeningFace = { wall: opening.wall, on, bottom_m: opening.bottom_m, top_m: opening.bottom_m + opening.height_m };
    const spreads = nozzles.map((nozzle) => ({ nozzle, spread: limitOrBlank(nozzle.profile, 'jetSpread_rad') }));
    const jets = spreads.flatMap(({ nozzle, spread }) => jetsAtOpening(nozzle, spread.limit?.value ?? 0, face).map((jet) => ({ nozzle, jet })));
    const [nearest] = jets.sort((one, other) => one.jet.distance_m - other.jet.distance_m);
    const inputs = spreads.slice(0, 1).flatMap(({ spread }) => (spread.limit ? [{ label: 'Half the angle of a jet', value: say.angle(spread.limit.value), source: spread.limit.source }] : []));
    const figures = nearest && atLeast(nearest.jet.distance_m, { value: VENT_CLEAR_m, source: SOURCE }, LENGTH_SLACK_m);
    if (nearest && figures && !figures.isKept) {
      const { value, limit } = say.against(figures.measured, VENT_CLEAR_m);
      const by = nearest.nozzle.nozzle.name;
      return {
        ...figures,
        text: `${by} blows at it from ${value}; ${limit} is the least. Its jet would push agent straight out.`,
        inputs,
        place: placeOf(asked, nearest.jet),
        cure: { kind: 'advice', text: `Turn the holes of ${by} away from the vent, or shift the vent along its wall.` },
      };
    }
    const blank = spreads.find(({ spread }) => spread.limit === undefined);
    if (blank && blank.spread.limit === undefined) return { ...blank.spread.blank, ...(blank.spread.blank.kind === 'not-checked' ? { place: placeOf(asked) } : {}) };
    if (!nearest || !figures) return { kind: 'judged', isKept: true, limit: VENT_CLEAR_m, limitSource: SOURCE, text: 'No jet points at it.', inputs, place: placeOf(asked) };
    const { value, limit } = say.against(figures.measured, VENT_CLEAR_m);
    return { ...figures, text: `The nearest jet that blows at it, of ${nearest.nozzle.nozzle.name}, comes from ${value}; ${limit} is the least.`, inputs, place: placeOf(asked, nearest.jet) };
  },
});
