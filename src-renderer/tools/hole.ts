import { addHole } from '#shared/commands/add-hole';
import type { PlanPoint } from '#shared/geometry/point';
import { commitOr } from './attempt.ts';
import { enclosureAt } from './enclosure-at.ts';
import { NO_RING, type RingDrawing, ringAnchors, ringHint, ringSketch, stepRing } from './ring-drawing.ts';
import type { Tool, ToolView } from './tool.ts';

const enclosureOf = (view: ToolView, ring: readonly PlanPoint[]) => {
  const middle = { x: ring.reduce((sum, { x }) => sum + x, 0) / ring.length, y: ring.reduce((sum, { y }) => sum + y, 0) / ring.length };
  return enclosureAt(view, middle);
};

/** Cuts a shaft or column out of an enclosure, corner by corner. */
export const holeTool: Tool<RingDrawing> = {
  id: 'hole',
  start: NO_RING,
  anchors: ringAnchors,
  hint: (ring) => ringHint(ring, 'Click the first corner of the shaft or column to cut out of the enclosure.'),
  sketch: ringSketch,
  step(ring, event, view) {
    const next = stepRing(ring, event, 'A cut-out');
    if (next.closed) {
      const enclosure = enclosureOf(view, next.closed);
      if (!enclosure) return { state: ring, refusal: 'There is no enclosure here to cut out of. Draw the enclosure first.' };
      const ref = { kind: 'enclosure', level: view.session.level, id: enclosure.id } as const;
      return commitOr(view, addHole(ref, [...next.closed]), { state: NO_RING, finished: true, select: [ref] }, ring);
    }
    return { state: next.ring, refusal: next.refusal, finished: next.isLeft };
  },
};
