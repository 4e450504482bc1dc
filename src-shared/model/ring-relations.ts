import { sideOfOutline } from '../geometry/inside.ts';
import { type Outline, area_m2, boundsOf, boxesTouch, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, midpoint, planPoint } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m, meetingOf } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';

/** Work that may still be spent on comparing sides; counts down. Bounds the time that a hostile plan can take. */
export interface Effort {
  left: number;
}
/** Enough for every enclosure of a large building, and less than a second of work. */
export const usualEffort = (): Effort => ({ left: 30_000_000 });

/** Why a ring is not the outline of an area. */
export interface RingFault {
  readonly kind: 'crossing' | 'no-length' | 'no-area' | 'too-much';
  readonly at: PlanPoint;
}

const boxOf = ({ a, b }: Segment) => ({
  minX: Math.min(a.x, b.x) - SAME_PLACE_m,
  maxX: Math.max(a.x, b.x) + SAME_PLACE_m,
  minY: Math.min(a.y, b.y) - SAME_PLACE_m,
  maxY: Math.max(a.y, b.y) + SAME_PLACE_m,
});

/** Where two sides share a place, touching and running along each other included. */
function sharedPlace(first: Segment, second: Segment): PlanPoint | undefined {
  const met = meetingOf(first, second);
  if (met) return met;
  const ends = [first.a, first.b].find((p) => distanceToSegment_m(p, second) <= SAME_PLACE_m);
  return ends ?? [second.a, second.b].find((p) => distanceToSegment_m(p, first) <= SAME_PLACE_m);
}

/** Where a side runs back over the one before it, or undefined. */
function foldedAt(before: Segment, after: Segment): PlanPoint | undefined {
  const isAfterShorter = distance_m(after.a, after.b) < distance_m(before.a, before.b);
  const isBack = isAfterShorter ? distanceToSegment_m(after.b, before) <= SAME_PLACE_m : distanceToSegment_m(before.a, after) <= SAME_PLACE_m;
  return isBack ? after.a : undefined;
}

/**
 * The first fault that keeps a closed ring from being a plain outline: sides that cross, touch or double back,
 * a side without length, no area; or undefined for a sound ring. Either winding is sound.
 */
export function findRingFault(ring: Outline, effort: Effort = usualEffort()): RingFault | undefined {
  const sides = sidesOf(ring);
  const short = sides.find(({ a, b }) => distance_m(a, b) <= SAME_PLACE_m);
  if (short) return { kind: 'no-length', at: short.a };
  for (const [i, side] of sides.entries()) {
    const before = sides[(i + sides.length - 1) % sides.length];
    const folded = before && foldedAt(before, side);
    if (folded) return { kind: 'crossing', at: folded };
  }
  const boxed = sides.map((side, index) => ({ side, index, box: boxOf(side) })).sort((a, b) => a.box.minX - b.box.minX);
  for (const [i, first] of boxed.entries()) {
    for (let j = i + 1; j < boxed.length; j += 1) {
      const second = boxed[j];
      if (!second || second.box.minX > first.box.maxX) break;
      effort.left -= 1;
      if (effort.left < 0) return { kind: 'too-much', at: first.side.a };
      if (second.box.minY > first.box.maxY || second.box.maxY < first.box.minY) continue;
      const gap = Math.abs(first.index - second.index);
      if (gap === 1 || gap === sides.length - 1) continue;
      const at = sharedPlace(first.side, second.side);
      if (at) return { kind: 'crossing', at };
    }
  }
  return area_m2(ring) <= SAME_PLACE_m ? { kind: 'no-area', at: ring[0] ?? planPoint(0, 0) } : undefined;
}

/** The middles of the pieces into which a ring is cut by the sides of another. */
function* piecesOf(ring: Outline, cutter: Outline, effort: Effort): Generator<PlanPoint> {
  const cuts = sidesOf(cutter);
  for (const side of sidesOf(ring)) {
    const length_m = distance_m(side.a, side.b);
    const box = boxOf(side);
    const stops = [0, length_m];
    effort.left -= cuts.length;
    for (const cut of cuts) {
      if (!boxesTouch(box, boxOf(cut))) continue;
      const met = meetingOf(side, cut);
      if (met) stops.push(distance_m(side.a, met));
      for (const end of [cut.a, cut.b]) if (distanceToSegment_m(end, side) <= SAME_PLACE_m) stops.push(distance_m(side.a, end));
    }
    stops.sort((a, b) => a - b);
    for (const [i, stop] of stops.entries()) {
      const next_m = stops[i + 1];
      if (next_m === undefined || next_m - stop <= SAME_PLACE_m) continue;
      effort.left -= cuts.length;
      const share = (stop + next_m) / 2 / length_m;
      yield planPoint(side.a.x + (side.b.x - side.a.x) * share, side.a.y + (side.b.y - side.a.y) * share);
    }
  }
}

/** A place of an inner ring that lies outside an outer one, or undefined when it stays inside; touching counts as inside. */
export function findOutside(inner: Outline, outer: Outline, effort: Effort = usualEffort()): PlanPoint | undefined {
  for (const p of piecesOf(inner, outer, effort)) {
    if (effort.left < 0 || sideOfOutline(p, outer) === 'outside') return p;
  }
  return undefined;
}

/** A place inside a sound ring, away from its sides. */
function innerPlace(ring: Outline): PlanPoint | undefined {
  const { minX, minY, maxX, maxY } = boundsOf(ring);
  const heights = [...new Set(ring.map(({ y }) => y))].sort((a, b) => a - b);
  let widest: { at: PlanPoint; width_m: number } | undefined;
  for (const y of heights.slice(1).map((height, i) => (height + (heights[i] ?? minY)) / 2)) {
    const cut = { a: planPoint(minX - 1, y), b: planPoint(maxX + 1, y) };
    const places = sidesOf(ring).flatMap((side) => meetingOf(cut, side) ?? []).sort((a, b) => a.x - b.x);
    for (let i = 0; i + 1 < places.length; i += 2) {
      const [from, to] = [places[i], places[i + 1]];
      if (from && to && to.x - from.x > (widest?.width_m ?? 0)) widest = { at: midpoint(from, to), width_m: to.x - from.x };
    }
    if (widest && maxY > minY) return widest.at;
  }
  return widest?.at;
}

/** A place that two sound rings both cover, or undefined when they are apart; touching counts as apart. */
export function findOverlap(first: Outline, second: Outline, effort: Effort = usualEffort()): PlanPoint | undefined {
  if (!boxesTouch(boundsOf(first), boundsOf(second))) return undefined;
  for (const [ring, other] of [[first, second], [second, first]] as const) {
    for (const p of piecesOf(ring, other, effort)) {
      if (effort.left < 0 || sideOfOutline(p, other) === 'inside') return p;
    }
    const inner = innerPlace(ring);
    if (inner && sideOfOutline(inner, other) === 'inside') return inner;
  }
  return undefined;
}
