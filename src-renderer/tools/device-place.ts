import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { alongSegment_m } from '#shared/geometry/segment';
import type { DeviceKind, Level } from '#shared/model/plan';
import { WALL_DEVICES } from '#shared/sheets/device-shape';
import { type PlacedWall, wallsOn } from './level-things.ts';
import { WALL_PULL_m, type WallPlace, besideWall, nearestWall } from './wall-place.ts';

/** Half the depth of what hangs on a wall: its middle is so far off the face [m]. */
const HALF_DEPTH_m = 0.025;
/** Walls are drawn this thick behind their finished face [m]; the plan knows only the face. */
const DRAWN_WALL_m = 0.15;

/** Where a device would go, and the wall that it hangs on. */
export interface DevicePlace extends WallPlace {
  readonly facing_rad: number | null;
}

/** A place on one side of a wall, looking away from it. Behind the finished face it stands off by the wall as it is drawn. */
export function onWall(wall: PlacedWall, along_m: number, side: PlanPoint): DevicePlace {
  const { away_rad, ...place } = besideWall(wall, along_m, side, 0, { inside: HALF_DEPTH_m, outside: DRAWN_WALL_m + HALF_DEPTH_m });
  return { ...place, facing_rad: Math.atan2(Math.sin(away_rad), Math.cos(away_rad)) };
}

/**
 * Where a device goes when it is pointed at: what hangs on walls on the nearest one, facing the side pointed at, else
 * where the pointer is caught.
 * @param raw  where the pointer is: it chooses the wall and its side
 * @param caught  where it was caught: along the wall the device stands level with it
 */
export function devicePlace(level: Level | undefined, kind: DeviceKind, raw: PlanPoint, caught: PlanPoint): DevicePlace {
  const wall = nearestWall(level && WALL_DEVICES.has(kind) ? wallsOn(level) : [], raw, WALL_PULL_m);
  return wall ? onWall(wall, alongSegment_m(caught, wall.segment), raw) : { at: planPoint(caught.x, caught.y), facing_rad: null, wall: undefined, along_m: 0 };
}
