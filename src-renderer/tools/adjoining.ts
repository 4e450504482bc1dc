import { addAdjoining } from '#shared/commands/add-adjoining';
import { commitOr } from './attempt.ts';
import { NO_RING, type RingDrawing, ringAnchors, ringHint, ringSketch, stepRing } from './ring-drawing.ts';
import type { Tool } from './tool.ts';

const FIRST = 'Click the first corner of the space beside, under or over the enclosures; its kind is chosen on the right. Enter takes the outline of the floor plan around the pointer.';

/** Draws a space beside the enclosures corner by corner, or takes a closed outline of the floor plan. */
export const adjoiningTool: Tool<RingDrawing> = {
  id: 'adjoining',
  start: NO_RING,
  anchors: ringAnchors,
  hint: (ring) => ringHint(ring, FIRST),
  sketch: ringSketch,
  step(ring, event, view) {
    const { level, toolOptions } = view.session;
    if (event.kind === 'enter' && ring.corners.length === 0) {
      const outline = ring.pointer && view.outlineAt(ring.pointer, 0);
      if (!outline) return { state: ring, refusal: 'The floor plan has no closed outline here. Draw the space corner by corner.' };
      return commitOr(view, addAdjoining(level, [...outline], toolOptions.adjoiningKind), { state: NO_RING, finished: true }, ring);
    }
    const next = stepRing(ring, event, 'A space');
    if (next.closed) return commitOr(view, addAdjoining(level, [...next.closed], toolOptions.adjoiningKind), { state: NO_RING, finished: true }, ring);
    return { state: next.ring, refusal: next.refusal, finished: next.isLeft };
  },
};
