import { type PlanPoint, distance_m } from '../geometry/point.ts';
import type { KnownLength } from './plan.ts';

/** Ends that lie nearer to each other than this share of the length were meant to be the same place. */
const SAME_END = 0.01;

/** Whether two known lengths of a floor plan were taken between the same two places, whichever way round. */
export function isSameStretch(one: KnownLength, other: KnownLength): boolean {
  const reach = SAME_END * distance_m(one.a, one.b);
  const isNear = (a: PlanPoint, b: PlanPoint): boolean => distance_m(a, b) <= reach;
  return (isNear(one.a, other.a) && isNear(one.b, other.b)) || (isNear(one.a, other.b) && isNear(one.b, other.a));
}
