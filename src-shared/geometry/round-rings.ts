import { convexHull } from './convex-hull.ts';
import { type PlanPoint, polar } from './point.ts';
import type { Segment } from './segment.ts';

/** How far a ring of straight sides may lie off the round one that it stands for [m]. */
export const ROUND_OFF_m = 2e-4;

/** Corners that a ring needs so that it lies nowhere farther than `ROUND_OFF_m` off its circle; even, so that it is its own mirror image. */
const cornersFor = (radius_m: number): number => 2 * Math.max(4, Math.ceil(Math.PI / Math.acos(radius_m / (radius_m + ROUND_OFF_m)) / 2));

/** A ring of straight sides around a circle, never inside it: what it leaves out is truly outside. */
export function ringAround(at: PlanPoint, radius_m: number): PlanPoint[] {
  const corners = cornersFor(radius_m);
  const out_m = radius_m / Math.cos(Math.PI / corners);
  return Array.from({ length: corners }, (_, i) => polar(at, (2 * Math.PI * i) / corners, out_m));
}

/** A ring of straight sides inside a circle, its corners on it: what it holds is truly inside. */
export function ringInside(at: PlanPoint, radius_m: number): PlanPoint[] {
  const corners = cornersFor(radius_m);
  return Array.from({ length: corners }, (_, i) => polar(at, (2 * Math.PI * i) / corners, radius_m));
}

/** Everything nearer to a segment than a radius, and a little more: a ring around it with round ends. */
export const ringAroundSegment = ({ a, b }: Segment, radius_m: number): PlanPoint[] => convexHull([...ringAround(a, radius_m), ...ringAround(b, radius_m)]);

/** Nothing but what is nearer to a segment than a radius: a ring within its round-ended outline. */
export const ringInsideSegment = ({ a, b }: Segment, radius_m: number): PlanPoint[] => convexHull([...ringInside(a, radius_m), ...ringInside(b, radius_m)]);

/** The places seen from an apex within an angle to either side of a direction, as far as `reach_m` at least; the angle up to just under a quarter turn. */
export function wedge(apex: PlanPoint, middle_rad: number, half_rad: number, reach_m: number): PlanPoint[] {
  const out_m = reach_m / Math.cos(half_rad);
  return [apex, polar(apex, middle_rad - half_rad, out_m), polar(apex, middle_rad + half_rad, out_m)];
}
