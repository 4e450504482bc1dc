import { turnTo_rad } from '../geometry/angle.ts';
import { isInsideRegion, sideOfOutline } from '../geometry/inside.ts';
import { sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m } from '../geometry/segment.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import { isFullHeight } from './clearance-faces.ts';
import type { HungNozzle, Solid, Space } from './derived.ts';
import type { PlacedFootprint } from './footprint.ts';
import { type Region, differenceOf } from './polygon-sums.ts';
import { floorAt_m } from './spaces.ts';

/** Each end of a face is drawn out by this [m], so that the grid of the polygon sums leaves no crack between two faces. */
const CRACK_m = 2 * SAME_PLACE_m;

/** A thing whose bottom is this near to the floor stands on it [m]. */
const JOINT_m = 1e-3;

/** Whether a solid stands on the floor of a space, so that no floor is left under it. */
export const standsOnFloor = (space: Space, { footprint, bottom_m }: Solid): boolean =>
  bottom_m <= Math.max(...footprint.map((corner) => floorAt_m(space, corner) ?? space.floor_m)) + JOINT_m;

/** What sight needs of a nozzle, or of a light. */
export type Eye = Pick<HungNozzle, 'at' | 'space' | 'blockers'>;

/** Solids that a nozzle cannot look past at the height of its orifice. */
const opaqueTo = ({ at, space, blockers }: Eye): readonly Solid[] => {
  if (!at || !space) return [];
  const fullHeight = space.solids.filter((solid) => !blockers.includes(solid) && isFullHeight(space, solid, at.z));
  return [...blockers, ...fullHeight];
};

/**
 * The part of its footprint that a nozzle sees in the plane of its orifice: the footprint minus the shadow of every
 * wall, shaft and opaque solid of its space. It sees nothing from outside its space or from inside a solid.
 * The floor under a thing that hangs is seen from the side on which nothing else stands before it: sight ends where it
 * leaves the thing. A thing that stands on the floor ends sight where sight meets it. The rest of the space is as exact as
 * the grid of the polygon sums, on the near side.
 */
export function seenOf(nozzle: Eye, { ring, reach_m }: Pick<PlacedFootprint, 'ring' | 'reach_m'>): Region {
  const { at, space } = nozzle;
  if (!at || !space || !isInsideRegion(at, space.outline, space.holes)) return [];
  const eye = planPoint(at.x, at.y);
  const shadows: Region[] = [];
  const cast = (segment: Segment): void => {
    const shadow = shadowOf(eye, segment, reach_m);
    if (shadow) shadows.push([shadow]);
  };
  for (const { segment } of space.walls) cast(segment);
  for (const solid of opaqueTo(nozzle)) {
    if (sideOfOutline(eye, solid.footprint) === 'inside') return [];
    const { minX, minY, maxX, maxY } = solid.bounds;
    if (minX > eye.x + reach_m || maxX < eye.x - reach_m || minY > eye.y + reach_m || maxY < eye.y - reach_m) continue;
    const stands = standsOnFloor(space, solid);
    for (const side of sidesOf(solid.footprint)) if (stands || isBehind(eye, side)) cast(side);
  }
  return shadows.length === 0 ? [ring] : differenceOf([ring], shadows);
}

/** Whether an eye looks at a side of a counter-clockwise ring from within. */
const isBehind = (eye: PlanPoint, { a, b }: Segment): boolean => (b.x - a.x) * (eye.y - a.y) - (b.y - a.y) * (eye.x - a.x) > 0;

/** Largest turn between two corners of a shadow's far side [rad]. */
const STEP_rad = Math.PI / 3;

/**
 * The shadow that a segment casts from an eye, out to at least `reach_m`: a counter-clockwise ring; undefined when it
 * lies out of reach, when the eye looks along it, or when the eye touches it.
 */
function shadowOf(eye: PlanPoint, { a, b }: Segment, reach_m: number): PlanPoint[] | undefined {
  const length_m = distance_m(a, b);
  if (length_m === 0 || distanceToSegment_m(eye, { a, b }) <= SAME_PLACE_m) return undefined;
  const ux = (b.x - a.x) / length_m;
  const uy = (b.y - a.y) / length_m;
  const foot_m = (eye.x - a.x) * ux + (eye.y - a.y) * uy;
  const off_m = Math.abs((eye.x - a.x) * uy - (eye.y - a.y) * ux);
  const within_m = reach_m * 1.01 + CRACK_m;
  if (off_m >= within_m || off_m <= LENGTH_SLACK_m) return undefined;
  const half_m = Math.sqrt(within_m ** 2 - off_m ** 2);
  const from_m = Math.max(0, foot_m - half_m) - CRACK_m;
  const to_m = Math.min(length_m, foot_m + half_m) + CRACK_m;
  if (to_m - from_m <= 2 * CRACK_m) return undefined;
  const place = (along_m: number): PlanPoint => planPoint(a.x + ux * along_m, a.y + uy * along_m);
  const [start, end] = [place(from_m), place(to_m)];
  const first_rad = bearing_rad(eye, start);
  const turn_rad = turnTo_rad(first_rad, bearing_rad(eye, end));
  const steps = Math.max(1, Math.ceil(Math.abs(turn_rad) / STEP_rad));
  const far = Array.from({ length: steps + 1 }, (_, i) => polar(eye, first_rad + (turn_rad * i) / steps, within_m * 2));
  const ring = [start, ...far, end];
  return turn_rad > 0 ? ring : ring.reverse();
}
