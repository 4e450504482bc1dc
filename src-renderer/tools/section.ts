import type { Tool } from './tool.ts';
import { NO_PLACES, type TwoPlaces, stepTwoPlaces, twoPlacesAnchors, twoPlacesSketch } from './two-places.ts';

/** Chooses the line along which the section strip cuts. */
export const sectionTool: Tool<TwoPlaces> = {
  id: 'section',
  start: NO_PLACES,
  anchors: twoPlacesAnchors,
  hint: ({ a }) => (a ? 'Click where the cut ends.' : 'Click where the cut begins. The strip below then shows the plan from that side.'),
  sketch: twoPlacesSketch,
  step(state, event) {
    const next = stepTwoPlaces(state, event);
    if (next.both) return { state: NO_PLACES, session: { cut: next.both }, finished: true };
    return { state: next.state, refusal: next.refusal, finished: next.isLeft };
  },
};
