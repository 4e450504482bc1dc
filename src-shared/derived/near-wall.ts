import { bearing_rad, distance_m } from '../geometry/point.ts';
import { nearestOnSegment } from '../geometry/segment.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import { cornersNear } from './corner-zone.ts';
import type { HungNozzle, WallFace } from './derived.ts';
import { remembered } from './remember.ts';
import { inFrontOf_m, neighboursOf } from './wall-runs.ts';

/** A wall that a nozzle stands near. */
export interface NearWall {
  readonly face: WallFace;
  readonly distance_m: number;
  /** Axis along the wall as it is seen from the nozzle [rad]: the face's own, or square to the way to its end round an outside corner. */
  readonly axis_rad: number;
}

/**
 * The walls of its space that a nozzle stands near, nearest first: it is in front of them and no farther than the zone.
 * Past the end of a face, round an outside corner, the face counts unless its neighbour there is nearer.
 * @param zone_m near-wall zone [m], its border included
 */
export const wallsNear = remembered(({ at, space }: HungNozzle, zone_m: number): readonly NearWall[] => {
  if (!at || !space) return [];
  const placeOn = ({ segment }: WallFace) => nearestOnSegment(at, segment);
  return space.walls
    .flatMap((face): NearWall[] => {
      if (inFrontOf_m(at, face) < -SAME_PLACE_m) return [];
      const place = placeOn(face);
      const far_m = distance_m(at, place);
      if (far_m > zone_m + LENGTH_SLACK_m) return [];
      const { a, b } = face.segment;
      const foot = ((at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y)) / distance_m(a, b) ** 2;
      if (foot >= 0 && foot <= 1) return [{ face, distance_m: far_m, axis_rad: bearing_rad(a, b) }];
      const { before, after } = neighboursOf(space, face);
      const beyond = foot < 0 ? before : after;
      if (beyond && distance_m(at, placeOn(beyond)) < far_m - LENGTH_SLACK_m) return [];
      return [{ face, distance_m: far_m, axis_rad: far_m > SAME_PLACE_m ? bearing_rad(at, place) + Math.PI / 2 : bearing_rad(a, b) }];
    })
    .sort((a, b) => a.distance_m - b.distance_m);
});

/**
 * The near walls that a nozzle must blow along: those that belong to no corner it stands in.
 * In a corner the direction to the corner governs instead.
 */
export function wallsAlone(nozzle: HungNozzle, nearZone_m: number, cornerZone_m: number): NearWall[] {
  const inCorner = new Set(cornersNear(nozzle, cornerZone_m).flatMap(({ walls }) => walls));
  return wallsNear(nozzle, nearZone_m).filter(({ face }) => !inCorner.has(face));
}
