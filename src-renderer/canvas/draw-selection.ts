import type { Plan, Ref } from '#shared/model/plan';
import { toPlan } from '#shared/underlay/placement';
import type { Ink } from '../ink.ts';
import type { UnderlayDrawings } from '../store/underlay-drawings.ts';
import { type Pen, disc, line, polyline, ring, setLine } from './pen.ts';
import { drawHandle } from './symbols/handle.ts';
import { thingShape } from './thing-shape.ts';
import { type Viewport, toScreen } from './viewport.ts';

/** More things than this are marked without their handles. */
const MOST_WITH_HANDLES = 12;

/** Marks what is selected: a wide pale line under a thin one, a ring around single places, squares where it can be dragged. */
export function drawSelection(pen: Pen, view: Viewport, plan: Plan, selection: readonly Ref[], ink: Ink): void {
  const shapes = selection.map((ref) => thingShape(plan, ref));
  for (const [width, alpha] of [
    [9, 0.3],
    [1.75, 1],
  ] as const) {
    pen.globalAlpha = alpha;
    setLine(pen, { colour: ink.selection, width, cap: 'round', join: 'round' });
    for (const { rings, lines, points } of shapes) {
      for (const each of rings) polyline(pen, each.map((p) => toScreen(view, p)), true);
      for (const [a, b] of lines) {
        const from = toScreen(view, a);
        const to = toScreen(view, b);
        if (Math.hypot(to.x - from.x, to.y - from.y) < 3) ring(pen, from, 11);
        else line(pen, from, to);
      }
      for (const p of points) ring(pen, toScreen(view, p), 17);
    }
  }
  pen.globalAlpha = 1;
  if (shapes.length > MOST_WITH_HANDLES) return;
  for (const { handles } of shapes) for (const p of handles) drawHandle(pen, toScreen(view, p), ink.selection, ink.paper);
}

/** Marks what a click would pick. */
export function drawHover(pen: Pen, view: Viewport, plan: Plan, ref: Ref, ink: Ink): void {
  const { rings, lines, points } = thingShape(plan, ref);
  pen.globalAlpha = 0.22;
  setLine(pen, { colour: ink.selection, width: 9, cap: 'round', join: 'round' });
  for (const each of rings) polyline(pen, each.map((p) => toScreen(view, p)), true);
  for (const [a, b] of lines) line(pen, toScreen(view, a), toScreen(view, b));
  for (const p of points) disc(pen, toScreen(view, p), 16, ink.selection);
  pen.globalAlpha = 1;
}

/** Frames the floor plans that are selected: their extents as they lie on the level. */
export function drawSelectedUnderlays(pen: Pen, view: Viewport, plan: Plan, drawings: UnderlayDrawings, selection: readonly Ref[], ink: Ink): void {
  for (const ref of selection) {
    const underlay = ref.kind === 'underlay' ? plan.levels[ref.level]?.underlays[ref.id] : undefined;
    const extents = underlay && drawings.find(plan, underlay)?.extents;
    if (!underlay || !extents) continue;
    const { minX, minY, maxX, maxY } = extents;
    const frame = [toPlan(underlay, minX, minY), toPlan(underlay, maxX, minY), toPlan(underlay, maxX, maxY), toPlan(underlay, minX, maxY)];
    setLine(pen, { colour: ink.selection, width: 1.75, dash: [9, 4] });
    polyline(pen, frame.map((p) => toScreen(view, p)), true);
  }
}
