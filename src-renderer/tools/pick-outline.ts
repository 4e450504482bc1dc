import { addEnclosure } from '#shared/commands/add-enclosure';
import { area_m2, boundsOf, isInside } from '#shared/geometry/outline';
import { type PlanPoint, distance_m, midpoint } from '#shared/geometry/point';
import { formatQuantity } from '#shared/units/quantity-text';
import { commitOr } from './attempt.ts';
import type { Tool } from './tool.ts';

/** The outline around the pointer, if the floor plan has one there. */
export interface PickOutlineState {
  readonly outline: readonly PlanPoint[] | null;
  /** Where it was looked for: a pointer that hardly moved is not searched for again. */
  readonly lookedAt: PlanPoint | null;
  /** Shift was held: the next larger outline. */
  readonly isLarger: boolean;
}

const start: PickOutlineState = { outline: null, lookedAt: null, isLarger: false };
const NONE = 'No closed outline here. Point inside a room whose lines close, or draw the enclosure corner by corner.';

/** Takes a closed outline of the floor plan as an enclosure. */
export const pickOutlineTool: Tool<PickOutlineState> = {
  id: 'pick-outline',
  start,
  hint: ({ outline }) => (outline ? 'Click to take this outline as an enclosure. Hold Shift for the next larger one.' : 'Point inside a room of the floor plan: its outline lights up when its lines close.'),
  sketch({ outline }, view) {
    if (!outline) return {};
    const { minX, minY, maxX, maxY } = boundsOf(outline);
    return {
      lines: [{ places: outline, closed: true }],
      labels: [{ at: midpoint({ x: minX, y: minY }, { x: maxX, y: maxY }), text: formatQuantity(area_m2(outline), 'area', view.plan.settings.lengths) }],
    };
  },
  step(state, event, view) {
    if (event.kind === 'cancel') return { state: start, finished: true };
    if (event.kind === 'move') {
      const { outline, lookedAt, isLarger } = state;
      const isSame = lookedAt && isLarger === event.shift && distance_m(lookedAt, event.raw) <= event.reach_m && (!outline || isInside(event.raw, outline));
      return { state: isSame ? state : { outline: view.outlineAt(event.raw, event.shift ? 1 : 0) ?? null, lookedAt: event.raw, isLarger: event.shift } };
    }
    if (event.kind === 'down' || event.kind === 'enter') {
      const outline = event.kind === 'down' ? view.outlineAt(event.raw, event.shift ? 1 : 0) : state.outline;
      if (!outline) return { state: start, refusal: NONE };
      return commitOr(view, addEnclosure(view.session.level, [...outline]), { state: start, finished: true }, state);
    }
    return { state };
  },
};
