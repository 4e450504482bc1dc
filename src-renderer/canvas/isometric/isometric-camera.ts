import { middleRun_m } from '#shared/isometric/layout-isometric';
import type { Camera } from '../../store/state.ts';
import type { Viewport } from '../viewport.ts';
import { toScreen } from '../viewport.ts';
import { placedAssembly } from './isometric-things.ts';
import type { ShownIsometric } from './keep-isometric.ts';

/** Room around the drawing for its texts, and above it for the buttons [px]. */
export const SIDE_px = 46;
export const ABOVE_px = 56;
/** The middle run is drawn at most so long where all is shown [px]. */
const LONGEST_px = 120;
/** Smallest scale that is fitted, as a share of the largest, and the step between tries. */
const SMALLEST = 1e-4;
const STEP = 0.96;

/** Everything that is drawn at a scale, in pixels about the drawing's origin, y down. */
export function extentAt(scale_px_m: number, shown: ShownIsometric): { left: number; right: number; top: number; bottom: number } {
  const view: Viewport = { camera: { at: { x: 0, y: 0 }, scale_px_m }, width: 0, height: 0 };
  const places = [...shown.iso.nodes.map(({ place }) => toScreen(view, place))];
  const assembly = placedAssembly(view, shown);
  if (assembly) places.push(...assembly.cylinders.map(({ at }) => at), ...assembly.line.lines.map(({ b }) => assembly.at(b)));
  const xs = places.map(({ x }) => x);
  const ys = places.map(({ y }) => y);
  return { left: Math.min(...xs, 0), right: Math.max(...xs, 0), top: Math.min(...ys, 0), bottom: Math.max(...ys, 0) };
}

/** The camera that shows the whole drawing, its assembly included, as large as the frame allows. */
export function fittedIsometric(shown: ShownIsometric, width: number, height: number): Camera {
  const largest = LONGEST_px / middleRun_m(shown.iso);
  let scale = largest;
  for (; scale > SMALLEST * largest; scale *= STEP) {
    const { left, right, top, bottom } = extentAt(scale, shown);
    if (right - left <= width - 2 * SIDE_px && bottom - top <= height - 2 * ABOVE_px) break;
  }
  const { left, right, top, bottom } = extentAt(scale, shown);
  return { scale_px_m: scale, at: { x: (left + right) / 2 / scale, y: -(top + bottom) / 2 / scale } };
}
