import { type PlanPoint, distance_m } from '../geometry/point.ts';
import type { KnownLength, Underlay } from '../model/plan.ts';
import { refuse } from './command.ts';
import { soundFilePoint } from './sound-value.ts';

/** Refuses to change where a locked floor plan lies. */
export const refuseLocked = ({ name, locked }: Underlay): void => {
  if (locked) refuse(`Floor plan “${name}” is locked. Unlock it first.`);
};

/** A known length that can set or check a scale; refuses one between equal places or without length. */
export function soundKnownLength({ a, b, distance_m: site_m }: KnownLength): KnownLength {
  if (!Number.isFinite(site_m) || site_m <= 0) refuse('The distance on site must be more than 0.');
  if (!(distance_m(a, b) > 0)) refuse('The two places are one. Pick two places apart, as far as you can.');
  return { a: soundFilePoint(a), b: soundFilePoint(b), distance_m: site_m };
}

/** Where a place of the file lies on the plan. */
const toPlan = ({ at, rotation_rad }: Underlay, { x, y }: PlanPoint, metresPerUnit: number): PlanPoint => ({
  x: at.x + metresPerUnit * (x * Math.cos(rotation_rad) - y * Math.sin(rotation_rad)),
  y: at.y + metresPerUnit * (x * Math.sin(rotation_rad) + y * Math.cos(rotation_rad)),
});

/** Scales an underlay so that one place of its file stays where it is on the plan. Refuses a scale out of all reason. */
export function rescale(underlay: Underlay, metresPerUnit: number, fixed: PlanPoint): void {
  if (!(metresPerUnit > 0) || metresPerUnit > 1e6) refuse('This would make the floor plan larger than any building. Check the distance and the two places.');
  const before = toPlan(underlay, fixed, underlay.metresPerUnit ?? 1);
  const after = toPlan(underlay, fixed, metresPerUnit);
  underlay.at = soundFilePoint({ x: underlay.at.x + before.x - after.x, y: underlay.at.y + before.y - after.y });
  underlay.metresPerUnit = metresPerUnit;
}
