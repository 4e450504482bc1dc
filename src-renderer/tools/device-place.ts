import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '#shared/geometry/point';
import { distanceToSegment_m } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { DeviceKind, Level } from '#shared/model/plan';
import { WALL_DEVICES } from '#shared/sheets/device-shape';
import { type PlacedWall, leftOf_m, wallsOn } from './level-things.ts';
import { alongWall_m } from './opening.ts';

/** A device pointed at within this distance of a wall hangs on it [m]. */
const WALL_PULL_m = 0.6;
/** Half the depth of what hangs on a wall: its middle is so far off the face [m]. */
const HALF_DEPTH_m = 0.025;
/** Walls are drawn this thick behind their finished face [m]; the plan knows only the face. */
const DRAWN_WALL_m = 0.15;

/** Where a device would go, and the wall that it hangs on. */
export interface DevicePlace {
  readonly at: PlanPoint;
  readonly facing_rad: number | null;
  readonly wall: PlacedWall | undefined;
  /** Along the wall from its start [m]; 0 away from walls. */
  readonly along_m: number;
}

/** A place on one side of a wall, looking away from it. Behind the finished face it stands off by the wall as it is drawn. */
export function onWall(wall: PlacedWall, along_m: number, side: PlanPoint): DevicePlace {
  const { a, b } = wall.segment;
  const kept_m = Math.max(0, Math.min(distance_m(a, b), along_m));
  const direction_rad = bearing_rad(a, b);
  const isInside = leftOf_m(side, wall.segment) >= -SAME_PLACE_m;
  const facing_rad = direction_rad + (isInside ? Math.PI / 2 : -Math.PI / 2);
  const off_m = isInside ? HALF_DEPTH_m : DRAWN_WALL_m + HALF_DEPTH_m;
  return { at: polar(polar(a, direction_rad, kept_m), facing_rad, off_m), facing_rad: Math.atan2(Math.sin(facing_rad), Math.cos(facing_rad)), wall, along_m: kept_m };
}

/**
 * Where a device goes when it is pointed at: what hangs on walls on the nearest one, facing the side pointed at, else
 * where the pointer is caught.
 * @param raw  where the pointer is
 * @param caught  where it was caught: along the wall the device stands level with it
 */
export function devicePlace(level: Level | undefined, kind: DeviceKind, raw: PlanPoint, caught: PlanPoint): DevicePlace {
  let nearest: PlacedWall | undefined;
  let least = WALL_PULL_m;
  for (const wall of level && WALL_DEVICES.has(kind) ? wallsOn(level) : []) {
    const away = distanceToSegment_m(raw, wall.segment);
    if (away < least) {
      least = away;
      nearest = wall;
    }
  }
  return nearest ? onWall(nearest, alongWall_m(nearest, caught), raw) : { at: planPoint(caught.x, caught.y), facing_rad: null, wall: undefined, along_m: 0 };
}
