import { type PlanPoint, distance_m, planPoint } from './point.ts';

/** A straight piece on the plan from `a` to `b`, both ends included. */
export interface Segment {
  readonly a: PlanPoint;
  readonly b: PlanPoint;
}

/** The place on a segment nearest to `p`, ends included; a segment of no length answers its end. */
export function nearestOnSegment(p: PlanPoint, { a, b }: Segment): PlanPoint {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  if (length2 === 0) return a;
  const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  return planPoint(a.x + t * dx, a.y + t * dy);
}

/** Distance from `p` to the nearest place of a segment [m], ≥ 0. */
export const distanceToSegment_m = (p: PlanPoint, segment: Segment): number =>
  distance_m(p, nearestOnSegment(p, segment));

/** How far along a segment's line, from `a` toward `b`, the place nearest to `p` is [m], not limited to its ends; 0 for a segment of no length. */
export function alongSegment_m(p: PlanPoint, { a, b }: Segment): number {
  const length_m = distance_m(a, b);
  return length_m === 0 ? 0 : ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length_m;
}

/**
 * Where two segments meet. Touching at an end counts; parallel segments answer undefined.
 * @returns the meeting place, or undefined when they do not meet
 */
export function meetingOf(first: Segment, second: Segment): PlanPoint | undefined {
  const rx = first.b.x - first.a.x;
  const ry = first.b.y - first.a.y;
  const sx = second.b.x - second.a.x;
  const sy = second.b.y - second.a.y;
  const cross = rx * sy - ry * sx;
  if (cross === 0) return undefined;
  const qx = second.a.x - first.a.x;
  const qy = second.a.y - first.a.y;
  const t = (qx * sy - qy * sx) / cross;
  const u = (qx * ry - qy * rx) / cross;
  const slack = 1e-12;
  if (t < -slack || t > 1 + slack || u < -slack || u > 1 + slack) return undefined;
  return planPoint(first.a.x + t * rx, first.a.y + t * ry);
}

/**
 * How far a ray runs before it meets a segment [m], ≥ 0; undefined when it never does.
 * @param angle_rad direction of the ray, counter-clockwise from east
 */
export function rayHit_m(from: PlanPoint, angle_rad: number, { a, b }: Segment): number | undefined {
  const rx = Math.cos(angle_rad);
  const ry = Math.sin(angle_rad);
  const sx = b.x - a.x;
  const sy = b.y - a.y;
  const cross = rx * sy - ry * sx;
  if (Math.abs(cross) < 1e-15) return undefined;
  const qx = a.x - from.x;
  const qy = a.y - from.y;
  const along = (qx * sy - qy * sx) / cross;
  const on = (qx * ry - qy * rx) / cross;
  return along >= 0 && on >= -1e-12 && on <= 1 + 1e-12 ? along : undefined;
}
