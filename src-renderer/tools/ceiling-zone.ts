import { addCeilingZone } from '#shared/commands/add-ceiling-zone';
import { type PlanPoint, midpoint } from '#shared/geometry/point';
import { boundsOf } from '#shared/geometry/outline';
import { commitOr } from './attempt.ts';
import { enclosureAt } from './enclosure-at.ts';
import { NO_RING, type RingDrawing, ringAnchors, ringHint, ringSketch, stepRing } from './ring-drawing.ts';
import type { Tool, ToolView } from './tool.ts';

/** The zone is drawn first, then its height is typed. */
export type CeilingZoneState = { readonly at: 'ring'; readonly ring: RingDrawing } | { readonly at: 'height'; readonly zone: readonly PlanPoint[] };

const start: CeilingZoneState = { at: 'ring', ring: NO_RING };
const TYPE_HEIGHT = 'Type the height of this ceiling above the finished floor.';

const middleOf = (zone: readonly PlanPoint[]): PlanPoint => {
  const { minX, minY, maxX, maxY } = boundsOf(zone);
  return midpoint({ x: minX, y: minY }, { x: maxX, y: maxY });
};

function enclosureOf(view: ToolView, zone: readonly PlanPoint[]) {
  const middle = middleOf(zone);
  return enclosureAt(view, middle);
}

/** Marks a part of a ceiling with its own height: a ring, then the height. */
export const ceilingZoneTool: Tool<CeilingZoneState> = {
  id: 'ceiling-zone',
  start,
  anchors: (state) => (state.at === 'ring' ? ringAnchors(state.ring) : {}),
  hint: (state) => (state.at === 'height' ? TYPE_HEIGHT : ringHint(state.ring, 'Click the first corner of the part of the ceiling that has its own height.')),
  sketch(state, view, pointer) {
    if (state.at === 'ring') return ringSketch(state.ring, view, pointer);
    return { lines: [{ places: state.zone, closed: true }], labels: [{ at: middleOf(state.zone), text: 'Height?' }], asks: ['height'] };
  },
  step(state, event, view) {
    if (state.at === 'height') {
      if (event.kind === 'cancel' || event.kind === 'back') return { state: { at: 'ring', ring: { ...NO_RING, corners: state.zone } } };
      if (event.kind === 'typed') {
        const height_m = event.height_m ?? event.length_m;
        if (height_m === null || height_m <= 0) return { state, refusal: TYPE_HEIGHT };
        const enclosure = enclosureOf(view, state.zone);
        if (!enclosure) return { state, refusal: 'There is no enclosure here. Draw the enclosure first.' };
        const ref = { kind: 'enclosure', level: view.session.level, id: enclosure.id } as const;
        return commitOr<CeilingZoneState>(view, addCeilingZone(ref, [...state.zone], height_m), { state: start, finished: true }, state);
      }
      return event.kind === 'enter' || event.kind === 'down' ? { state, refusal: TYPE_HEIGHT } : { state };
    }
    const next = stepRing(state.ring, event, 'A ceiling zone');
    if (next.closed) {
      if (!enclosureOf(view, next.closed)) return { state, refusal: 'There is no enclosure here. Draw the enclosure first.' };
      return { state: { at: 'height', zone: next.closed } };
    }
    return { state: { at: 'ring', ring: next.ring }, refusal: next.refusal, finished: next.isLeft };
  },
};
