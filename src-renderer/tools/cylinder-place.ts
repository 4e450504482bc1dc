import { type PlanPoint, distance_m, planPoint } from '#shared/geometry/point';
import { alongSegment_m } from '#shared/geometry/segment';
import type { Level, Network, Plan } from '#shared/model/plan';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { type PlacedWall, networksOn, wallsOn } from './level-things.ts';
import { WALL_PULL_m, type WallPlace, besideWall, nearestWall } from './wall-place.ts';

/** Drawn radius while the profile leaves the cylinder's diameter blank [m]. */
const UNKNOWN_RADIUS_m = 0.14;
/** Cylinders that stand this near to each other form one bank [m]. */
const BANK_m = 1;

/** Radius of a unit's cylinder on the plan [m]; a drawn stand-in while the profile leaves it blank. */
export const cylinderRadius_m = (profile: UnitProfile | undefined): number => (profile?.limits.cylinderDiameter_m?.value ?? 2 * UNKNOWN_RADIUS_m) / 2;

/** Place of a cylinder, and the wall it leans on. */
export interface CylinderPlace extends WallPlace {
  readonly back_rad: number;
  readonly radius_m: number;
}

/** A cylinder's place against a wall, on the side where the pointer is, kept clear of the wall's ends where there is room. */
export function againstWall(wall: PlacedWall, along_m: number, side: PlanPoint, radius_m: number): CylinderPlace {
  const { away_rad, ...place } = besideWall(wall, along_m, side, radius_m, { inside: radius_m, outside: radius_m });
  return { ...place, back_rad: Math.atan2(Math.sin(away_rad + Math.PI), Math.cos(away_rad + Math.PI)), radius_m };
}

/**
 * Where a cylinder goes when it is pointed at: with its back on the nearest wall, else free with its back to the north.
 * @param raw  where the pointer is: it chooses the wall and its side
 * @param caught  where it was caught: along the wall the cylinder stands level with it
 * @param radius_m  radius of the cylinder
 */
export function cylinderPlace(level: Level | undefined, raw: PlanPoint, caught: PlanPoint, radius_m: number): CylinderPlace {
  const wall = nearestWall(level ? wallsOn(level) : [], raw, WALL_PULL_m + radius_m);
  return wall
    ? againstWall(wall, alongSegment_m(caught, wall.segment), raw, radius_m)
    : { at: planPoint(caught.x, caught.y), back_rad: Math.PI / 2, wall: undefined, radius_m, along_m: 0 };
}

/**
 * The network that a new cylinder joins: the bank it stands beside, else a selected network without cylinders,
 * else none, which begins a new one.
 */
export function bankOf(plan: Plan, level: string, at: PlanPoint, selected: string | undefined): Network | undefined {
  let nearest: Network | undefined;
  let least = BANK_m;
  for (const network of networksOn(plan, level)) {
    for (const cylinder of Object.values(network.cylinders)) {
      const away = distance_m(at, cylinder.at);
      if (away <= least) {
        least = away;
        nearest = network;
      }
    }
  }
  const chosen = selected === undefined ? undefined : plan.networks[selected];
  return nearest ?? (chosen && chosen.level === level && Object.keys(chosen.cylinders).length === 0 ? chosen : undefined);
}
