import { type PlanPoint, distance_m } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { Anchors, Sketch, ToolEvent, ToolView } from './tool.ts';
import { lineLabel, typedPlace } from './typed-place.ts';

/** Two places under way: the first one once it is clicked. */
export interface TwoPlaces {
  readonly a: PlanPoint | null;
  /** Direction typed without a length [rad]. */
  readonly axis_rad: number | null;
  readonly pointer: PlanPoint | null;
}

/** Nothing clicked yet. */
export const NO_PLACES: TwoPlaces = { a: null, axis_rad: null, pointer: null };

/** What came of an event: the state, both places once they are there, or nothing left to step back to. */
export interface TwoStep {
  readonly state: TwoPlaces;
  readonly both?: { readonly a: PlanPoint; readonly b: PlanPoint };
  readonly refusal?: string;
  readonly isLeft?: boolean;
}

/** Carries two places on by one event: clicks, or a click and a typed length with a direction. */
export function stepTwoPlaces(state: TwoPlaces, event: ToolEvent): TwoStep {
  const { a } = state;
  const second = (b: PlanPoint): TwoStep =>
    a && distance_m(a, b) > SAME_PLACE_m ? { state: NO_PLACES, both: { a, b: { x: b.x, y: b.y } } } : { state };
  switch (event.kind) {
    case 'move':
      return { state: { ...state, pointer: event.point } };
    case 'down':
      return a ? second(event.point) : { state: { a: { x: event.point.x, y: event.point.y }, axis_rad: null, pointer: event.point } };
    case 'enter':
      return a && state.pointer ? second(state.pointer) : { state };
    case 'typed': {
      if (!a) return { state, refusal: 'Click the first place, then type the length.' };
      const b = typedPlace(a, event, state.axis_rad, state.pointer);
      if (b) return second(b);
      if (event.angle_rad !== null) return { state: { ...state, axis_rad: event.angle_rad } };
      return { state, refusal: 'Type a length, or point the way it should go.' };
    }
    case 'back':
    case 'cancel':
      if (state.axis_rad !== null) return { state: { ...state, axis_rad: null } };
      return a ? { state: { ...NO_PLACES, pointer: state.pointer } } : { state, isLeft: event.kind === 'cancel' };
    default:
      return { state };
  }
}

/** What the second place refers to. */
export const twoPlacesAnchors = ({ a, axis_rad }: TwoPlaces): Anchors => (a ? { from: a, axis_rad: axis_rad ?? undefined } : {});

/** The line from the first place to the pointer with its length and direction. */
export function twoPlacesSketch({ a }: TwoPlaces, view: ToolView, pointer: PlanPoint | null): Sketch {
  if (!a) return {};
  const asks = ['length', 'angle'] as const;
  return pointer && distance_m(a, pointer) > SAME_PLACE_m ? { lines: [{ places: [a, pointer] }], labels: [lineLabel(view, a, pointer)], asks } : { asks };
}
