import { type Outline, boundsOf, sidesOf } from './outline.ts';
import { type PlanPoint, planPoint } from './point.ts';

/** A place inside an area and its distance to the nearest border. */
export interface Pole {
  readonly at: PlanPoint;
  readonly inside_m: number;
}

/** Sides of all rings, four numbers each: x1, y1, x2, y2. */
const flatSides = (rings: readonly Outline[]): Float64Array => Float64Array.from(rings.flatMap(sidesOf).flatMap(({ a, b }) => [a.x, a.y, b.x, b.y]));

/** Distance from a place to the border of an area [m], negative outside it; the rings may be nested, a hole is outside. */
function depth_m(x: number, y: number, sides: Float64Array): number {
  let least = Infinity;
  let isInside = false;
  for (let i = 0; i < sides.length; i += 4) {
    const ax = sides[i] ?? 0;
    const ay = sides[i + 1] ?? 0;
    const bx = sides[i + 2] ?? 0;
    const by = sides[i + 3] ?? 0;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) isInside = !isInside;
    const dx = bx - ax;
    const dy = by - ay;
    const length2 = dx * dx + dy * dy;
    const share = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2));
    const offX = ax + share * dx - x;
    const offY = ay + share * dy - y;
    least = Math.min(least, offX * offX + offY * offY);
  }
  return isInside ? Math.sqrt(least) : -Math.sqrt(least);
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly half_m: number;
  readonly depth_m: number;
  /** No place in the cell lies deeper than this. */
  readonly best_m: number;
}

const cellAt = (x: number, y: number, half_m: number, sides: Float64Array): Cell => {
  const deep_m = depth_m(x, y, sides);
  return { x, y, half_m, depth_m: deep_m, best_m: deep_m + half_m * Math.SQRT2 };
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
 * Found by halving squares, the most promising first, until none can be better by more than the precision.
 * @param rings   closed rings, a ring inside another is a hole
 * @param share   precision as a share of the area's smaller extent, but no finer than its longer extent in 500 steps
 */
export function poleOf(rings: readonly Outline[], share = 0.01): Pole {
  const { minX, minY, maxX, maxY } = boundsOf(rings.flat());
  const sides = flatSides(rings);
  const size_m = Math.min(maxX - minX, maxY - minY);
  const start = anyInside(rings);
  let best: Pole = { at: start, inside_m: depth_m(start.x, start.y, sides) };
  if (!(size_m > 0)) return best;
  const step_m = Math.max(maxX - minX, maxY - minY) / STEPS_ALONG;
  const side_m = Math.max(size_m, step_m);
  const half_m = side_m / 2;
  const precision_m = Math.max(size_m * share, step_m);
  let cells: Cell[] = [];
  for (let x = minX + half_m; x < maxX + half_m; x += side_m) {
    for (let y = minY + half_m; y < maxY + half_m; y += side_m) cells.push(cellAt(x, y, half_m, sides));
  }
  while (cells.length > 0) {
    cells.sort((a, b) => b.best_m - a.best_m);
    const halved: Cell[] = [];
    for (const cell of cells) {
      if (cell.depth_m > best.inside_m) best = { at: planPoint(cell.x, cell.y), inside_m: cell.depth_m };
    }
    for (const cell of cells) {
      if (cell.best_m <= best.inside_m + precision_m) break;
      const quarter_m = cell.half_m / 2;
      for (const dx of [-quarter_m, quarter_m]) for (const dy of [-quarter_m, quarter_m]) halved.push(cellAt(cell.x + dx, cell.y + dy, quarter_m, sides));
    }
    cells = halved;
  }
  return best;
}
