import { turnTo_rad } from '#shared/geometry/angle';
import { isInside, signedArea_m2 } from '#shared/geometry/outline';
import { type PlanPoint, bearing_rad, distance_m } from '#shared/geometry/point';
import { type Segment, distanceToSegment_m, meetingOf, nearestOnSegment, rayHit_m } from '#shared/geometry/segment';
import type { UnderlayIndex } from './underlay-index.ts';

/** Lines that end this near to each other meet [m]. */
const MEET_m = 0.002;
/** A room reaches no farther than this from the place inside it [m]. */
const FARTHEST_m = 60;
/** Sides that are followed before the search is given up. */
const MOST_SIDES = 600;
/** Things standing free in the room that are looked past. */
const MOST_ISLANDS = 12;
/** Lines looked at in one query: a drawing that is denser than this around one side is given up. */
const MOST_LINES = 4000;

/** Where a line is left for another: the place, and the place to head for next. */
interface Way {
  readonly line: Segment;
  readonly to: PlanPoint;
}

/** Lines that pass within `MEET_m` of a piece. */
function linesAlong(index: UnderlayIndex, { a, b }: Segment): Segment[] {
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return index.nearestSegments(middle, distance_m(a, b) / 2 + MEET_m, MOST_LINES);
}

/** Where `other` meets the piece from `from` to `to`, tolerating a small gap; the meeting nearest to `from`. */
function meetingPlace(from: PlanPoint, to: PlanPoint, other: Segment): PlanPoint | undefined {
  const met = meetingOf({ a: from, b: to }, other);
  if (met) return met;
  const near = [other.a, other.b, ...(distanceToSegment_m(to, other) <= MEET_m ? [to] : [])]
    .map((end) => ({ end, on: nearestOnSegment(end, { a: from, b: to }) }))
    .filter(({ end, on }) => distance_m(end, on) <= MEET_m)
    .sort((one, two) => distance_m(from, one.on) - distance_m(from, two.on));
  return near[0]?.on;
}

/** The next place along a way where another line can be taken, and the sharpest way to the left from there. */
function nextTurn(index: UnderlayIndex, from: PlanPoint, way: Way): { at: PlanPoint; way: Way } {
  const heading_rad = bearing_rad(from, way.to);
  const met = linesAlong(index, { a: from, b: way.to }).flatMap((line) => {
    const at = meetingPlace(from, way.to, line);
    return at && distance_m(from, at) > MEET_m ? [{ line, at, along: distance_m(from, at) }] : [];
  });
  const nearest = Math.min(distance_m(from, way.to), ...met.map(({ along }) => along));
  const at = met.find(({ along }) => along === nearest)?.at ?? way.to;
  const ways: Way[] = met
    .filter(({ along }) => along <= nearest + MEET_m)
    .flatMap(({ line }) => [
      { line, to: line.a },
      { line, to: line.b },
    ]);
  ways.push({ line: way.line, to: way.to });
  let best: { way: Way; turn: number } | undefined;
  for (const each of ways) {
    if (distance_m(at, each.to) <= MEET_m) continue;
    const turn = turnTo_rad(heading_rad, bearing_rad(at, each.to));
    if (Math.abs(turn) > Math.PI - 1e-4) continue;
    if (!best || turn > best.turn + 1e-9) best = { way: each, turn };
  }
  if (best) return { at, way: best.way };
  // A dead end: back along the same line, on its other side.
  const back = distance_m(at, way.line.a) > distance_m(at, way.line.b) ? way.line.a : way.line.b;
  return { at, way: { line: way.line, to: back } };
}

/** Follows the lines from a place on one of them, the room on the left hand, until it comes round. */
function walkRound(index: UnderlayIndex, start: PlanPoint, first: Way): PlanPoint[] | undefined {
  const ring: PlanPoint[] = [];
  let at = start;
  let way = first;
  for (let side = 0; side < MOST_SIDES; side += 1) {
    const next = nextTurn(index, at, way);
    const passesStart = side > 0 && distanceToSegment_m(start, { a: at, b: next.at }) <= MEET_m / 4;
    const sameWay = Math.abs(turnTo_rad(bearing_rad(at, way.to), bearing_rad(start, first.to))) < 0.01;
    if (passesStart && sameWay) return ring;
    ring.push(next.at);
    at = next.at;
    way = next.way;
    if (distance_m(at, start) > 2 * FARTHEST_m) return undefined;
  }
  return undefined;
}

/** Lines that a ray to the east meets, nearest first, looked for farther and farther out. */
function hitsEast(index: UnderlayIndex, at: PlanPoint, beyond_m: number): { line: Segment; along_m: number } | undefined {
  for (let reach_m = 1; reach_m <= FARTHEST_m; reach_m *= 2) {
    const hits = index
      .nearestSegments(at, reach_m, MOST_LINES)
      .flatMap((line) => {
        const along_m = rayHit_m(at, 0, line);
        return along_m !== undefined && along_m > beyond_m && along_m <= reach_m ? [{ line, along_m }] : [];
      })
      .sort((a, b) => a.along_m - b.along_m);
    if (hits[0]) return hits[0];
  }
  return undefined;
}

/**
 * Finds the room around a place from separate lines of a floor plan: the nearest line to the east is followed
 * round with the room on the left hand. Lines must meet within 2 mm; a door left open leads out of the room.
 * @returns the ring as walked, spurs included; undefined when the lines do not close around the place
 */
export function traceRoom(index: UnderlayIndex, at: PlanPoint): PlanPoint[] | undefined {
  let beyond_m = 0;
  for (let island = 0; island < MOST_ISLANDS; island += 1) {
    const hit = hitsEast(index, at, beyond_m);
    if (!hit) return undefined;
    const { a, b } = hit.line;
    const start = { x: at.x + hit.along_m, y: at.y };
    const ring = walkRound(index, start, { line: hit.line, to: a.y > b.y ? a : b });
    if (ring && ring.length >= 3 && signedArea_m2(ring) > 0 && isInside(at, ring)) return ring;
    beyond_m = hit.along_m + MEET_m;
  }
  return undefined;
}
