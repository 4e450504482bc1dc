import { normalAngle_rad } from '../geometry/angle.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import { ANGLE_SLACK_rad, LENGTH_SLACK_m, SLIVER_m2 } from '../geometry/tolerance.ts';
import { isSameRef } from '../model/plan.ts';
import { nearestClearanceFace } from './clearance-faces.ts';
import { coverageOf } from './coverage.ts';
import type { HungNozzle, Space } from './derived.ts';
import { blankArcLimits, legalArcs } from './legal-arc.ts';
import { blockersOf } from './nozzles.ts';
import { remembered } from './remember.ts';
import type { Arc } from './turn-intervals.ts';

/** A nozzle as it would be with another rotation, its space and everything around it as before. */
export const turnedTo = (nozzle: HungNozzle, rotation_rad: number): HungNozzle => ({
  ...nozzle,
  nozzle: { ...nozzle.nozzle, rotation_rad },
  holes_rad: nozzle.nozzle.holes_rad.map((hole_rad) => normalAngle_rad(hole_rad + rotation_rad)),
});

/** A nozzle as it would be with its orifice elsewhere in its space. */
export const movedTo = (nozzle: HungNozzle, at: PlanPoint3): HungNozzle => ({
  ...nozzle,
  at,
  localCeiling_m: nozzle.space?.ceilingAt_m(at),
  blockers: nozzle.space ? blockersOf(nozzle.space, at) : [],
});

/** Whether a rotation is in one of a nozzle's legal ranges. */
export function isInArcs(arcs: readonly Arc[], rotation_rad: number): boolean {
  const turn_rad = normalAngle_rad(rotation_rad);
  return arcs.some(({ from_rad, to_rad }) => [turn_rad, turn_rad + 2 * Math.PI].some((at_rad) => at_rad >= from_rad - ANGLE_SLACK_rad && at_rad <= to_rad + ANGLE_SLACK_rad));
}

/** A figure that a change may not make worse: kept by its limit, or no farther off it than it was. */
const isNoWorse = (before: number, after: number, most: number, slack: number): boolean => after <= Math.max(before, most) + slack;

/** A space apart, so that what is tried does not drive out what is known of the nozzles as they are. */
const apart = remembered((space: Space): Space => ({ ...space, ceilingAt_m: (at) => space.ceilingAt_m(at) }));

/** Whether a nozzle covers the same floor after a turn in its place: what it sees does not hang on its rotation, and its footprint comes to lie on itself. */
export function coversTheSame(before: HungNozzle, after: HungNozzle): boolean {
  const { at, profile } = after;
  const footprint = profile?.footprint;
  if (at !== before.at || !footprint) return false;
  if (footprint.shape === 'circle') return true;
  const step_rad = footprint.length_m === footprint.width_m ? Math.PI / 2 : Math.PI;
  const steps = (after.nozzle.rotation_rad - before.nozzle.rotation_rad) / step_rad;
  return Math.abs(steps - Math.round(steps)) <= ANGLE_SLACK_rad;
}

/**
 * Whether a change of one nozzle leaves the floor of its space as well covered as before, and gives no nozzle more or
 * farther floor than its unit allows.
 * @param nozzles those that serve the space, with the nozzle as it is now
 */
function keepsCoverage(before: HungNozzle, changed: HungNozzle, nozzles: readonly HungNozzle[]): boolean {
  const { space } = changed;
  if (!space || nozzles.some(({ profile }) => !profile?.footprint) || coversTheSame(before, changed)) return true;
  const gapsOf = ({ uncovered }: ReturnType<typeof coverageOf>): number => uncovered.reduce((sum, { area_m2 }) => sum + area_m2, 0);
  const now = coverageOf(space, nozzles);
  const then = coverageOf(apart(space), nozzles.map((each) => (isSameRef(each.ref, changed.ref) ? changed : each)));
  if (!isNoWorse(gapsOf(now), gapsOf(then), 0, SLIVER_m2)) return false;
  return nozzles.every(({ profile }, i) => {
    const [was, is] = [now.perNozzle[i], then.perNozzle[i]];
    const { nozzleReach_m, nozzleArea_m2 } = profile?.limits ?? {};
    if (!was || !is) return true;
    return (!nozzleReach_m || isNoWorse(was.farthest_m, is.farthest_m, nozzleReach_m.value, LENGTH_SLACK_m)) && (!nozzleArea_m2 || isNoWorse(was.area_m2, is.area_m2, nozzleArea_m2.value, LENGTH_SLACK_m));
  });
}

/**
 * Whether a nozzle that is turned or moved gets no new stop from the walls, the ceiling, the corners or the coverage of
 * its space (N1, N2, N5 to N7, N9, N10). Never while a limit of its turns is blank: then nothing can be promised.
 * @param nozzles those that serve its space, the nozzle as it is now among them
 */
export function bringsNoStop(before: HungNozzle, after: HungNozzle, nozzles: readonly HungNozzle[]): boolean {
  const { at, space } = after;
  if (!at || !space || !before.at || blankArcLimits(after).length > 0 || !isInArcs(legalArcs(after), after.nozzle.rotation_rad)) return false;
  const { nozzleToWall_m, nozzleToCeiling_m } = after.profile?.limits ?? {};
  if (at !== before.at) {
    const off_m = (nozzle: HungNozzle): number => (nozzle.at && nearestClearanceFace(space, nozzle.at)?.distance_m) ?? 0;
    if (!nozzleToWall_m || !isNoWorse(-off_m(before), -off_m(after), -nozzleToWall_m.value, LENGTH_SLACK_m)) return false;
    const drop_m = after.localCeiling_m === undefined ? undefined : after.localCeiling_m - at.z;
    if (!nozzleToCeiling_m || drop_m === undefined || drop_m < -LENGTH_SLACK_m || drop_m > nozzleToCeiling_m.value + LENGTH_SLACK_m) return false;
  }
  return keepsCoverage(before, after, nozzles);
}
