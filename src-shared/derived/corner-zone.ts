import { bearing_rad, distance_m } from '../geometry/point.ts';
import { distanceToSegment_m } from '../geometry/segment.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { ConvexCorner, HungNozzle, Space, WallFace } from './derived.ts';
import { remembered } from './remember.ts';
import { inFrontOf_m, straightRunOf } from './wall-runs.ts';

/** A corner that a nozzle stands in. */
export interface NearCorner {
  readonly corner: ConvexCorner;
  /** Direction from the nozzle to the corner [rad]. */
  readonly bearing_rad: number;
  /** Distance to the farther of its two walls [m]: what was compared with the zone. */
  readonly distance_m: number;
  /** All faces of its two walls, pieces of a straight wall included. */
  readonly walls: readonly WallFace[];
}

/** The two walls of each corner, all their pieces. */
const cornerRuns = remembered((space: Space) => new Map(space.convexCorners.map((corner) => [corner, corner.faces.map((face) => straightRunOf(space, face))])));

/**
 * The corners of its space that a nozzle stands in, nearest first: it is in front of both walls and within the zone
 * of both, measured to the walls as far as they go; a wall drawn in straight pieces is one wall.
 * Several checks ask for the same nozzle: the very same answer for it.
 * @param zone_m corner zone [m], its border included
 */
export const cornersNear = remembered(({ at, space }: HungNozzle, zone_m: number): readonly NearCorner[] => {
  if (!at || !space) return [];
  const runsOf = cornerRuns(space);
  return space.convexCorners
    .flatMap((corner): NearCorner[] => {
      if (corner.faces.some((face) => inFrontOf_m(at, face) < -SAME_PLACE_m)) return [];
      const runs = runsOf.get(corner) ?? [];
      const far_m = Math.max(...runs.map((run) => Math.min(...run.map(({ segment }) => distanceToSegment_m(at, segment)))));
      if (far_m > zone_m + LENGTH_SLACK_m) return [];
      return [{ corner, bearing_rad: bearingTo(corner, at), distance_m: far_m, walls: runs.flat() }];
    })
    .sort((a, b) => a.distance_m - b.distance_m);
});

/** Direction to a corner; from the corner itself, straight out of the room between its walls. */
function bearingTo({ at: corner, faces }: ConvexCorner, at: { readonly x: number; readonly y: number }): number {
  if (distance_m(at, corner) > SAME_PLACE_m) return bearing_rad(at, corner);
  const x = faces.reduce((sum, { inward_rad }) => sum + Math.cos(inward_rad), 0);
  const y = faces.reduce((sum, { inward_rad }) => sum + Math.sin(inward_rad), 0);
  return Math.atan2(-y, -x);
}
