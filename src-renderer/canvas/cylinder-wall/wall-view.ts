import type { Elevation } from '#shared/elevation/elevation';
import { type ElevationLayout, elevationLayout } from '#shared/sheets/elevation-frame';
import type { TypeSizes } from '#shared/paper/type-sizes';
import type { Px } from '../pen.ts';

/** Pixels of one millimetre of the paper that a wall is composed on: capitals of 2.5 mm are then letters of 12 px. */
export const PX_PER_mm = 3.6;
/** Texts of the wall on the screen: those of a sheet that is held in the hand. */
export const WALL_SIZES: TypeSizes = { note_mm: 2.5, text_mm: 2.5, heading_mm: 3.5, title_mm: 5, factor: 1 };

const LEAST_px_m = 12;
const MOST_px_m = 2000;

/** How a wall lies on its board. */
export interface WallView {
  readonly scale_px_m: number;
  /** Where the top left corner of its paper lies [px]. */
  readonly x: number;
  readonly y: number;
}

/** Site length over length of the paper that it is composed on. */
export const paperScale = ({ scale_px_m }: Pick<WallView, 'scale_px_m'>): number => (1000 * PX_PER_mm) / scale_px_m;

type Lengths = 'feet' | 'metric';

/** The view that shows the whole wall in the middle of its board. */
export function fittedWall(elevation: Elevation, width: number, height: number, lengths: Lengths): WallView {
  const sizeAt = (scale_px_m: number) => elevationLayout(elevation, paperScale({ scale_px_m }), WALL_SIZES, lengths);
  let [least, most] = [LEAST_px_m, MOST_px_m];
  for (let step = 0; step < 24; step += 1) {
    const middle = (least + most) / 2;
    const { width_mm, height_mm } = sizeAt(middle);
    if (width_mm * PX_PER_mm <= width && height_mm * PX_PER_mm <= height) least = middle;
    else most = middle;
  }
  const { width_mm, height_mm } = sizeAt(least);
  return { scale_px_m: least, x: Math.max(0, (width - width_mm * PX_PER_mm) / 2), y: Math.max(0, (height - height_mm * PX_PER_mm) / 2) };
}

/** Board place of a place of the wall: along it and above the floor [m]. */
export const wallPx = ({ x, y }: WallView, { frame }: ElevationLayout, { s, z }: { readonly s: number; readonly z: number }): Px => ({ x: x + frame.x(s) * PX_PER_mm, y: y + frame.y(z) * PX_PER_mm });

/** Way along the wall and height under a board place [m]. */
export function wallPlace({ x, y, scale_px_m }: WallView, { frame }: ElevationLayout, p: Px): { s: number; z: number } {
  return { s: (p.x - x - frame.x(0) * PX_PER_mm) / scale_px_m, z: (frame.y(0) * PX_PER_mm + y - p.y) / scale_px_m };
}

/** The view after zooming by a factor, the place of the wall under the pointer staying where it is. */
export function zoomedWall(view: WallView, layoutAt: (view: WallView) => ElevationLayout, pointer: Px, factor: number): WallView {
  const scale_px_m = Math.min(MOST_px_m, Math.max(LEAST_px_m, view.scale_px_m * factor));
  const held = wallPlace(view, layoutAt(view), pointer);
  const zoomed = { ...view, scale_px_m };
  const now = wallPx(zoomed, layoutAt(zoomed), held);
  return { ...zoomed, x: view.x + pointer.x - now.x, y: view.y + pointer.y - now.y };
}
