import { convexHull } from '../geometry/convex-hull.ts';
import { type Outline, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, polar } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import { HAIR_m } from './site.ts';

/** A piece made longer at both ends, or shorter [m]; undefined when nothing is left of it. */
function drawnOut({ a, b }: Segment, by_m: number): Segment | undefined {
  const length_m = distance_m(a, b);
  if (length_m === 0 || length_m + 2 * by_m <= 0) return undefined;
  const [x, y] = [((b.x - a.x) / length_m) * by_m, ((b.y - a.y) / length_m) * by_m];
  return { a: { x: a.x - x, y: a.y - y }, b: { x: b.x + x, y: b.y + y } };
}

const swept = ({ a, b }: Segment, way_rad: number, from_m: number, to_m: number): PlanPoint[] =>
  convexHull([a, b].flatMap((p) => [polar(p, way_rad + Math.PI, from_m), polar(p, way_rad + Math.PI, to_m)]));

/** The part of a piece within a convex ring; undefined where there is none. */
function pieceWithin({ a, b }: Segment, ring: Outline): Segment | undefined {
  let [from, to] = [0, 1];
  for (const side of sidesOf(ring)) {
    const left = (p: PlanPoint): number => (side.b.x - side.a.x) * (p.y - side.a.y) - (side.b.y - side.a.y) * (p.x - side.a.x);
    const [atA, atB] = [left(a), left(b)];
    if (atA < 0 && atB < 0) return undefined;
    if (atA < 0) from = Math.max(from, atA / (atA - atB));
    else if (atB < 0) to = Math.min(to, atA / (atA - atB));
  }
  const at = (share: number): PlanPoint => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
  return from < to ? { a: at(from), b: at(to) } : undefined;
}

/** The places from which a straight jet one way runs at a piece of wall, from a distance on [m]: never too small. */
export const upstreamOf = (face: Segment, way_rad: number, from_m: number, reach_m: number): Outline => swept(drawnOut(face, HAIR_m) ?? face, way_rad, Math.max(0, from_m - HAIR_m), reach_m);

/** The places from which such a jet meets another piece before it: never too large; undefined where that does not stand before it. */
export function upstreamBehind(screen: Segment, face: Segment, way_rad: number, reach_m: number): Outline | undefined {
  const ahead = swept(face, way_rad, HAIR_m, reach_m);
  const cut = ahead.length > 2 ? pieceWithin(screen, ahead) : undefined;
  const piece = cut && drawnOut(cut, -HAIR_m);
  const ring = piece && swept(piece, way_rad, HAIR_m, reach_m);
  return ring && ring.length > 2 ? ring : undefined;
}
