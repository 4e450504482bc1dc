import { turnTo_rad } from '../geometry/angle.ts';
import { isInsideRegion, sideOfOutline } from '../geometry/inside.ts';
import { distanceToOutline_m, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m } from '../geometry/segment.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import { isFullHeight } from './clearance-faces.ts';
import type { HungNozzle, Solid, Space } from './derived.ts';
import { dividesSpace, partsBays } from './dividing-solid.ts';
import type { PlacedFootprint } from './footprint.ts';
import { joinedOf, lowCeilingsOf } from './low-ceilings.ts';
import { type Region, differenceOf, intersectionOf, isRectangular } from './polygon-sums.ts';
import { floorAt_m } from './spaces.ts';

/** Each end of a face is drawn out by this [m], so that the grid of the polygon sums leaves no crack between two faces. */
const CRACK_m = 2 * SAME_PLACE_m;

/** Nearer to a wall than this its shadow is cut off where it begins [m]. */
const OFF_WALL_m = 0.01;

/** A thing whose bottom is this near to the floor stands on it [m]. */
const JOINT_m = 1e-3;

/** Whether a solid stands on the floor of a space, so that no floor is left under it. */
export const standsOnFloor = (space: Space, { footprint, bottom_m }: Solid): boolean =>
  bottom_m <= highestFloor_m(space, footprint) + JOINT_m;

/** What sight needs of a nozzle, or of a light. */
export type Eye = Pick<HungNozzle, 'at' | 'space' | 'blockers'>;

/**
 * Solids that a nozzle cannot look past: those that the plane of its orifice cuts, those that fill the height of the space
 * or divide it like a wall, and beams that hang below the orifice.
 */
export const opaqueTo = ({ at, space, blockers }: Eye): readonly Solid[] => {
  if (!at || !space) return [];
  const others = space.solids.filter((solid) => !blockers.includes(solid) && (isFullHeight(space, solid, at.z) || dividesSpace(space, solid) || partsBays(space, solid, at.z)));
  return [...blockers, ...others];
};

/**
 * The part of its footprint that a nozzle sees: the footprint minus the shadow of every wall, shaft and opaque solid of its
 * space, and of every part of the ceiling that hangs lower than its orifice. It sees nothing from outside its space or from
 * inside a solid.
 *
 * What is in sight, place by place of the floor: some straight line in space leads from the orifice to the place or to a
 * height over it that is not above the orifice, past all of these. Things lower than the orifice stop nothing, since holes
 * blow sideways and agent falls over them; beams and partitions count up to the ceiling. Of what is in sight so, only this
 * is taken: a place to which the way at the height of the orifice is free, and a place under the first thing that hangs in
 * that way, as far as the line to the floor passes under the near edge of the thing. Behind that thing nothing is taken, so
 * that each bay between beams is seen by its own nozzles only. A thing that stands on the floor ends sight where sight
 * meets it. The rest is as exact as the grid of the polygon sums, on the near side: never more than is in sight.
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
  /** Near edges of a thing that hangs: what the line to the floor under them no longer reaches. */
  const castNear = (sides: readonly Segment[], bottom_m: number, floor_m: number): void => {
    const share = (at.z - bottom_m) / (at.z - floor_m);
    if (!(share > 0)) return;
    for (const { a, b } of sides) if (!isBehind(eye, { a, b })) cast({ a: beyond(eye, a, share), b: beyond(eye, b, share) });
  };
  for (const { segment } of space.walls) cast(segment);
  let isPastSolid = false;
  for (const solid of opaqueTo(nozzle)) {
    const { minX, minY, maxX, maxY } = solid.bounds;
    if (minX > eye.x + reach_m || maxX < eye.x - reach_m || minY > eye.y + reach_m || maxY < eye.y - reach_m) continue;
    const from = sideOfOutline(eye, solid.footprint);
    if (from === 'inside') return [];
    isPastSolid = true;
    const sides = sidesOf(solid.footprint);
    const stands = standsOnFloor(space, solid);
    for (const side of sides) if (stands || isBehind(eye, side)) cast(side);
    if (stands) continue;
    castNear(sides, solid.bottom_m, highestFloor_m(space, solid.footprint));
    // No line from its very edge leads under it.
    if (from === 'on' && solid.bottom_m < at.z) shadows.push([solid.footprint]);
  }
  const low = lowCeilingsOf(space, at);
  for (const { region, bottom_m } of low) castNear(region.flatMap(sidesOf), bottom_m, highestFloor_m(space, region.flat()));
  for (const side of joinedOf(low, space).flatMap(sidesOf)) if (isBehind(eye, side)) cast(side);
  if (shadows.length === 0) return [ring];
  // Nothing but the four walls of a rectangular room is in the way.
  const isBare = !isPastSolid && low.length === 0 && space.walls.length === 4 && space.holes.length === 0 && distanceToOutline_m(eye, space.outline) >= OFF_WALL_m;
  return isBare && isRectangular(space.outline) && isRectangular(ring) ? intersectionOf([ring], [space.outline]) : differenceOf([ring], shadows);
}

/** The highest floor under some places [m]. */
const highestFloor_m = (space: Space, places: readonly PlanPoint[]): number => Math.max(...places.map((p) => floorAt_m(space, p) ?? space.floor_m));

/** The place so far beyond another that the other lies at `share` of the way to it. */
const beyond = (eye: PlanPoint, p: PlanPoint, share: number): PlanPoint => planPoint(eye.x + (p.x - eye.x) / share, eye.y + (p.y - eye.y) / share);

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
