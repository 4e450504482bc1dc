import { type Outline, area_m2, findSelfCrossing } from '#shared/geometry/outline';
import { type PlanPoint, distance_m } from '#shared/geometry/point';
import { type Segment, distanceToSegment_m } from '#shared/geometry/segment';
import { traceRoom } from './trace-room.ts';
import type { UnderlayIndex } from './underlay-index.ts';

/** An outline smaller than this is a symbol or a piece of furniture, not a room [m²]. */
const LEAST_ROOM_m2 = 0.5;
/** Places nearer than this to the line of their neighbours are no corners [m]. */
const STRAIGHT_m = 0.0005;
/** Outlines whose areas differ less are one, found in two ways [m²]. */
const SAME_AREA_m2 = 0.01;
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

/** Rooms that the lines of single layers enclose; where there are none, the room that all lines together enclose. */
function tracedRooms(index: UnderlayIndex, at: PlanPoint): PlanPoint[][] {
  const plain = (layer?: string): PlanPoint[][] => {
    const room = plainOutline(traceRoom(index, at, layer) ?? []);
    return isRoom(room) ? [room] : [];
  };
  const byLayer = index.layers.flatMap((layer) => plain(layer));
  return byLayer.length > 0 ? byLayer : plain();
}

/**
 * Finds the closed outlines of the visible floor plans around a place, smallest first: closed lines of the file,
 * and separate lines that enclose the place without a gap. Lines of one layer are taken together before lines of
 * different layers are, so that furniture and beams do not cut a room in parts.
 * @returns open lists of corners, last not repeated
 */
export function outlinesAround(underlays: readonly UnderlayIndex[], at: PlanPoint): PlanPoint[][] {
  const shown = underlays.filter(({ underlay }) => underlay.visible);
  const drawn = shown.flatMap((index) => index.outlinesAround(at).map(plainOutline).filter(isRoom));
  const rooms = shown.flatMap((index) => tracedRooms(index, at));
  return [...drawn, ...rooms]
    .sort((a, b) => area_m2(a) - area_m2(b))
    .filter((outline, i, all) => i === 0 || area_m2(outline) - area_m2(all[i - 1] ?? []) > SAME_AREA_m2);
}
