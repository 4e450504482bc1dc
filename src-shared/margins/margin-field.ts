import { isInsideRegion } from '../geometry/inside.ts';
import type { AllowedPatch } from './allowed-patch.ts';
import { type MarginRule, marginAt } from './place-margin.ts';
import type { Site } from './site.ts';

/** Margins on a square grid over a space; what lies outside it, and where the rule asks nothing, is NaN. */
export interface MarginField {
  readonly minX: number;
  readonly minY: number;
  readonly step_m: number;
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the south-west corner. */
  readonly values: Float64Array;
}

/** Strides of the grid, coarse first [m]. */
const STEPS_m = [0.4, 0.2, 0.1, 0.05];
/** Larger spaces get no finer grid than this has places. */
const MOST = 20_000;

/**
 * Margins over the space of a nozzle, coarse first: after every row it says `null`, so that a caller can put it off or drop it,
 * and after every grid the grid.
 */
export function* marginFields(site: Site, rule: MarginRule, patch: AllowedPatch | undefined): Generator<MarginField | null, void> {
  const { space } = site;
  const { minX, minY, maxX, maxY } = space.bounds;
  for (const step_m of STEPS_m) {
    const columns = Math.ceil((maxX - minX) / step_m) + 1;
    const rows = Math.ceil((maxY - minY) / step_m) + 1;
    if (columns * rows > MOST) return;
    const values = new Float64Array(columns * rows).fill(Number.NaN);
    for (let j = 0; j < rows; j += 1) {
      for (let i = 0; i < columns; i += 1) {
        // The last row and column lie on the far walls.
        const p = { x: Math.min(maxX, minX + i * step_m), y: Math.min(maxY, minY + j * step_m) };
        if (isInsideRegion(p, space.outline, space.holes)) values[j * columns + i] = marginAt(site, rule, patch, p) ?? Number.NaN;
      }
      yield null;
    }
    yield { minX, minY, step_m, columns, rows, values };
  }
}
