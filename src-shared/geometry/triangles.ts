import { type Outline, isCounterClockwise } from './outline.ts';
import type { PlanPoint } from './point.ts';

const left = (a: PlanPoint, b: PlanPoint, c: PlanPoint): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/**
 * Triangles that together fill a simple ring, counter-clockwise, found by cutting off one ear after the other.
 * A ring that crosses itself gives triangles that cover it or more.
 */
export function trianglesOf(ring: Outline): (readonly [PlanPoint, PlanPoint, PlanPoint])[] {
  const rest = isCounterClockwise(ring) ? [...ring] : ring.toReversed();
  const triangles: (readonly [PlanPoint, PlanPoint, PlanPoint])[] = [];
  const holds = (a: PlanPoint, b: PlanPoint, c: PlanPoint): boolean => rest.some((p) => p !== a && p !== b && p !== c && left(a, b, p) >= 0 && left(b, c, p) >= 0 && left(c, a, p) >= 0);
  while (rest.length > 3) {
    const at = (i: number): PlanPoint => rest[(i + rest.length) % rest.length] as PlanPoint;
    let ear = rest.findIndex((b, i) => left(at(i - 1), b, at(i + 1)) > 0 && !holds(at(i - 1), b, at(i + 1)));
    // Corners in a straight line have no ear of their own.
    if (ear < 0) ear = rest.findIndex((b, i) => left(at(i - 1), b, at(i + 1)) === 0);
    if (ear < 0) ear = 0;
    const [a, b, c] = [at(ear - 1), at(ear), at(ear + 1)];
    if (left(a, b, c) !== 0) triangles.push([a, b, c]);
    rest.splice(ear, 1);
  }
  const [a, b, c] = rest;
  if (a && b && c && left(a, b, c) !== 0) triangles.push([a, b, c]);
  return triangles;
}
