import type { Outline } from './outline.ts';
import { type PlanPoint, planPoint } from './point.ts';

/** The places where `x · p.x + y · p.y ≤ limit`. */
export interface HalfPlane {
  readonly x: number;
  readonly y: number;
  readonly limit: number;
}

/** The half-plane of the places that are nearer to `near` than to `far`, the line between them included. */
export const nearerTo = (near: PlanPoint, far: PlanPoint): HalfPlane => ({
  x: far.x - near.x,
  y: far.y - near.y,
  limit: (far.x ** 2 - near.x ** 2 + far.y ** 2 - near.y ** 2) / 2,
});

/**
 * The part of a ring inside a half-plane, winding kept; empty when nothing is left.
 * A ring that falls into several parts stays one ring, joined along the line of the half-plane there and back,
 * which neither areas nor polygon sums mind.
 */
export function clipToHalfPlane(outline: Outline, half: HalfPlane): PlanPoint[] {
  const depth = (p: PlanPoint): number => half.limit - half.x * p.x - half.y * p.y;
  const kept: PlanPoint[] = [];
  const first = outline[0];
  if (!first) return kept;
  const atFirst = depth(first);
  let [a, atA] = [first, atFirst];
  for (let i = 1; i <= outline.length; i += 1) {
    const b = outline[i] ?? first;
    const atB = b === first ? atFirst : depth(b);
    if (atA >= 0) kept.push(a);
    if (atA >= 0 !== atB >= 0) {
      const share = atA / (atA - atB);
      kept.push(planPoint(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share));
    }
    a = b;
    atA = atB;
  }
  return kept.length < 3 ? [] : kept;
}
