import { type PlanPoint, distance_m, midpoint, planPoint } from '../geometry/point.ts';
import type { Enclosure, Opening } from '../model/plan.ts';

/** Both ends of a wall as the user drew it, from its own corner to the next; undefined when it has gone. */
function endsOf({ outline, holes }: Pick<Enclosure, 'outline' | 'holes'>, wall: string): readonly [from: PlanPoint, to: PlanPoint] | undefined {
  for (const ring of [outline, ...holes]) {
    const at = ring.findIndex(({ id }) => id === wall);
    const from = ring[at];
    const to = ring[(at + 1) % ring.length];
    if (from && to) return [planPoint(from.x, from.y), planPoint(to.x, to.y)];
  }
  return undefined;
}

/** Middle of a wall; undefined when the wall has gone. */
export function wallMiddle(enclosure: Pick<Enclosure, 'outline' | 'holes'>, wall: string): PlanPoint | undefined {
  const ends = endsOf(enclosure, wall);
  return ends && midpoint(...ends);
}

/** Middle of an opening on its wall; undefined when the wall has gone. */
export function openingMiddle(enclosure: Pick<Enclosure, 'outline' | 'holes'>, { wall, along_m }: Pick<Opening, 'wall' | 'along_m'>): PlanPoint | undefined {
  const ends = endsOf(enclosure, wall);
  if (!ends) return undefined;
  const [from, to] = ends;
  const length_m = distance_m(from, to) || 1;
  return planPoint(from.x + ((to.x - from.x) * along_m) / length_m, from.y + ((to.y - from.y) * along_m) / length_m);
}
