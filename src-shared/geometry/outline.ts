import { type PlanPoint, planPoint } from './point.ts';
import { type Segment, meetingOf } from './segment.ts';

/**
 * A closed ring of corners [m]; the last corner joins the first, which is not repeated.
 * Either winding is accepted; `isCounterClockwise` tells which.
 */
export type Outline = readonly PlanPoint[];

/** An axis-parallel box on the plan [m]. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The straight sides of a ring, side i from corner i to corner i + 1. */
export const sidesOf = (outline: Outline): Segment[] =>
  outline.map((a, i) => ({ a, b: outline[(i + 1) % outline.length] ?? a }));

/** Signed area of a ring [m²]: positive when it winds counter-clockwise. */
export function signedArea_m2(outline: Outline): number {
  let doubled_m2 = 0;
  for (let i = 0; i < outline.length; i += 1) {
    const a = outline[i];
    const b = outline[i + 1] ?? outline[0];
    if (a && b) doubled_m2 += a.x * b.y - b.x * a.y;
  }
  return doubled_m2 / 2;
}

/** Area inside a ring [m²], ≥ 0. */
export const area_m2 = (outline: Outline): number => Math.abs(signedArea_m2(outline));

/** Whether the ring winds counter-clockwise. */
export const isCounterClockwise = (outline: Outline): boolean => signedArea_m2(outline) > 0;

/** Smallest box around the places; an empty list answers a box turned inside out. */
export const boundsOf = (points: Iterable<PlanPoint>): Box => {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
};

/** Whether two boxes share a place, touching included. */
export const boxesTouch = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** Whether a place lies inside a ring; places on its sides may answer either way. */
export function isInside(p: PlanPoint, outline: Outline): boolean {
  let inside = false;
  let a = outline.at(-1);
  for (const b of outline) {
    if (a && a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
    a = b;
  }
  return inside;
}

/** Least distance from a place to the sides of a ring [m], ≥ 0, inside or out; Infinity for a ring without corners. */
export function distanceToOutline_m(p: PlanPoint, outline: Outline): number {
  let least = Infinity;
  let a = outline.at(-1);
  for (const b of outline) {
    if (a) {
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const length2 = dx * dx + dy * dy;
      const share = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
      least = Math.min(least, Math.hypot(a.x + share * dx - p.x, a.y + share * dy - p.y));
    }
    a = b;
  }
  return least;
}

/** A rectangle's ring from its south-west corner, counter-clockwise. */
export const rectangle = (width_m: number, depth_m: number, at: PlanPoint = planPoint(0, 0)): PlanPoint[] => [
  at,
  planPoint(at.x + width_m, at.y),
  planPoint(at.x + width_m, at.y + depth_m),
  planPoint(at.x, at.y + depth_m),
];

/** The first two sides of a ring that cross or touch where they should not, or undefined for a simple ring. */
export function findSelfCrossing(outline: Outline): PlanPoint | undefined {
  const sides = sidesOf(outline);
  for (let i = 0; i < sides.length; i += 1) {
    for (let j = i + 2; j < sides.length; j += 1) {
      if (i === 0 && j === sides.length - 1) continue;
      const first = sides[i];
      const second = sides[j];
      const met = first && second && meetingOf(first, second);
      if (met) return met;
    }
  }
  return undefined;
}
