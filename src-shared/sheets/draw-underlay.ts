import type { Level } from '../model/plan.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import { toPlan } from '../underlay/placement.ts';
import { pen, segments } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { clipPiece, clipRing } from './text-box.ts';
import type { ViewDraft } from './view-draft.ts';

const FILL = '#eceeef';
/** A picture is faded further than on screen, so that the ink of the layout stands out. */
const FADED = 0.5;

/**
 * Lays the imported floor plans of a level under a view, in light grey, cut at the view's edge.
 * Their texts are left out: they could be read as part of the layout.
 */
export function drawUnderlay(view: ViewDraft, level: Level, drawings: ReadonlyMap<string, UnderlayDrawing>): void {
  const { room, frame } = view;
  const marks: Mark[] = [];
  for (const underlay of Object.values(level.underlays)) {
    const drawing = drawings.get(underlay.id);
    if (!drawing || !underlay.visible) continue;
    const place = (x: number, y: number): readonly [number, number] => {
      const at = toPlan(underlay, x, y);
      return [frame.x(at.x), frame.y(at.y)];
    };
    const [x0, y0] = place(0, 0);
    const [x1, y1] = place(1, 0);
    const [x2, y2] = place(0, 1);
    const onPaper = (x: number, y: number): readonly [number, number] => [x0 + (x1 - x0) * x + (x2 - x0) * y, y0 + (y1 - y0) * x + (y2 - y0) * y];
    for (const { mime, bytes, matrix } of drawing.images) {
      const [a, b, c, d, e, f] = matrix;
      const [ox, oy] = onPaper(e, f);
      const [ux, uy] = onPaper(e + a, f + b);
      const [vx, vy] = onPaper(e + c, f + d);
      marks.push({ kind: 'image', bytes, mime, matrix: [ux - ox, uy - oy, vx - ox, vy - oy, ox, oy], opacity: underlay.opacity * FADED });
    }
    const hidden = new Set(underlay.hiddenLayers);
    for (const layer of drawing.layers) {
      if (hidden.has(layer.name)) continue;
      for (const fill of layer.fills) {
        const places: number[] = [];
        for (let i = 0; i + 1 < fill.length; i += 2) places.push(...onPaper(fill[i] ?? 0, fill[i + 1] ?? 0));
        const shown = clipRing(room, places);
        if (shown.length >= 6) marks.push({ kind: 'area', rings: [shown], fill: FILL });
      }
      const kept = new Float64Array(layer.segments.length);
      let count = 0;
      for (let i = 0; i + 3 < layer.segments.length; i += 4) {
        const [ax, ay] = onPaper(layer.segments[i] ?? 0, layer.segments[i + 1] ?? 0);
        const [bx, by] = onPaper(layer.segments[i + 2] ?? 0, layer.segments[i + 3] ?? 0);
        const shown = clipPiece(room, ax, ay, bx, by);
        if (!shown) continue;
        kept.set(shown, count);
        count += 4;
      }
      if (count > 0) marks.push(segments(pen(WEIGHT.hair, PRINT.underlay), kept.slice(0, count)));
    }
  }
  if (marks.length === 0) return;
  view.used.add('underlay');
  view.under.push({ kind: 'clip', x: room.left, y: room.top, width_mm: room.right - room.left, height_mm: room.bottom - room.top, marks });
}
