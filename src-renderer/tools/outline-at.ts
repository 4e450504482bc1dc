import { type Outline, area_m2, distanceToOutline_m, findSelfCrossing } from '#shared/geometry/outline';
import { type PlanPoint, distance_m } from '#shared/geometry/point';
import { type Segment, distanceToSegment_m } from '#shared/geometry/segment';
import { traceRoom } from './trace-room.ts';
import type { UnderlayIndex } from './underlay-index.ts';

/** An outline smaller than this is a symbol or a piece of furniture, not a room [m²]. */
const LEAST_ROOM_m2 = 0.5;
/** Places nearer than this to the line of their neighbours are no corners [m]. */
const STRAIGHT_m = 0.0005;
/** Corners that an enclosure's outline may have. */
const MOST_CORNERS = 2000;

/** Takes out repeated places, places on straight sides and spurs that run out and back. */
export function plainOutline(outline: Outline): PlanPoint[] {
  let ring: PlanPoint[] = outline.map(({ x, y }) => ({ x, y }));
  for (let before = -1; before !== ring.length && ring.length >= 3; ) {
    before = ring.length;
    const kept: PlanPoint[] = [];
    ring.forEach((p, i) => {
      const last = kept.at(-1) ?? ring.at(-1) ?? p;
      const next = ring[(i + 1) % ring.length] ?? p;
      const isRepeated = distance_m(last, p) <= STRAIGHT_m;
      const isSpur = distance_m(last, next) <= STRAIGHT_m;
      const side: Segment = { a: last, b: next };
      const isStraight = distanceToSegment_m(p, side) <= STRAIGHT_m || distanceToSegment_m(next, { a: last, b: p }) <= STRAIGHT_m;
      if (!isRepeated && !isSpur && !isStraight) kept.push(p);
    });
    ring = kept;
  }
  return ring;
}

const isRoom = (outline: Outline): boolean =>
  outline.length >= 3 && outline.length <= MOST_CORNERS && area_m2(outline) >= LEAST_ROOM_m2 && !findSelfCrossing(outline);

/**
 * Finds the smallest closed outline of the visible floor plans around a place: closed lines of the file,
 * or separate lines that enclose the place without a gap.
 * @returns an open list of corners, last not repeated; undefined when nothing encloses the place
 */
export function outlineAround(underlays: readonly UnderlayIndex[], at: PlanPoint): PlanPoint[] | undefined {
  const shown = underlays.filter(({ underlay }) => underlay.visible);
  const drawn = shown.map((index) => index.outlinesAround(at).map(plainOutline).find(isRoom));
  const traced = shown.map((index) => {
    const room = traceRoom(index, at);
    return room && plainOutline(room);
  });
  return [...drawn, ...traced]
    .flatMap((outline) => (outline && isRoom(outline) ? [outline] : []))
    .sort((a, b) => area_m2(a) - area_m2(b) || distanceToOutline_m(at, a) - distanceToOutline_m(at, b))[0];
}
