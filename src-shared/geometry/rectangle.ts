import type { Outline } from './outline.ts';
import { type PlanPoint, distance_m, planPoint } from './point.ts';
import { SAME_PLACE_m } from './tolerance.ts';

/** Whether a ring has four corners, all square, however it is turned. */
export function isRectangle(ring: Outline): boolean {
  const [a, b, c, d] = ring;
  if (ring.length !== 4 || !a || !b || !c || !d) return false;
  // Diagonals that halve each other and are alike belong to rectangles only.
  const halve = Math.hypot(a.x + c.x - b.x - d.x, a.y + c.y - b.y - d.y) / 2;
  return halve <= SAME_PLACE_m && Math.abs(distance_m(a, c) - distance_m(b, d)) <= SAME_PLACE_m && distance_m(a, b) > SAME_PLACE_m && distance_m(b, c) > SAME_PLACE_m;
}

/** A ring from its first corner on, by two sides that start there and lengths along them [m]. */
function spanned(from: PlanPoint, first: PlanPoint, second: PlanPoint, first_m: number, second_m: number): PlanPoint[] {
  const u = { x: first.x / Math.hypot(first.x, first.y), y: first.y / Math.hypot(first.x, first.y) };
  const v = { x: second.x / Math.hypot(second.x, second.y), y: second.y / Math.hypot(second.x, second.y) };
  const at = (s: number, t: number): PlanPoint => planPoint(from.x + s * u.x + t * v.x, from.y + s * u.y + t * v.y);
  return [at(0, 0), at(first_m, 0), at(first_m, second_m), at(0, second_m)];
}

/**
 * A ring with one corner elsewhere. A rectangle stays one: the corner across stands still and the sides keep
 * their directions. A corner brought onto a line through the one across leaves no area.
 */
export function withCorner(ring: Outline, index: number, to: PlanPoint): PlanPoint[] {
  const moved = ring.map((corner, i) => (i === index ? planPoint(to.x, to.y) : corner));
  if (!isRectangle(ring)) return moved;
  const still = ring[(index + 2) % 4];
  const next = ring[(index + 3) % 4];
  const before = ring[(index + 1) % 4];
  if (!still || !next || !before) return moved;
  const first = planPoint(next.x - still.x, next.y - still.y);
  const second = planPoint(before.x - still.x, before.y - still.y);
  const along = (side: PlanPoint): number => ((to.x - still.x) * side.x + (to.y - still.y) * side.y) / Math.hypot(side.x, side.y);
  const from = spanned(still, first, second, along(first), along(second));
  // Corner 0 of what was spanned is the one across.
  return ring.map((corner, i) => from[(i - index + 2 + 4) % 4] ?? corner);
}

/** Lengths of the first and the second side of a rectangle [m]; undefined for any other ring. */
export function rectangleSides_m(ring: Outline): readonly [number, number] | undefined {
  const [a, b, c] = ring;
  return a && b && c && isRectangle(ring) ? [distance_m(a, b), distance_m(b, c)] : undefined;
}

/** A rectangle with other lengths of its first and second side [m]; its first corner and its directions stay. */
export function resizedRectangle(ring: Outline, [first_m, second_m]: readonly [number, number]): PlanPoint[] {
  const [a, b, , d] = ring;
  if (!a || !b || !d || !isRectangle(ring)) return [...ring];
  return spanned(a, planPoint(b.x - a.x, b.y - a.y), planPoint(d.x - a.x, d.y - a.y), first_m, second_m);
}
