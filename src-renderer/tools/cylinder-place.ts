import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '#shared/geometry/point';
import { distanceToSegment_m } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { Level, Network, Plan } from '#shared/model/plan';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { type PlacedWall, leftOf_m, networksOn, wallsOn } from './level-things.ts';

/** Drawn radius while the profile leaves the cylinder's diameter blank [m]. */
const UNKNOWN_RADIUS_m = 0.14;
/** A cylinder this near to a wall leans on it [m]. */
const WALL_PULL_m = 0.6;
/** Cylinders that stand this near to each other form one bank [m]. */
const BANK_m = 1;

/** Radius of a unit's cylinder on the plan [m]; a drawn stand-in while the profile leaves it blank. */
export const cylinderRadius_m = (profile: UnitProfile | undefined): number => (profile?.limits.cylinderDiameter_m?.value ?? 2 * UNKNOWN_RADIUS_m) / 2;

/** Place of a cylinder, and the wall it leans on. */
export interface CylinderPlace {
  readonly at: PlanPoint;
  readonly back_rad: number;
  readonly wall: PlacedWall | undefined;
  readonly radius_m: number;
  /** Along the wall from its start to the cylinder's axis [m]; 0 away from walls. */
  readonly along_m: number;
}

/** A cylinder's place against a wall, on the side where the pointer is, kept clear of the wall's ends where there is room. */
export function againstWall(wall: PlacedWall, along_m: number, side: PlanPoint, radius_m: number): CylinderPlace {
  const { a, b } = wall.segment;
  const length_m = distance_m(a, b);
  const kept_m = length_m > 2 * radius_m ? Math.min(length_m - radius_m, Math.max(radius_m, along_m)) : length_m / 2;
  const direction_rad = bearing_rad(a, b);
  const inward_rad = direction_rad + (leftOf_m(side, wall.segment) >= -SAME_PLACE_m ? Math.PI / 2 : -Math.PI / 2);
  const back_rad = Math.atan2(Math.sin(inward_rad + Math.PI), Math.cos(inward_rad + Math.PI));
  return { at: polar(polar(a, direction_rad, kept_m), inward_rad, radius_m), back_rad, wall, radius_m, along_m: kept_m };
}

/**
 * Where a cylinder goes when it is pointed at: with its back on the nearest wall, else free with its back to the north.
 * @param radius_m  radius of the cylinder
 */
export function cylinderPlace(level: Level | undefined, pointed: PlanPoint, radius_m: number): CylinderPlace {
  let nearest: PlacedWall | undefined;
  let least = WALL_PULL_m + radius_m;
  for (const wall of level ? wallsOn(level) : []) {
    const away = distanceToSegment_m(pointed, wall.segment);
    if (away < least) {
      least = away;
      nearest = wall;
    }
  }
  if (!nearest) return { at: planPoint(pointed.x, pointed.y), back_rad: Math.PI / 2, wall: undefined, radius_m, along_m: 0 };
  const direction_rad = bearing_rad(nearest.segment.a, nearest.segment.b);
  const along_m = (pointed.x - nearest.segment.a.x) * Math.cos(direction_rad) + (pointed.y - nearest.segment.a.y) * Math.sin(direction_rad);
  return againstWall(nearest, along_m, pointed, radius_m);
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
