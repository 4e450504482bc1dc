import type { Solid } from '../derived/derived.ts';
import { joinedOf, lowCeilingsOf } from '../derived/low-ceilings.ts';
import type { Region } from '../derived/polygon-sums.ts';
import { floorAt_m } from '../derived/spaces.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import { type Outline, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { HAIR_m, type Site, acrossOf_m } from './site.ts';

/**
 * A side of a thing that hangs, as a counter-clockwise ring has it. Looked at from within it ends sight (far); looked at from
 * without, the line to the floor passes under it, and what lies beyond `1 / share` of the way to it is seen (near).
 */
export type HangingEdge = { readonly side: Segment; readonly is: 'far' } | { readonly side: Segment; readonly is: 'near'; readonly share: number };

/** The edges of all that hangs in sight of a nozzle, as coverage counts them. */
export function hangingEdges({ space, at }: Site, hanging: readonly Solid[]): HangingEdge[] {
  const near = (sides: readonly Segment[], bottom_m: number, places: readonly PlanPoint[]): HangingEdge[] => {
    const floor_m = Math.max(...places.map((p) => floorAt_m(space, p) ?? space.floor_m));
    // What hangs down to the floor or below it leaves next to nothing to be seen under it.
    const share = Math.min((at.z - bottom_m) / (at.z - floor_m), 0.9999);
    return share > 0 ? sides.map((side) => ({ side, is: 'near', share })) : [];
  };
  const far = (side: Segment): HangingEdge => ({ side, is: 'far' });
  const low = lowCeilingsOf(space, at);
  return [
    ...hanging.flatMap(({ footprint, bottom_m }) => [...sidesOf(footprint).map(far), ...near(sidesOf(footprint), bottom_m, footprint)]),
    ...low.flatMap(({ region, bottom_m }) => near(region.flatMap(sidesOf), bottom_m, region.flat())),
    ...joinedOf(low, space).flatMap(sidesOf).map(far),
  ];
}

/** Places nearer than this say nothing of a direction [m]. */
const TOUCHING_m = 1e-3;

/** The half-plane to the right of a side, its line drawn so much into it [m]. */
const rightOf = ({ a, b }: Segment, in_m: number) => {
  const length_m = distance_m(a, b);
  const [x, y] = [-(b.y - a.y) / length_m, (b.x - a.x) / length_m];
  return { x, y, limit: x * a.x + y * a.y - in_m };
};
const leftOf = ({ a, b }: Segment, in_m: number) => rightOf({ a: b, b: a }, in_m);

/** The part of a piece in a half-plane. */
function pieceIn({ a, b }: Segment, half: ReturnType<typeof rightOf>): Segment | undefined {
  const [atA, atB] = [a, b].map((p) => half.limit - half.x * p.x - half.y * p.y) as [number, number];
  if (atA <= 0 && atB <= 0) return undefined;
  if (atA >= 0 && atB >= 0) return { a, b };
  const met = planPoint(a.x + ((b.x - a.x) * atA) / (atA - atB), a.y + ((b.y - a.y) * atA) / (atA - atB));
  return atA > 0 ? { a, b: met } : { a: met, b };
}

/** The places from which an edge hides some of a piece of floor: one convex ring, never too small. */
function hiddenBy(edge: HangingEdge, floor: Segment, reach_m: number): Outline {
  const { side } = edge;
  const beyond = pieceIn(floor, edge.is === 'far' ? rightOf(side, 0) : leftOf(side, 0));
  if (!beyond) return [];
  const out = [side.a, side.b].flatMap((e) =>
    [beyond.a, beyond.b].flatMap((q) => {
      const away_m = distance_m(e, q);
      if (edge.is === 'near') return planPoint(e.x + ((e.x - q.x) * edge.share) / (1 - edge.share), e.y + ((e.y - q.y) * edge.share) / (1 - edge.share));
      return away_m > TOUCHING_m ? planPoint(e.x + ((e.x - q.x) / away_m) * reach_m, e.y + ((e.y - q.y) / away_m) * reach_m) : [];
    }),
  );
  const ring = convexHull([side.a, side.b, ...out]);
  return ring.length < 3 ? [] : clipToHalfPlane(ring, edge.is === 'far' ? leftOf(side, -HAIR_m) : rightOf(side, -HAIR_m));
}

/**
 * The places from which things that hang hide some of a region of floor. Whatever lies behind hidden floor, seen from the same
 * place, is hidden as well, so that the border of the region tells all: place e of an edge hides place q of it from every place
 * e + λ·(e − q), for a far edge of any λ > 0, for a near one of λ up to share ÷ (1 − share); for straight pieces these fill the
 * hull of their ends.
 */
export function underHanging({ space }: Site, own: Region, edges: readonly HangingEdge[]): Outline[] {
  const reach_m = acrossOf_m(space) * 1e3;
  const floor = own.flatMap(sidesOf).filter(({ a, b }) => distance_m(a, b) > SAME_PLACE_m);
  return edges.flatMap((edge) => (distance_m(edge.side.a, edge.side.b) <= SAME_PLACE_m ? [] : floor.map((piece) => hiddenBy(edge, piece, reach_m)).filter((ring) => ring.length > 2)));
}
