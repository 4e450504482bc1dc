import { addEnclosure } from '#shared/commands/add-enclosure';
import { commitOr } from './attempt.ts';
import { NO_RING, type RingDrawing, ringAnchors, ringHint, ringSketch, stepRing } from './ring-drawing.ts';
import type { Tool } from './tool.ts';

/** Draws an enclosure corner by corner along its finished wall faces. */
export const enclosureTool: Tool<RingDrawing> = {
  id: 'enclosure',
  start: NO_RING,
  anchors: ringAnchors,
  hint: (ring) => ringHint(ring, 'Click the first corner of the enclosure, at the finished wall face.'),
  sketch: ringSketch,
  step(ring, event, view) {
    const next = stepRing(ring, event, 'An enclosure');
    if (next.closed) return commitOr(view, addEnclosure(view.session.level, [...next.closed]), { state: NO_RING, finished: true }, ring);
    return { state: next.ring, refusal: next.refusal, finished: next.isLeft };
  },
};
