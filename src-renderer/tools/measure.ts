import { type PlanPoint, bearing_rad, distance_m, midpoint } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { Sketch, Tool, ToolView } from './tool.ts';
import { NO_PLACES, type TwoPlaces, stepTwoPlaces, twoPlacesAnchors } from './two-places.ts';
import { angleText, lengthText } from './typed-place.ts';

/** Two places; what was measured last stays in sight until the next click. */
export interface MeasureState {
  readonly places: TwoPlaces;
  readonly last: { readonly a: PlanPoint; readonly b: PlanPoint } | null;
}

function figures(view: ToolView, a: PlanPoint, b: PlanPoint): Sketch {
  const text = `${lengthText(view, distance_m(a, b))} at ${angleText(view, bearing_rad(a, b))}`;
  if (Math.abs(b.x - a.x) <= SAME_PLACE_m || Math.abs(b.y - a.y) <= SAME_PLACE_m) return { lines: [{ places: [a, b] }], labels: [{ at: midpoint(a, b), text }] };
  const eastward = `${lengthText(view, Math.abs(b.x - a.x))} ${b.x > a.x ? 'east' : 'west'}`;
  const northward = `${lengthText(view, Math.abs(b.y - a.y))} ${b.y > a.y ? 'north' : 'south'}`;
  return {
    lines: [{ places: [a, b] }, { places: [a, { x: b.x, y: a.y }, b], dashed: true }],
    // One text at the far place: three along a short line would cover each other.
    labels: [{ at: b, text: `${text}: ${eastward}, ${northward}` }],
  };
}

/** Reads a distance off the plan without drawing anything. */
export const measureTool: Tool<MeasureState> = {
  id: 'measure',
  start: { places: NO_PLACES, last: null },
  anchors: ({ places }) => ({ ...twoPlacesAnchors(places), isFree: true }),
  hint: ({ places, last }) => (places.a ? 'Click the second place.' : last ? 'Click to measure again. Escape ends.' : 'Click the first place to measure from.'),
  sketch({ places, last }, view, pointer) {
    if (places.a) return { ...(pointer && distance_m(places.a, pointer) > SAME_PLACE_m ? figures(view, places.a, pointer) : {}), asks: ['length', 'angle'] };
    return last ? figures(view, last.a, last.b) : {};
  },
  step(state, event) {
    if (event.kind === 'cancel' && !state.places.a && state.last) return { state: { ...state, last: null } };
    const next = stepTwoPlaces(state.places, event);
    if (next.both) return { state: { places: next.state, last: next.both } };
    return { state: { places: next.state, last: next.state.a ? null : state.last }, refusal: next.refusal, finished: next.isLeft };
  },
};
