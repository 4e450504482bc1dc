import { bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import type { Enclosure, Opening } from '../model/plan.ts';
import type { Neighbour } from './neighbours.ts';
import type { WallStretch } from './shared-walls.ts';

/** Stretches this much farther off than the nearest lie behind it [m]. */
const BEHIND_m = 0.01;

/** The piece of wall face that an opening takes up; undefined when its wall has gone. */
export function openingFace({ outline, holes }: Pick<Enclosure, 'outline' | 'holes'>, { wall, along_m, width_m }: Pick<Opening, 'wall' | 'along_m' | 'width_m'>): Segment | undefined {
  for (const ring of [outline, ...holes]) {
    const at = ring.findIndex(({ id }) => id === wall);
    const from = ring[at];
    const to = ring[(at + 1) % ring.length];
    if (!from || !to) continue;
    const start = planPoint(from.x, from.y);
    const along_rad = bearing_rad(start, to);
    return { a: polar(start, along_rad, along_m - width_m / 2), b: polar(start, along_rad, along_m + width_m / 2) };
  }
  return undefined;
}

/** Whether a stretch of the same wall lies beside an opening in it. */
function isAt({ stretch }: WallStretch, face: Segment): boolean {
  const along_rad = bearing_rad(face.a, face.b);
  const alongOf = (p: Segment['a']): number => (p.x - face.a.x) * Math.cos(along_rad) + (p.y - face.a.y) * Math.sin(along_rad);
  const [one, other] = [alongOf(stretch.a), alongOf(stretch.b)];
  return Math.min(one, other) < distance_m(face.a, face.b) && Math.max(one, other) > 0;
}

/**
 * The drawn spaces right behind an opening: what lies nearest to its wall face over its width. Empty where nothing is
 * drawn there.
 */
export function behindOpening(enclosure: Pick<Enclosure, 'outline' | 'holes'>, opening: Pick<Opening, 'wall' | 'along_m' | 'width_m'>, neighbours: readonly Neighbour[]): Neighbour[] {
  const face = openingFace(enclosure, opening);
  if (!face) return [];
  const found = neighbours.flatMap((neighbour) => {
    const here = neighbour.stretches.filter((stretch) => stretch.wall.id === opening.wall && isAt(stretch, face));
    return here.length > 0 ? [{ neighbour, off_m: Math.min(...here.map(({ off_m }) => off_m)) }] : [];
  });
  const least_m = Math.min(...found.map(({ off_m }) => off_m));
  return found.filter(({ off_m }) => off_m <= least_m + BEHIND_m).map(({ neighbour }) => neighbour);
}
