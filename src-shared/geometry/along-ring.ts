import type { Outline } from './outline.ts';
import { type PlanPoint, type PlanPoint3, distance_m, planPoint } from './point.ts';
import { nearestOnSegment } from './segment.ts';
import { distanceBetween3_m } from './segment3.ts';
import { SAME_PLACE_m } from './tolerance.ts';

/** One side of a ring that runs beside another. */
interface Side {
  readonly a: PlanPoint;
  readonly b: PlanPoint;
  /** false where the room is too narrow here for the distance. */
  readonly fits: boolean;
}

/** A closed ring that runs beside the walls of a room, its sides in the order of the walls. */
export interface BesideWalls {
  readonly sides: readonly Side[];
}

/** Corners that truly turn: places on a straight wall and doubled places are left out. */
function turning(ring: Outline): PlanPoint[] {
  const apart = ring.filter((p, i) => distance_m(p, ring[(i + 1) % ring.length] ?? p) > SAME_PLACE_m);
  return apart.filter((p, i) => {
    const before = apart[(i + apart.length - 1) % apart.length] ?? p;
    const after = apart[(i + 1) % apart.length] ?? p;
    const off = (p.x - before.x) * (after.y - p.y) - (p.y - before.y) * (after.x - p.x);
    return Math.abs(off) > 1e-9 * distance_m(before, p) * distance_m(p, after);
  });
}

const flat = ({ x, y }: PlanPoint): PlanPoint3 => ({ x, y, z: 0 });

/**
 * The ring at a distance from every wall, on their inner side; it turns in each corner as the walls do.
 * @param ring       closed, last place not repeated: an outline counter-clockwise, a shaft clockwise, so that the room lies to the left
 * @param away_m     between wall and ring [m], ≥ 0
 * @returns undefined for a ring of fewer than three corners
 */
export function besideWalls(ring: Outline, away_m: number): BesideWalls | undefined {
  const corners = turning(ring);
  if (corners.length < 3) return undefined;
  const at = (i: number): PlanPoint => corners[(i + corners.length) % corners.length] ?? planPoint(0, 0);
  const along = (i: number) => {
    const [a, b] = [at(i), at(i + 1)];
    const length_m = distance_m(a, b);
    return { x: (b.x - a.x) / length_m, y: (b.y - a.y) / length_m };
  };
  const inner = corners.map((corner, i) => {
    const [u, v] = [along(i - 1), along(i)];
    // Both shifted lines meet at corner + away · (n(u) + n(v)) / (1 + u·v), n being the direction to the left.
    const share = away_m / (1 + u.x * v.x + u.y * v.y);
    return planPoint(corner.x - (u.y + v.y) * share, corner.y + (u.x + v.x) * share);
  });
  return {
    sides: inner.map((a, i) => {
      const b = inner[(i + 1) % inner.length] ?? a;
      const u = along(i);
      const isClear = corners.every((_, wall) => distanceBetween3_m({ a: flat(a), b: flat(b) }, { a: flat(at(wall)), b: flat(at(wall + 1)) }) >= away_m - SAME_PLACE_m);
      return { a, b, fits: isClear && (b.x - a.x) * u.x + (b.y - a.y) * u.y > SAME_PLACE_m };
    }),
  };
}

/** A place on the ring. */
export interface OnRing {
  readonly side: number;
  readonly at: PlanPoint;
}

/** The place of the ring that is nearest to another; undefined when none of its sides fits. */
export function nearestOnRing({ sides }: BesideWalls, p: PlanPoint): OnRing | undefined {
  let best: (OnRing & { readonly away_m: number }) | undefined;
  for (const [side, { a, b, fits }] of sides.entries()) {
    if (!fits) continue;
    const at = nearestOnSegment(p, { a, b });
    const away_m = distance_m(p, at);
    if (!best || away_m < best.away_m - SAME_PLACE_m) best = { side, at, away_m };
  }
  return best && { side: best.side, at: best.at };
}

/** The way round the ring from one place to another; undefined when it passes a side that does not fit. */
function round({ sides }: BesideWalls, from: OnRing, to: OnRing, isForward: boolean): PlanPoint[] | undefined {
  const step = isForward ? 1 : -1;
  const isAhead = (side: Side): boolean => {
    const before_m = distance_m(side.a, from.at);
    const after_m = distance_m(side.a, to.at);
    return isForward ? after_m >= before_m - SAME_PLACE_m : after_m <= before_m + SAME_PLACE_m;
  };
  const own = sides[from.side];
  if (own && from.side === to.side && isAhead(own)) return [to.at];
  const places: PlanPoint[] = [];
  for (let i = 0, side = from.side; i < sides.length; i += 1) {
    const here = sides[side];
    if (!here?.fits) return undefined;
    places.push(isForward ? here.b : here.a);
    side = (side + step + sides.length) % sides.length;
    if (side === to.side) {
      if (!sides[side]?.fits) return undefined;
      return [...places, to.at];
    }
  }
  return undefined;
}

const wayLength_m = (from: PlanPoint, way: readonly PlanPoint[]): number => way.reduce((sum, p, i) => sum + distance_m(way[i - 1] ?? from, p), 0);
const apart = (from: PlanPoint, way: readonly PlanPoint[]): PlanPoint[] => way.filter((p, i) => distance_m(p, way[i - 1] ?? from) > SAME_PLACE_m);

/**
 * The shorter way along the ring from one place of it to another: its corners and the end, without the start.
 * @returns undefined when both ways pass a place too narrow for the ring
 */
export function wayAlong(ring: BesideWalls, from: OnRing, to: OnRing): PlanPoint[] | undefined {
  const ways = [round(ring, from, to, true), round(ring, from, to, false)].flatMap((way) => (way ? [apart(from.at, way)] : []));
  return ways.sort((one, other) => wayLength_m(from.at, one) - wayLength_m(from.at, other))[0];
}

/**
 * The way of a length along the ring, in the direction in which `toward` is nearer.
 * @returns undefined when it comes to a place too narrow for the ring, or would go round more than once
 */
export function lengthAlong(ring: BesideWalls, from: OnRing, toward: OnRing, length_m: number): PlanPoint[] | undefined {
  const ahead = round(ring, from, toward, true);
  const back = round(ring, from, toward, false);
  const isForward = ahead !== undefined && (!back || wayLength_m(from.at, ahead) <= wayLength_m(from.at, back));
  const places: PlanPoint[] = [];
  let [here, left_m, side] = [from.at, length_m, from.side];
  for (let i = 0; i <= ring.sides.length; i += 1) {
    const next = ring.sides[side];
    if (!next?.fits) return undefined;
    const end = isForward ? next.b : next.a;
    const rest_m = distance_m(here, end);
    if (left_m <= rest_m + SAME_PLACE_m) {
      const share = rest_m === 0 ? 0 : Math.min(1, left_m / rest_m);
      return apart(from.at, [...places, planPoint(here.x + (end.x - here.x) * share, here.y + (end.y - here.y) * share)]);
    }
    places.push(end);
    [here, left_m] = [end, left_m - rest_m];
    side = (side + (isForward ? 1 : -1) + ring.sides.length) % ring.sides.length;
  }
  return undefined;
}
