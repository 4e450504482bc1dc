import { ANEW, type Paint } from './paint.ts';
import type { Pen } from './pen.ts';
import { type Viewport, toPlanPlace } from './viewport.ts';

/** A picture is shifted without being blurred when it lands within this of whole pixels. */
const WHOLE = 1e-3;

/** Whether a picture that is shifted by so many device pixels stays as sharp as it is. */
export const isWhole = (px: number): boolean => Math.abs(px - Math.round(px)) < WHOLE;

interface Strip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What a picture lacks after it was moved: strips along its edges, none over another [px]. */
function stripsOf({ width, height }: Viewport, dx: number, dy: number): Strip[] {
  const [top, bottom] = [Math.max(0, dy), height + Math.min(0, dy)];
  return [
    { x: 0, y: 0, width, height: top },
    { x: 0, y: bottom, width, height: height - bottom },
    { x: 0, y: top, width: Math.max(0, dx), height: bottom - top },
    { x: width + Math.min(0, dx), y: top, width: Math.max(0, -dx), height: bottom - top },
  ].filter((strip) => strip.width > 0 && strip.height > 0);
}

function drawStrip(pen: Pen, whole: Viewport, { x, y, width, height }: Strip, ratio: number, paints: readonly Paint[]): boolean {
  const at = toPlanPlace(whole, { x: x + width / 2, y: y + height / 2 });
  const view: Viewport = { camera: { ...whole.camera, at }, width, height, isStrip: true };
  let fits = true;
  pen.save();
  pen.setTransform(ratio, 0, 0, ratio, x * ratio, y * ratio);
  pen.beginPath();
  pen.rect(0, 0, width, height);
  pen.clip();
  for (const paint of paints) {
    pen.save();
    if (paint(pen, view) === ANEW) fits = false;
    pen.restore();
  }
  pen.restore();
  return fits;
}

/**
 * Draws what a picture lacks after what stands was moved within it.
 * @param whole  what the picture is to show
 * @param moved  how far it was moved [px], and device pixels a pixel
 * @returns whether it fits beside what stands
 */
export const drawStrips = (pen: Pen, whole: Viewport, { dx, dy, ratio }: { readonly dx: number; readonly dy: number; readonly ratio: number }, paints: readonly Paint[]): boolean =>
  stripsOf(whole, dx, dy).every((strip) => drawStrip(pen, whole, strip, ratio, paints));
