import { turnTo_rad } from '#shared/geometry/angle';
import { isInside, signedArea_m2 } from '#shared/geometry/outline';
import { type PlanPoint, bearing_rad, distance_m } from '#shared/geometry/point';
import { type Segment, distanceToSegment_m, meetingOf, nearestOnSegment, rayHit_m } from '#shared/geometry/segment';
import type { UnderlayIndex } from './underlay-index.ts';

/** Lines that end this near to each other meet [m]. */
const MEET_m = 0.002;
/** A room reaches no farther than this from the place inside it [m]. */
const FARTHEST_m = 60;
/** A line is followed in stretches, so that a long one is not compared with all that it passes [m]. */
const STRETCH_m = 1;
/** Things standing free in the room that are looked past. */
const MOST_ISLANDS = 12;
/** Lines looked at before the search is given up: it must never hold the pointer up. */
const MOST_LOOKS = 2_000;

/** The floor plan with a count of how often it was asked. */
interface Search {
  readonly index: UnderlayIndex;
  readonly layer: string | undefined;
  looks: number;
}
/** A line and the end of it that is headed for. */
interface Way {
  readonly line: Segment;
  readonly to: PlanPoint;
}

function linesAlong(search: Search, line: Segment): Segment[] {
  const found = search.index.segmentsAlong(line, MEET_m, search.layer);
  search.looks += found.length + 1;
  return found;
}

/** Where another line meets the piece from `from` to `to`, tolerating a small gap; the meeting nearest to `from`. */
function meetingPlace(from: PlanPoint, to: PlanPoint, other: Segment): PlanPoint | undefined {
  const met = meetingOf({ a: from, b: to }, other);
  if (met) return met;
  const near = [other.a, other.b, ...(distanceToSegment_m(to, other) <= MEET_m ? [to] : [])]
    .map((end) => ({ end, on: nearestOnSegment(end, { a: from, b: to }) }))
    .filter(({ end, on }) => distance_m(end, on) <= MEET_m && distance_m(from, on) > MEET_m)
    .sort((one, two) => distance_m(from, one.on) - distance_m(from, two.on));
  return near[0]?.on;
}

/** The next place on a way where other lines meet it, with those lines; its end when none does before. */
function nextMeeting(search: Search, from: PlanPoint, to: PlanPoint): { at: PlanPoint; lines: Segment[] } {
  const length_m = distance_m(from, to);
  for (let done_m = 0; done_m < length_m; done_m += STRETCH_m) {
    const share = (along_m: number): PlanPoint => ({ x: from.x + ((to.x - from.x) * along_m) / length_m, y: from.y + ((to.y - from.y) * along_m) / length_m });
    const stretch = { a: share(done_m), b: share(Math.min(length_m, done_m + STRETCH_m)) };
    const met = linesAlong(search, stretch).flatMap((line) => {
      const at = meetingPlace(from, to, line);
      return at && distance_m(from, at) > MEET_m ? [{ line, at, along_m: distance_m(from, at) }] : [];
    });
    const nearest = met.sort((a, b) => a.along_m - b.along_m)[0];
    // A meeting beyond this stretch may have a nearer one before it that the next stretch finds.
    if (nearest && nearest.along_m <= done_m + STRETCH_m + MEET_m) {
      return { at: nearest.at, lines: met.filter(({ along_m }) => along_m <= nearest.along_m + MEET_m).map(({ line }) => line) };
    }
  }
  return { at: to, lines: [] };
}

/** The next place along a way where another line can be taken, and the sharpest way to the left from there. */
function nextTurn(search: Search, from: PlanPoint, way: Way): { at: PlanPoint; way: Way } {
  const heading_rad = bearing_rad(from, way.to);
  const { at, lines } = nextMeeting(search, from, way.to);
  let best: { way: Way; turn_rad: number } | undefined;
  for (const line of [...lines, way.line]) {
    for (const to of line === way.line ? [way.to] : [line.a, line.b]) {
      if (distance_m(at, to) <= MEET_m) continue;
      const turn_rad = turnTo_rad(heading_rad, bearing_rad(at, to));
      if (Math.abs(turn_rad) > Math.PI - 1e-4) continue;
      if (!best || turn_rad > best.turn_rad + 1e-9) best = { way: { line, to }, turn_rad };
    }
  }
  if (best) return { at, way: best.way };
  // A dead end: back along the same line, on its other side.
  const back = distance_m(at, way.line.a) > distance_m(at, way.line.b) ? way.line.a : way.line.b;
  return { at, way: { line: way.line, to: back } };
}

/** Follows the lines from a place on one of them, the room on the left hand, until it comes round. */
function walkRound(search: Search, start: PlanPoint, first: Way): PlanPoint[] | undefined {
  const ring: PlanPoint[] = [];
  let at = start;
  let way = first;
  while (search.looks < MOST_LOOKS) {
    const next = nextTurn(search, at, way);
    const passesStart = ring.length > 0 && distanceToSegment_m(start, { a: at, b: next.at }) <= MEET_m / 4;
    const sameWay = Math.abs(turnTo_rad(bearing_rad(at, way.to), bearing_rad(start, first.to))) < 0.01;
    if (passesStart && sameWay) return ring;
    ring.push(next.at);
    at = next.at;
    way = next.way;
    if (distance_m(at, start) > 2 * FARTHEST_m) return undefined;
  }
  return undefined;
}

/** The next line that a ray to the east meets, looked for stretch by stretch. */
function hitEast(search: Search, at: PlanPoint, beyond_m: number): { line: Segment; along_m: number } | undefined {
  for (let done_m = beyond_m; done_m < FARTHEST_m && search.looks < MOST_LOOKS; done_m += STRETCH_m) {
    const hit = linesAlong(search, { a: { x: at.x + done_m, y: at.y }, b: { x: at.x + done_m + STRETCH_m, y: at.y } })
      .flatMap((line) => {
        const along_m = rayHit_m(at, 0, line);
        return along_m !== undefined && along_m > beyond_m && along_m <= done_m + STRETCH_m ? [{ line, along_m }] : [];
      })
      .sort((a, b) => a.along_m - b.along_m)[0];
    if (hit) return hit;
  }
  return undefined;
}

/**
 * Finds the room around a place from separate lines of a floor plan: the nearest line to the east is followed
 * round with the room on the left hand. Lines must meet within 2 mm; a door left open leads out of the room.
 * @param layer  lines of this layer alone; those of all when it is not named
 * @returns the ring as walked, spurs included; undefined when the lines do not close around the place
 */
export function traceRoom(index: UnderlayIndex, at: PlanPoint, layer?: string): PlanPoint[] | undefined {
  const search: Search = { index, layer, looks: 0 };
  let beyond_m = 0;
  for (let island = 0; island < MOST_ISLANDS; island += 1) {
    const hit = hitEast(search, at, beyond_m);
    if (!hit) return undefined;
    const { a, b } = hit.line;
    const start = { x: at.x + hit.along_m, y: at.y };
    const ring = walkRound(search, start, { line: hit.line, to: a.y > b.y ? a : b });
    if (ring && ring.length >= 3 && signedArea_m2(ring) > 0 && isInside(at, ring)) return ring;
    beyond_m = hit.along_m + MEET_m;
  }
  return undefined;
}
