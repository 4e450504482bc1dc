import { isInsideOrOn } from '../geometry/inside.ts';
import { sidesOf } from '../geometry/outline.ts';
import { type PlanPoint3, bearing_rad, distance_m, polar } from '../geometry/point.ts';
import { nearestOnSegment } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { HungNozzle, Solid } from './derived.ts';
import { isThere } from './solids.ts';

/** The highest thing right under an orifice, touching its outline included; undefined over open floor. What the orifice itself is in is not under it. */
export function findUnder({ at, space }: HungNozzle): Solid | undefined {
  if (!at || !space) return undefined;
  return space.solids
    .filter((solid) => isThere(solid) && solid.top_m <= at.z && at.x >= solid.bounds.minX - SAME_PLACE_m && at.x <= solid.bounds.maxX + SAME_PLACE_m && isInsideOrOn(at, solid.footprint))
    .toSorted((a, b) => b.top_m - a.top_m)[0];
}

/** Past the side of a thing by this much a nozzle no longer hangs over it [m]: what a fitter can set. */
const PAST_m = 0.01;

/** The places beside a thing, at the height of the orifice, that a nozzle over it reaches by moving square to one of its sides; the nearest first. */
export function placesBeside(at: PlanPoint3, { footprint }: Solid): PlanPoint3[] {
  return sidesOf(footprint)
    .map(({ a, b }) => {
      const { x, y } = polar(nearestOnSegment(at, { a, b }), bearing_rad(a, b) - Math.PI / 2, PAST_m);
      return { x, y, z: at.z };
    })
    .sort((one, other) => distance_m(at, one) - distance_m(at, other));
}
