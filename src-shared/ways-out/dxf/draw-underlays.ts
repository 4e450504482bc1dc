import type { Level } from '../../model/plan.ts';
import type { UnderlayDrawing } from '../../underlay/drawing.ts';
import { toPlan } from '../../underlay/placement.ts';
import type { DxfPlace } from './drawing.ts';
import type { DrawingDraft } from './drawing-draft.ts';
import { layerName } from './layers.ts';

/** What of the imported floor plans could not be drawn. */
export interface LeftOut {
  /** Floor plans that could not be read, or were not given. */
  readonly missing: number;
  /** Pictures: a drawing of lines holds none. */
  readonly pictures: number;
}

/**
 * Draws the lines of the imported floor plans of a level, those that are shown, at their places on the plan and on one layer of
 * their own: filled areas by their outlines. Their texts are left out, as on the sheets: they could be read as part of the layout.
 */
export function drawUnderlays({ entities }: DrawingDraft, level: Level, drawings: ReadonlyMap<string, UnderlayDrawing>): LeftOut {
  const layer = layerName('underlay');
  let [missing, pictures] = [0, 0];
  for (const underlay of Object.values(level.underlays)) {
    if (!underlay.visible) continue;
    const drawing = drawings.get(underlay.id);
    if (!drawing) {
      missing += 1;
      continue;
    }
    pictures += drawing.images.length;
    const hidden = new Set(underlay.hiddenLayers);
    const place = (list: ArrayLike<number>, i: number): DxfPlace => {
      const { x, y } = toPlan(underlay, list[i] ?? 0, list[i + 1] ?? 0);
      return [x, y, 0];
    };
    for (const { name, segments, fills } of drawing.layers) {
      if (hidden.has(name)) continue;
      for (let i = 0; i + 3 < segments.length; i += 4) entities.push({ kind: 'line', layer, from: place(segments, i), to: place(segments, i + 2) });
      for (const fill of fills) {
        const corners = Array.from({ length: Math.floor(fill.length / 2) }, (_, i) => place(fill, 2 * i));
        if (corners.length > 2) entities.push({ kind: 'polyline', layer, places: corners, isClosed: true });
      }
    }
  }
  return { missing, pictures };
}
