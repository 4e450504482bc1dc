import { type Outline, distanceToOutline_m, isInside } from './outline.ts';
import type { PlanPoint } from './point.ts';
import { SAME_PLACE_m } from './tolerance.ts';

/** Where a place lies against a ring; `on` within `SAME_PLACE_m` of its sides. */
export const sideOfOutline = (p: PlanPoint, outline: Outline): 'inside' | 'on' | 'outside' => {
  if (distanceToOutline_m(p, outline) <= SAME_PLACE_m) return 'on';
  return isInside(p, outline) ? 'inside' : 'outside';
};

/** Whether a place lies inside a ring or on its sides. */
export const isInsideOrOn = (p: PlanPoint, outline: Outline): boolean =>
  isInside(p, outline) || distanceToOutline_m(p, outline) <= SAME_PLACE_m;

/** Whether a place lies inside an outline and in none of its holes; places on their sides count as inside. */
export const isInsideRegion = (p: PlanPoint, outline: Outline, holes: readonly Outline[]): boolean =>
  isInsideOrOn(p, outline) && holes.every((hole) => sideOfOutline(p, hole) !== 'inside');
