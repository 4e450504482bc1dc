import { convexHull } from '../geometry/convex-hull.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import { type PlanPoint, planPoint } from '../geometry/point.ts';
import { HAIR_m, HAIR_rad } from './site.ts';

/** A wider half angle is taken as this [rad]: its wedge would be no ring any more. */
const WIDEST_rad = 1.5;
/** Steps along the hyperbola in which a cone is cut where it passes higher or lower than its tip; its tangents lie less than 1 mm off in 5 m. */
const STEP = 0.04;

/**
 * The places of which an orifice there would have a target in the cone of a jet, as one convex ring that is never too small: a wedge
 * from the target against the jet; where the two are not at one height, what the level plane cuts of the cone.
 * @param way_rad  direction of the jet
 * @param half_rad  half the angle of the cone, > 0
 * @param off_m  how much higher or lower the target is, ≥ 0
 * @param reach_m  how far the jet is followed, along its axis
 */
export function coneOnPlan(target: PlanPoint, way_rad: number, half_rad: number, off_m: number, reach_m: number): PlanPoint[] {
  const spread = Math.tan(Math.min(half_rad + HAIR_rad, WIDEST_rad));
  const [x, y] = [Math.cos(way_rad), Math.sin(way_rad)];
  const place = (along_m: number, aside_m: number): PlanPoint => planPoint(target.x - along_m * x + aside_m * y, target.y - along_m * y - aside_m * x);
  const far_m = reach_m + HAIR_m;
  if (off_m < HAIR_m) return [place(0, 0), place(far_m, -far_m * spread), place(far_m, far_m * spread)];
  const near_m = off_m / spread;
  if (near_m >= far_m) return [];
  const most = Math.acosh(far_m / near_m) + STEP;
  const count = Math.ceil(most / STEP);
  const out = 1 / Math.cosh(most / count / 2);
  // Where the tangents of even steps meet, half way between two of them, and beyond the reach.
  const corners = Array.from({ length: 2 * count }, (_, i) => ((i - count + 0.5) * most) / count).map((u) => place(near_m * Math.cosh(u) * out, off_m * Math.sinh(u) * out));
  return clipToHalfPlane(convexHull(corners), { x: -x, y: -y, limit: far_m - (target.x * x + target.y * y) });
}
