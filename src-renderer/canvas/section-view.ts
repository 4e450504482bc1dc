import type { SectionCut } from './section-cut.ts';
import type { SectionPoint } from './section-things.ts';
import type { Px } from './pen.ts';

/** How the section lies on its strip: one scale for lengths and heights, so that it is true. */
export interface SectionView {
  readonly width: number;
  readonly height: number;
  readonly scale_px_m: number;
  /** Distance along the way and height at the strip's middle [m]. */
  readonly at: SectionPoint;
}

/** Room at the left for the heights, at the top for the title, and around [px]. */
const LEFT_px = 64;
const TOP_px = 26;
const EDGE_px = 14;

/** Strip place of a section place. */
export const sectionPx = ({ width, height, scale_px_m, at }: SectionView, { s, z }: SectionPoint): Px => ({
  x: (width + LEFT_px) / 2 + (s - at.s) * scale_px_m,
  y: (height + TOP_px) / 2 - (z - at.z) * scale_px_m,
});

/** Section place under a strip place. */
export const sectionPlace = ({ width, height, scale_px_m, at }: SectionView, p: Px): SectionPoint => ({
  s: at.s + (p.x - (width + LEFT_px) / 2) / scale_px_m,
  z: at.z - (p.y - (height + TOP_px) / 2) / scale_px_m,
});

/** The view that shows the whole section. */
export function fittedSection(cut: Pick<SectionCut, 'length_m' | 'bottom_m' | 'top_m'>, width: number, height: number): SectionView {
  const tall_m = cut.top_m - cut.bottom_m + 0.3;
  const scale_px_m = Math.max(
    2,
    Math.min((width - LEFT_px - 2 * EDGE_px) / Math.max(cut.length_m, 0.1), (height - TOP_px - 2 * EDGE_px) / tall_m),
  );
  return { width, height, scale_px_m, at: { s: cut.length_m / 2, z: (cut.top_m + cut.bottom_m) / 2 } };
}

/** The view after zooming by a factor, the place under the pointer staying where it is. */
export function zoomedSection(view: SectionView, pointer: Px, factor: number): SectionView {
  const scale_px_m = Math.min(4000, Math.max(2, view.scale_px_m * factor));
  const held = sectionPlace(view, pointer);
  const zoomed = { ...view, scale_px_m };
  const now = sectionPlace(zoomed, pointer);
  return { ...zoomed, at: { s: view.at.s + held.s - now.s, z: view.at.z + held.z - now.z } };
}

/** The view after the section was dragged by so many pixels. */
export const pannedSection = (view: SectionView, dx_px: number, dy_px: number): SectionView => ({
  ...view,
  at: { s: view.at.s - dx_px / view.scale_px_m, z: view.at.z + dy_px / view.scale_px_m },
});

/** Distance between height marks [m] that leaves them room at a scale. */
export function heightStep_m(scale_px_m: number, lengths: 'feet' | 'metric'): number {
  const steps = lengths === 'feet' ? [0.5, 1, 2, 4, 10, 20].map((feet) => feet * 0.3048) : [0.1, 0.25, 0.5, 1, 2, 5];
  return steps.find((step) => step * scale_px_m >= 18) ?? (steps.at(-1) ?? 1);
}

/** Where the strip's heights are written [px]. */
export const HEIGHTS_WIDTH_px = LEFT_px;
