import { type Datum, findDatum, fromFace_m, faceName } from '../../derived/datum.ts';
import type { DerivedNozzle, Space } from '../../derived/derived.ts';
import { axisAngle_rad } from '../../geometry/angle.ts';
import { planPoint } from '../../geometry/point.ts';
import { defineRule, notChecked } from '../rule.ts';
import { perServedSpace } from '../subjects.ts';

/** Two faces this far from square still measure a place well [rad]. */
const SKEW_rad = (45 * Math.PI) / 180;

interface Dimensioned {
  readonly nozzle: DerivedNozzle;
  readonly space: Space;
  readonly datum: Datum | undefined;
}

/**
 * D4: each nozzle can be measured from two faces of one datum corner, and in height.
 * Measure: dimensions that it lacks.
 * Limit: none. The sheets draw them by themselves.
 * A nozzle in no space, or one that has lost its pipe end, is left to the checks of nozzles.
 */
export const d04DatumDimensions = defineRule<Dimensioned>({
  id: 'D4',
  title: 'Dimensions from the datum',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'two datum faces that cross + height above the finished floor', source: 'common practice' },
  subjects: perServedSpace((space, nozzles) => {
    const datum = findDatum(space, nozzles);
    return nozzles.map((nozzle) => ({ subject: { nozzle, space, datum }, ref: nozzle.ref, name: nozzle.nozzle.name }));
  }),
  check({ nozzle: { at }, space, datum }, { say }) {
    if (!at) return notChecked('its pipe end is lost.');
    const level = space.level.id;
    const [east, north] = datum?.faces ?? [];
    const isCrossing = east && north && axisAngle_rad(east.inward_rad, north.inward_rad) >= Math.PI / 2 - SKEW_rad;
    const figures = { kind: 'judged', limit: 0, limitSource: 'common practice', place: { level, at: [at], heights: [at] } } as const;
    if (!isCrossing) {
      return { ...figures, isKept: false, measured: 2, margin: -2, text: `${space.name} has no inside corner of two crossing faces to measure from. Draw its outline with one.` };
    }
    const foot = planPoint(at.x - Math.cos(east.inward_rad) * fromFace_m(east, at), at.y - Math.sin(east.inward_rad) * fromFace_m(east, at));
    return {
      ...figures,
      isKept: true,
      measured: 0,
      margin: 0,
      inputs: [
        { label: `From the ${faceName(east)}`, value: say.length(fromFace_m(east, at)) },
        { label: `From the ${faceName(north)}`, value: say.length(fromFace_m(north, at)) },
        { label: 'Orifice above the finished floor', value: say.length(at.z) },
      ],
      place: { ...figures.place, dimension: { a: foot, b: planPoint(at.x, at.y) } },
      text: `It is measured from the ${faceName(east)}, the ${faceName(north)} and the finished floor.`,
    };
  },
});
