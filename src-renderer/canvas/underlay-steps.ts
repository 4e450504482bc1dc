import type { Underlay } from '#shared/model/plan';
import type { UnderlayDrawing, UnderlayImage, UnderlayLayer } from '#shared/underlay/drawing';
import { BOARD_FONT } from './lettering.ts';
import type { Pen } from './pen.ts';
import { type Viewport, toScreen } from './viewport.ts';

/** A floor plan where it lies on the level. */
export interface PlacedUnderlay {
  readonly underlay: Underlay;
  readonly drawing: UnderlayDrawing;
}

export interface UnderlayLook {
  readonly colour: string;
  /** Scanned pictures are turned over on a dark ground. */
  readonly isDark: boolean;
  /** A picture that is decoded already; undefined while it is not. */
  readonly pictureOf: (image: UnderlayImage) => CanvasImageSource | undefined;
}

/** Maps file units to pixels: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type FileToPx = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** How an underlay's file units lie on the screen. */
export function fileToPx(view: Viewport, underlay: Pick<Underlay, 'at' | 'rotation_rad' | 'metresPerUnit'>): FileToPx {
  const scale = (underlay.metresPerUnit ?? 1) * view.camera.scale_px_m;
  const cos = Math.cos(underlay.rotation_rad) * scale;
  const sin = Math.sin(underlay.rotation_rad) * scale;
  const origin = toScreen(view, underlay.at);
  return [cos, -sin, -sin, -cos, origin.x, origin.y];
}

/** Work between two looks at the clock: a piece that is only looked at counts one, a drawn one eight. */
const STEP_WORK = 16_384;
const DRAWN_WORK = 8;
const PIECES_PER_STROKE = 16;
/** A run of joined pieces is drawn with corners at least this far apart [px]. */
const LEAST_RUN_px = 0.8;
/** Texts lower than this are not drawn [px]. */
const LEAST_LETTER_px = 3.5;

/**
 * Draws floor plans piece by piece, and stops after every few thousand pieces so that the caller can look at the clock.
 */
export function* underlaySteps(pen: Pen, view: Viewport, items: readonly PlacedUnderlay[], look: UnderlayLook): Generator<void> {
  for (const { underlay, drawing } of items) {
    const map = fileToPx(view, underlay);
    const hidden = new Set(underlay.hiddenLayers);
    for (const image of drawing.images) {
      drawImage(pen, map, image, underlay.opacity, look);
      yield;
    }
    for (const layer of drawing.layers) {
      if (hidden.has(layer.name)) continue;
      pen.globalAlpha = underlay.opacity;
      yield* fillSteps(pen, view, map, layer, look.colour, underlay.opacity);
      yield* lineSteps(pen, view, map, layer.segments, look.colour);
      yield* textSteps(pen, view, map, underlay.rotation_rad, layer, look.colour);
    }
    pen.globalAlpha = 1;
  }
}

function drawImage(pen: Pen, [a, b, c, d, e, f]: FileToPx, image: UnderlayImage, opacity: number, look: UnderlayLook): void {
  const picture = look.pictureOf(image);
  if (!picture) return;
  const [ia, ib, ic, id, ie, jf] = image.matrix;
  pen.save();
  // The unit square stands on its lower left corner, a picture hangs from its upper left.
  pen.transform(a * ia + c * ib, b * ia + d * ib, -(a * ic + c * id), -(b * ic + d * id), a * (ie + ic) + c * (jf + id) + e, b * (ie + ic) + d * (jf + id) + f);
  pen.globalAlpha = opacity;
  if (look.isDark) pen.filter = 'invert(0.88)';
  pen.drawImage(picture, 0, 0, 1, 1);
  pen.restore();
}

/** Whether a colour of the file is so light that it masks rather than marks. */
export function isNearWhite(colour: string): boolean {
  const value = Number.parseInt(colour.slice(1), 16);
  if (!Number.isFinite(value)) return false;
  return Math.min((value >> 16) & 255, (value >> 8) & 255, value & 255) > 235;
}

function* fillSteps(pen: Pen, view: Viewport, map: FileToPx, layer: UnderlayLayer, colour: string, opacity: number): Generator<void> {
  if (layer.fills.length === 0 || isNearWhite(layer.colour)) return;
  const [a, b, c, d, e, f] = map;
  pen.globalAlpha = opacity * 0.3;
  pen.fillStyle = colour;
  let work = 0;
  for (const fill of layer.fills) {
    let minX = Infinity;
    let maxX = -Infinity;
    let minY = Infinity;
    let maxY = -Infinity;
    pen.beginPath();
    for (let i = 0; i + 1 < fill.length; i += 2) {
      const fx = fill[i] ?? 0;
      const fy = fill[i + 1] ?? 0;
      const x = a * fx + c * fy + e;
      const y = b * fx + d * fy + f;
      if (i === 0) pen.moveTo(x, y);
      else pen.lineTo(x, y);
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
    if (maxX < 0 || minX > view.width || maxY < 0 || minY > view.height) continue;
    pen.fill();
    work += (fill.length / 2) * DRAWN_WORK;
    if (work > STEP_WORK) {
      work = 0;
      yield;
    }
  }
  pen.globalAlpha = opacity;
}

function* lineSteps(pen: Pen, view: Viewport, [a, b, c, d, e, f]: FileToPx, segments: Float64Array, colour: string): Generator<void> {
  pen.strokeStyle = colour;
  pen.lineWidth = 1;
  pen.setLineDash([]);
  pen.lineCap = 'butt';
  const { width, height } = view;
  let inPath = 0;
  let work = 0;
  /** End of the last piece in the file, and the last place drawn. */
  let endX = Number.NaN;
  let endY = Number.NaN;
  let penX = Number.NaN;
  let penY = Number.NaN;
  let skipped = false;
  pen.beginPath();
  const close = (): void => {
    if (skipped && Number.isFinite(penX)) pen.lineTo(a * endX + c * endY + e, b * endX + d * endY + f);
    skipped = false;
  };
  for (let i = 0; i + 3 < segments.length; i += 4) {
    work += 1;
    if (work > STEP_WORK) {
      work = 0;
      yield;
    }
    const fx1 = segments[i] ?? 0;
    const fy1 = segments[i + 1] ?? 0;
    const fx2 = segments[i + 2] ?? 0;
    const fy2 = segments[i + 3] ?? 0;
    const x1 = a * fx1 + c * fy1 + e;
    const y1 = b * fx1 + d * fy1 + f;
    const x2 = a * fx2 + c * fy2 + e;
    const y2 = b * fx2 + d * fy2 + f;
    if ((x1 < 0 && x2 < 0) || (y1 < 0 && y2 < 0) || (x1 > width && x2 > width) || (y1 > height && y2 > height)) continue;
    if (fx1 !== endX || fy1 !== endY || !Number.isFinite(penX)) {
      close();
      if (inPath >= PIECES_PER_STROKE) {
        pen.stroke();
        pen.beginPath();
        inPath = 0;
      }
      pen.moveTo(x1, y1);
      penX = x1;
      penY = y1;
    }
    endX = fx2;
    endY = fy2;
    if (Math.abs(x2 - penX) < LEAST_RUN_px && Math.abs(y2 - penY) < LEAST_RUN_px) {
      skipped = true;
      continue;
    }
    pen.lineTo(x2, y2);
    penX = x2;
    penY = y2;
    skipped = false;
    inPath += 1;
    work += DRAWN_WORK;
    if (inPath >= PIECES_PER_STROKE * 4) {
      pen.stroke();
      pen.beginPath();
      pen.moveTo(x2, y2);
      inPath = 0;
    }
  }
  close();
  pen.stroke();
}

function* textSteps(pen: Pen, view: Viewport, [a, b, c, d, e, f]: FileToPx, rotation_rad: number, layer: UnderlayLayer, colour: string): Generator<void> {
  pen.fillStyle = colour;
  pen.textAlign = 'left';
  pen.textBaseline = 'alphabetic';
  const scale = Math.hypot(a, b);
  let drawn = 0;
  for (const text of layer.texts) {
    // A font's capitals are about 0.73 of its size.
    const size = (text.height * scale) / 0.73;
    const x = a * text.x + c * text.y + e;
    const y = b * text.x + d * text.y + f;
    if (size < LEAST_LETTER_px || size > 4000) continue;
    if (x < -view.width || x > 2 * view.width || y < -view.height || y > 2 * view.height) continue;
    pen.save();
    pen.translate(x, y);
    pen.rotate(-(text.rotation_rad + rotation_rad));
    pen.font = `${size}px "${BOARD_FONT}", sans-serif`;
    pen.fillText(text.text, 0, 0);
    pen.restore();
    drawn += 1;
    if (drawn % 100 === 0) yield;
  }
}
