/** What is worth drawing at a scale: a mark that would be smaller than its meaning is left out. */
export interface Detail {
  /** Nozzles, cylinders and openings as symbols instead of dots. */
  readonly symbols: boolean;
  /** Ids and names beside things. */
  readonly names: boolean;
  /** Pipe sizes, orifice heights, heights of things in the way. */
  readonly figures: boolean;
  /** Heights of risers and drops. */
  readonly heights: boolean;
  /** Derived fittings. */
  readonly fittings: boolean;
  /** Thin rays and hatches. */
  readonly fine: boolean;
}

/**
 * What to draw at a scale.
 * @param scale_px_m pixels per metre, > 0
 */
export const detailAt = (scale_px_m: number): Detail => ({
  symbols: scale_px_m >= 9,
  names: scale_px_m >= 12,
  fine: scale_px_m >= 12,
  fittings: scale_px_m >= 24,
  figures: scale_px_m >= 42,
  heights: scale_px_m >= 64,
});

/**
 * Distance between drawn grid lines [m]: the snap grid itself where its lines stand at least 9 px apart,
 * otherwise a round multiple of it; undefined where none fits.
 */
export function gridStep_m(grid_m: number, scale_px_m: number): number | undefined {
  for (const multiple of [1, 2, 4, 12, 20, 40, 120, 400, 1200, 4000, 12000]) {
    if (grid_m * multiple * scale_px_m >= 9) return grid_m * multiple;
  }
  return undefined;
}

/** Width of a pipe's line [px]: true to scale within bounds that keep it legible and keep it a line. */
export const pipeWidth_px = (outside_m: number, scale_px_m: number): number =>
  Math.min(14, Math.max(scale_px_m < 9 ? 1 : 2, outside_m * scale_px_m));
