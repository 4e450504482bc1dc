import { JOIN_m } from '#shared/commands/sound-value';
import { type Outline, area_m2, findSelfCrossing, sidesOf } from '#shared/geometry/outline';
import { type PlanPoint, bearing_rad, distance_m } from '#shared/geometry/point';
import { angleBetween_rad } from '#shared/geometry/angle';
import { meetingOf } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { formatQuantity } from '#shared/units/quantity-text';
import type { Anchors, Sketch, ToolEvent, ToolView } from './tool.ts';
import { lineLabel, typedPlace } from './typed-place.ts';

/** A ring under way. */
export interface RingDrawing {
  readonly corners: readonly PlanPoint[];
  /** Direction typed without a length: the next corner stays on it [rad]. */
  readonly axis_rad: number | null;
  /** Where the pointer last moved to, or the last corner since that was placed. */
  readonly pointer: PlanPoint | null;
}

/** Nothing drawn yet. */
export const NO_RING: RingDrawing = { corners: [], axis_rad: null, pointer: null };

/** What came of an event: the ring under way, a ring that was closed, or nothing left to step back to. */
export interface RingStep {
  readonly ring: RingDrawing;
  readonly closed?: readonly PlanPoint[];
  readonly refusal?: string;
  readonly isLeft?: boolean;
}

/** Sides that turn back onto the side before them within this angle run along it [rad]. */
const FOLDED_rad = 1e-6;

/** Why a side from the last corner to a place cannot be drawn, or null. */
function faultOfSide(corners: readonly PlanPoint[], to: PlanPoint, closes: boolean): string | null {
  const last = corners.at(-1);
  if (!last) return null;
  const before = corners.at(-2);
  const folded = (a: PlanPoint, b: PlanPoint, c: PlanPoint): boolean => angleBetween_rad(bearing_rad(b, a), bearing_rad(b, c)) < FOLDED_rad;
  if (before && folded(before, last, to)) return 'This side would run back along the one before it. Place the corner elsewhere.';
  const second = corners[1];
  if (closes && second && folded(last, to, second)) return 'The last side would run along the first one. Place the last corner elsewhere.';
  const sides = sidesOf(corners).slice(closes ? 1 : 0, -2);
  const crossed = sides.some((side) => meetingOf({ a: last, b: to }, side));
  return crossed ? 'This side would cross or touch another one. Place the corner elsewhere.' : null;
}

function addCorner(ring: RingDrawing, at: PlanPoint): RingStep {
  const last = ring.corners.at(-1);
  if (last && distance_m(last, at) < JOIN_m) return { ring };
  const refusal = faultOfSide(ring.corners, at, false);
  if (refusal !== null) return { ring, refusal };
  return { ring: { corners: [...ring.corners, { x: at.x, y: at.y }], axis_rad: null, pointer: at } };
}

function close(ring: RingDrawing, what: string): RingStep {
  const first = ring.corners[0];
  if (ring.corners.length < 3 || !first) return { ring, refusal: `${what} needs three corners at least. Place more corners, or press Escape to step back.` };
  const refusal = faultOfSide(ring.corners, first, true) ?? (findSelfCrossing(ring.corners) ? 'The sides of this outline would cross. Step back and place the corners elsewhere.' : null);
  return refusal === null ? { ring: NO_RING, closed: ring.corners } : { ring, refusal };
}

/**
 * Carries a ring on by one event. Clicks and typed values add corners; a click on the first corner, Enter or a
 * double click closes it; Back and Escape take the last corner off.
 * @param what  names the ring in refusals: "An enclosure"
 */
export function stepRing(ring: RingDrawing, event: ToolEvent, what: string): RingStep {
  const { corners } = ring;
  const first = corners[0];
  const last = corners.at(-1);
  switch (event.kind) {
    case 'move':
      return { ring: { ...ring, pointer: event.point } };
    case 'up':
      return { ring };
    case 'down': {
      const onFirst = first && corners.length >= 3 && (distance_m(event.point, first) < JOIN_m || distance_m(event.raw, first) <= event.reach_m);
      return onFirst ? close(ring, what) : addCorner(ring, event.point);
    }
    case 'double':
      return corners.length >= 3 ? close(ring, what) : { ring };
    case 'enter':
      return close(ring, what);
    case 'typed': {
      if (!last) return { ring, refusal: 'Click the first corner, then type lengths and directions.' };
      const at = typedPlace(last, event, ring.axis_rad, ring.pointer);
      if (at) return first && corners.length >= 3 && distance_m(at, first) < JOIN_m ? close(ring, what) : addCorner(ring, at);
      if (event.angle_rad !== null) return { ring: { ...ring, axis_rad: event.angle_rad } };
      return { ring, refusal: 'Type a length, or point the way it should go.' };
    }
    case 'back':
    case 'cancel':
      if (ring.axis_rad !== null) return { ring: { ...ring, axis_rad: null } };
      if (corners.length === 0) return { ring, isLeft: event.kind === 'cancel' };
      return { ring: { ...ring, corners: corners.slice(0, -1) } };
  }
}

/** What the next corner refers to. */
export function ringAnchors({ corners, axis_rad }: RingDrawing): Anchors {
  const from = corners.at(-1);
  return from ? { from, axis_rad: axis_rad ?? undefined, align: corners } : {};
}

/** The ring as far as it is drawn, with the side to the pointer. */
export function ringSketch(ring: RingDrawing, view: ToolView, pointer: PlanPoint | null): Sketch {
  const { corners } = ring;
  const last = corners.at(-1);
  if (!last) return {};
  const labels = sidesOf(corners)
    .slice(0, -1)
    .map(({ a, b }) => lineLabel(view, a, b));
  const lines: NonNullable<Sketch['lines']>[number][] = [{ places: corners }];
  const hasMoved = ring.pointer !== null && distance_m(last, ring.pointer) > SAME_PLACE_m;
  if (pointer && hasMoved && distance_m(last, pointer) > SAME_PLACE_m) {
    lines.push({ places: [last, pointer] });
    labels.push(lineLabel(view, last, pointer));
    const whole: Outline = [...corners, pointer];
    const first = corners[0];
    if (first && corners.length >= 2) {
      lines.push({ places: [pointer, first], dashed: true });
      labels.push({ at: middleOf(whole), text: formatQuantity(area_m2(whole), 'area', view.plan.settings.lengths) });
    }
  }
  return { lines, labels, asks: ['length', 'angle'] };
}

const middleOf = (places: Outline): PlanPoint => ({
  x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
  y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
});

/** What a ring expects next. */
export function ringHint({ corners, axis_rad }: RingDrawing, firstHint: string): string {
  if (corners.length === 0) return firstHint;
  if (axis_rad !== null) return 'Click or type the length of this side. Escape frees its direction.';
  if (corners.length < 3) return 'Click the next corner, or type its length and direction. Shift frees or locks square lines.';
  return 'Click the next corner, or close with Enter or a click on the first corner. Backspace takes the last corner off.';
}
