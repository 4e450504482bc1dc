import type { PlanPoint } from './point.ts';

/** Cross product of a→b and a→c: positive where c lies to the left. */
const left = (a: PlanPoint, b: PlanPoint, c: PlanPoint): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function chain(sorted: readonly PlanPoint[]): PlanPoint[] {
  const kept: PlanPoint[] = [];
  for (const p of sorted) {
    for (;;) {
      const [a, b] = [kept.at(-2), kept.at(-1)];
      if (!a || !b || left(a, b, p) > 0) break;
      kept.pop();
    }
    kept.push(p);
  }
  return kept.slice(0, -1);
}

/** The smallest convex ring around places, counter-clockwise, no corner repeated; fewer than three corners where they lie on a line. */
export function convexHull(points: readonly PlanPoint[]): PlanPoint[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y).filter((p, i, all) => i === 0 || p.x !== all[i - 1]?.x || p.y !== all[i - 1]?.y);
  if (sorted.length < 3) return sorted;
  return [...chain(sorted), ...chain(sorted.toReversed())];
}
