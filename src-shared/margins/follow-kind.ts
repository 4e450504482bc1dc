import type { PlanPoint } from '../geometry/point.ts';
import type { Follow } from './nozzle-motion.ts';

/** What a map of shifts does: nothing, all of the shift, only its part along a direction, or something else. */
export type FollowKind =
  | { readonly kind: 'stays' }
  | { readonly kind: 'goes' }
  | { readonly kind: 'slides'; readonly along: PlanPoint }
  | { readonly kind: 'other' };

const NOISE = 1e-6;

/** The difference of two maps: how one place moves as it is seen from the other. */
export const minusFollow = (one: Follow, other: Follow): Follow => ({ xx: one.xx - other.xx, xy: one.xy - other.xy, yx: one.yx - other.yx, yy: one.yy - other.yy });

/** The kind of a map; a slide is the part of a shift along a unit direction. */
export function followKindOf({ xx, xy, yx, yy }: Follow): FollowKind {
  const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= NOISE;
  if (isNear(xx, 0) && isNear(xy, 0) && isNear(yx, 0) && isNear(yy, 0)) return { kind: 'stays' };
  if (isNear(xx, 1) && isNear(xy, 0) && isNear(yx, 0) && isNear(yy, 1)) return { kind: 'goes' };
  // u·uᵀ: symmetric, trace 1, determinant 0.
  if (!isNear(xy, yx) || !isNear(xx + yy, 1) || !isNear(xx * yy, xy * yx)) return { kind: 'other' };
  const x = Math.sqrt(Math.max(0, xx));
  return { kind: 'slides', along: { x, y: Math.sqrt(Math.max(0, yy)) * (xy < 0 ? -1 : 1) } };
}

/** The map the other way round. */
export const opposite = ({ xx, xy, yx, yy }: Follow): Follow => ({ xx: -xx, xy: -xy, yx: -yx, yy: -yy });
