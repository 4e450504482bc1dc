import { addDimension } from '#shared/commands/add-dimension';
import { type PlanPoint, distance_m, midpoint } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { commitOr } from './attempt.ts';
import { dimensionLine, leftOf_m } from './level-things.ts';
import type { Tool, ToolStep, ToolView } from './tool.ts';
import { NO_PLACES, type TwoPlaces, stepTwoPlaces, twoPlacesAnchors, twoPlacesSketch } from './two-places.ts';
import { lengthText } from './typed-place.ts';

/** Two measured places, then how far beside them the dimension is written. */
export type DimensionState =
  | { readonly at: 'places'; readonly places: TwoPlaces }
  | { readonly at: 'offset'; readonly a: PlanPoint; readonly b: PlanPoint; readonly pointer: PlanPoint | null };

const start: DimensionState = { at: 'places', places: NO_PLACES };

function place(state: Extract<DimensionState, { at: 'offset' }>, offset_m: number, view: ToolView): ToolStep<DimensionState> {
  return commitOr(view, addDimension(view.session.level, state.a, state.b, offset_m), { state: start }, state);
}

/** Draws a dimension: two places, then the line beside them. */
export const dimensionTool: Tool<DimensionState> = {
  id: 'dimension',
  start,
  anchors: (state) => (state.at === 'places' ? twoPlacesAnchors(state.places) : {}),
  hint(state) {
    if (state.at === 'offset') return 'Click where the dimension line runs, or type how far beside the two places.';
    return state.places.a ? 'Click the second place.' : 'Click the first place to measure from.';
  },
  sketch(state, view, pointer) {
    if (state.at === 'places') return twoPlacesSketch(state.places, view, pointer);
    const offset_m = pointer ? leftOf_m(pointer, state) : 0;
    const line = dimensionLine({ ...state, offset_m });
    return {
      lines: [{ places: [line.a, line.b] }, { places: [state.a, line.a], dashed: true }, { places: [state.b, line.b], dashed: true }],
      labels: [{ at: midpoint(line.a, line.b), text: lengthText(view, distance_m(state.a, state.b)) }],
      asks: ['length'],
    };
  },
  step(state, event, view) {
    if (state.at === 'places') {
      const next = stepTwoPlaces(state.places, event);
      if (next.both) return { state: { at: 'offset', ...next.both, pointer: null } };
      return { state: { at: 'places', places: next.state }, refusal: next.refusal, finished: next.isLeft };
    }
    switch (event.kind) {
      case 'move':
        return { state: { ...state, pointer: event.point } };
      case 'down':
        return place(state, leftOf_m(event.point, state), view);
      case 'enter':
        return place(state, state.pointer ? leftOf_m(state.pointer, state) : 0, view);
      case 'typed': {
        if (event.length_m === null) return { state, refusal: 'Type how far beside the two places the dimension runs.' };
        const side_m = state.pointer ? leftOf_m(state.pointer, state) : 1;
        return place(state, side_m < -SAME_PLACE_m ? -event.length_m : event.length_m, view);
      }
      case 'back':
      case 'cancel':
        return { state: { at: 'places', places: { ...NO_PLACES, a: state.a } } };
      default:
        return { state };
    }
  },
};
