import type { Box } from '#shared/geometry/outline';
import { type PlanPoint, type ScreenPoint, planPoint } from '#shared/geometry/point';
import type { Camera } from '../store/state.ts';

/** What the board shows and how large it is [px]. */
export interface Viewport {
  readonly camera: Camera;
  readonly width: number;
  readonly height: number;
  /** A strip that is drawn beside what stands already: it must look as if all had been drawn together. */
  readonly isStrip?: true;
}

/** The board never shows a metre smaller than this [px]: an uncalibrated plan in millimetres still fits. */
const LEAST_SCALE_px_m = 1e-3;
/** The board never shows a metre larger than this [px]: a sixteenth of an inch is then 16 px. */
export const GREATEST_SCALE_px_m = 10_000;

/** Keeps a scale within what the board can show [px/m]. */
const allowedScale_px_m = (scale_px_m: number): number =>
  Math.min(GREATEST_SCALE_px_m, Math.max(LEAST_SCALE_px_m, scale_px_m));

/** Screen place of a plan place; north is up. */
export const toScreen = ({ camera, width, height }: Viewport, p: { readonly x: number; readonly y: number }): ScreenPoint => ({
  x: width / 2 + (p.x - camera.at.x) * camera.scale_px_m,
  y: height / 2 - (p.y - camera.at.y) * camera.scale_px_m,
});

/** Plan place under a screen place. */
export const toPlanPlace = ({ camera, width, height }: Viewport, s: ScreenPoint): PlanPoint =>
  planPoint(camera.at.x + (s.x - width / 2) / camera.scale_px_m, camera.at.y - (s.y - height / 2) / camera.scale_px_m);

/** Part of the plan that the board shows, with a margin around it [px]. */
export function visibleBox(view: Viewport, margin_px = 0): Box {
  const a = toPlanPlace(view, { x: -margin_px, y: view.height + margin_px });
  const b = toPlanPlace(view, { x: view.width + margin_px, y: -margin_px });
  return { minX: a.x, minY: a.y, maxX: b.x, maxY: b.y };
}

/** Camera after zooming by a factor, the place under the pointer staying where it is. */
export function zoomedAt(view: Viewport, pointer: ScreenPoint, factor: number): Camera {
  const scale_px_m = allowedScale_px_m(view.camera.scale_px_m * factor);
  const held = toPlanPlace(view, pointer);
  return {
    scale_px_m,
    at: planPoint(held.x - (pointer.x - view.width / 2) / scale_px_m, held.y + (pointer.y - view.height / 2) / scale_px_m),
  };
}

/** Camera after the drawing was dragged by so many pixels. */
export const pannedBy = ({ camera }: Viewport, dx_px: number, dy_px: number): Camera => ({
  ...camera,
  at: planPoint(camera.at.x - dx_px / camera.scale_px_m, camera.at.y + dy_px / camera.scale_px_m),
});

/**
 * Camera that shows a whole box with a margin around it. A box without size is shown 4 m wide,
 * a box turned inside out (nothing to show) answers a camera on the origin.
 */
export function fittedCamera(box: Box, board: { readonly width: number; readonly height: number }, margin_px = 48): Camera {
  if (!(box.minX <= box.maxX && box.minY <= box.maxY)) return { at: planPoint(0, 0), scale_px_m: 60 };
  const spanX = box.maxX - box.minX;
  const spanY = box.maxY - box.minY;
  const bare = spanX < 1e-6 && spanY < 1e-6;
  const roomX = Math.max(40, board.width - 2 * margin_px);
  const roomY = Math.max(40, board.height - 2 * margin_px);
  const scale = bare ? roomX / 4 : Math.min(roomX / Math.max(spanX, 1e-6), roomY / Math.max(spanY, 1e-6));
  return {
    at: planPoint((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2),
    scale_px_m: allowedScale_px_m(scale),
  };
}

/** CSS transform that shifts and scales a picture drawn with one camera so that it fits another. */
export function transformBetween(drawn: Viewport, shown: Viewport): { readonly scale: number; readonly dx_px: number; readonly dy_px: number } {
  const scale = shown.camera.scale_px_m / drawn.camera.scale_px_m;
  const corner = toScreen(shown, toPlanPlace(drawn, { x: 0, y: 0 }));
  return { scale, dx_px: corner.x, dy_px: corner.y };
}

/** Whether two viewports show the same at the same size. */
export const isSameView = (a: Viewport, b: Viewport): boolean =>
  a.width === b.width &&
  a.height === b.height &&
  a.camera.scale_px_m === b.camera.scale_px_m &&
  a.camera.at.x === b.camera.at.x &&
  a.camera.at.y === b.camera.at.y;
