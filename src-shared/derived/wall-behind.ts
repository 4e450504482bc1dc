import { bearing_rad, distance_m } from '../geometry/point.ts';
import { nearestOnSegment } from '../geometry/segment.ts';
import type { Cylinder } from '../model/plan.ts';
import type { Space, WallFace } from './derived.ts';

/** A wall farther behind a cylinder than this does not carry it [m]. */
const BEHIND_m = 1;
/** Its rail lies across this much of the direction to the wall. */
const ASIDE = Math.cos(Math.PI / 4);
/** Faces that are equally near, but for float noise [m]. */
const AS_NEAR_m = 1e-6;

/** A wall face with the room that it belongs to, and how far the axis of the cylinder stands off it. */
export interface WallBehind {
  readonly face: WallFace;
  readonly room: Space;
  readonly off_m: number;
  /** The cylinder stands in that room, not on the other side of its wall. */
  readonly isInside: boolean;
}

const isNearer = (one: WallBehind, other: WallBehind): boolean => one.off_m < other.off_m - AS_NEAR_m || (one.off_m <= other.off_m + AS_NEAR_m && one.isInside && !other.isInside);

/**
 * The nearest wall face behind a cylinder, at most 1 m away; of two rooms that meet there, the one that it stands in.
 * @param rooms  the rooms of the level that the cylinder is on
 */
export function findWallBehind({ at, back_rad }: Pick<Cylinder, 'at' | 'back_rad'>, rooms: readonly Space[]): WallBehind | undefined {
  let best: WallBehind | undefined;
  for (const room of rooms) {
    const { minX, minY, maxX, maxY } = room.bounds;
    if (at.x < minX - BEHIND_m || at.x > maxX + BEHIND_m || at.y < minY - BEHIND_m || at.y > maxY + BEHIND_m) continue;
    for (const face of room.walls) {
      const on = nearestOnSegment(at, face.segment);
      const off_m = distance_m(at, on);
      const away_rad = bearing_rad(at, on);
      if (off_m > BEHIND_m || (off_m > AS_NEAR_m && Math.cos(away_rad - back_rad) < ASIDE - 1e-9)) continue;
      const found = { face, room, off_m, isInside: off_m <= AS_NEAR_m || Math.cos(away_rad - face.inward_rad) < 0 };
      if (!best || isNearer(found, best)) best = found;
    }
  }
  return best;
}
