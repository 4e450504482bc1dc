import type { PlanPoint3 } from './point.ts';

/** A direction in 3D, of length 1. */
export interface Direction3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Direction from `a` to `b`; undefined when they are closer than `least_m`. */
export function direction3(a: PlanPoint3, b: PlanPoint3, least_m: number): Direction3 | undefined {
  const length_m = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
  if (length_m <= least_m) return undefined;
  return { x: (b.x - a.x) / length_m, y: (b.y - a.y) / length_m, z: (b.z - a.z) / length_m };
}

/** The direction the other way. */
export const opposite3 = ({ x, y, z }: Direction3): Direction3 => ({ x: -x, y: -y, z: -z });

/** Least turn between two directions in 3D [rad], 0 … π; exact near 0 and π, where a cosine is not. */
export function angleBetween3_rad(u: Direction3, v: Direction3): number {
  const cross = Math.hypot(u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x);
  return Math.atan2(cross, u.x * v.x + u.y * v.y + u.z * v.z);
}
