import { type Outline, boundsOf, distanceToOutline_m, isInside } from './outline.ts';
import { type PlanPoint, planPoint } from './point.ts';

/** A place inside an area and its distance to the nearest border. */
export interface Pole {
  readonly at: PlanPoint;
  readonly inside_m: number;
}

/** Distance from a place to the border of an area [m], negative outside it; the rings may be nested, a hole is outside. */
function depth_m(p: PlanPoint, rings: readonly Outline[]): number {
  const border_m = rings.reduce((least, ring) => Math.min(least, distanceToOutline_m(p, ring)), Infinity);
  return rings.filter((ring) => isInside(p, ring)).length % 2 === 1 ? border_m : -border_m;
}

interface Cell {
  readonly at: PlanPoint;
  readonly half_m: number;
  readonly depth_m: number;
  /** No place in the cell lies deeper than this. */
  readonly best_m: number;
}

const cellAt = (at: PlanPoint, half_m: number, rings: readonly Outline[]): Cell => {
  const deep_m = depth_m(at, rings);
  return { at, half_m, depth_m: deep_m, best_m: deep_m + half_m * Math.SQRT2 };
};

/** The middle of the widest stretch of an area along a line from west to east between two of its corners. */
function anyInside(rings: readonly Outline[]): PlanPoint {
  const heights = [...new Set(rings.flat().map(({ y }) => y))].sort((a, b) => a - b);
  let widest = { at: rings[0]?.[0] ?? planPoint(0, 0), width_m: -1 };
  for (const [i, low] of heights.slice(0, -1).entries()) {
    const y = (low + (heights[i + 1] ?? low)) / 2;
    const crossings = rings
      .flatMap((ring) => ring.flatMap((a, k) => crossing(a, ring[(k + 1) % ring.length] ?? a, y)))
      .sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const [west = 0, east = 0] = crossings.slice(k, k + 2);
      if (east - west > widest.width_m) widest = { at: planPoint((west + east) / 2, y), width_m: east - west };
    }
  }
  return widest.at;
}

const crossing = (a: PlanPoint, b: PlanPoint, y: number): number[] => (a.y > y !== b.y > y ? [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)] : []);

/** A strip is looked at in this many steps along its length at most: a finer look would take as long as the strip is thin. */
const STEPS_ALONG = 500;

/**
 * The place of an area that lies deepest inside, farthest from its border (the middle of the largest circle in it).
 * Found by halving the most promising square until none can be better by more than the precision.
 * @param rings   closed rings, a ring inside another is a hole
 * @param share   precision as a share of the area's smaller extent, but no finer than its longer extent in 500 steps
 */
export function poleOf(rings: readonly Outline[], share = 0.005): Pole {
  const { minX, minY, maxX, maxY } = boundsOf(rings.flat());
  const size_m = Math.min(maxX - minX, maxY - minY);
  const start = anyInside(rings);
  let best: Pole = { at: start, inside_m: depth_m(start, rings) };
  if (!(size_m > 0)) return best;
  const step_m = Math.max(maxX - minX, maxY - minY) / STEPS_ALONG;
  const side_m = Math.max(size_m, step_m);
  const half_m = side_m / 2;
  const cells: Cell[] = [];
  for (let x = minX + half_m; x < maxX + half_m; x += side_m) {
    for (let y = minY + half_m; y < maxY + half_m; y += side_m) cells.push(cellAt(planPoint(x, y), half_m, rings));
  }
  const precision_m = Math.max(size_m * share, step_m);
  for (let cell = takeBest(cells); cell && cell.best_m > best.inside_m + precision_m; cell = takeBest(cells)) {
    if (cell.depth_m > best.inside_m) best = { at: cell.at, inside_m: cell.depth_m };
    const quarter_m = cell.half_m / 2;
    for (const x of [-quarter_m, quarter_m]) {
      for (const y of [-quarter_m, quarter_m]) {
        const next = cellAt(planPoint(cell.at.x + x, cell.at.y + y), quarter_m, rings);
        if (next.best_m > best.inside_m + precision_m) cells.push(next);
      }
    }
  }
  return best;
}

/** Takes the most promising cell out of a list. */
function takeBest(cells: Cell[]): Cell | undefined {
  let most = 0;
  for (const [i, { best_m }] of cells.entries()) if (best_m > (cells[most]?.best_m ?? 0)) most = i;
  const [taken] = cells.splice(most, 1);
  return taken;
}
