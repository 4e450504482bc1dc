import { coverageOf } from '../derived/coverage.ts';
import type { DerivedNozzle, Space } from '../derived/derived.ts';
import { type Outline, boundsOf, isCounterClockwise, isInside, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, midpoint, polar } from '../geometry/point.ts';
import { distanceToSegment_m } from '../geometry/segment.ts';
import { pen, segments } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { type ViewDraft, onPaper } from './view-draft.ts';

const TICK_EVERY_mm = 9;
const TICK_mm = 1.6;
/** On one edge: a longer one is not on any paper as a whole. */
const MOST_TICKS = 300;
const DOT_EVERY_mm = 2.6;
/** Half the side of a dot. */
const DOT_mm = 0.25;
/** A large gap gets its dots farther apart: they shall show it, not fill the file. */
const MOST_DOTS = 3000;
/** An edge of the coverage this near to a wall is the wall [m]. */
const ON_WALL_m = 0.005;

/** Draws how far each nozzle covers the floor, and dots on floor that none covers. */
export function drawCoverage(view: ViewDraft, space: Space, nozzles: readonly DerivedNozzle[]): void {
  const { perNozzle, uncovered } = coverageOf(space, nozzles);
  for (const { rings } of perNozzle) for (const outline of rings) drawEdge(view, space, outline);
  for (const { rings, worst } of uncovered) if (rings.length > 0) drawUncovered(view, rings, worst);
}

/** Dots on floor that no nozzle covers, denser toward its worst place. */
function drawUncovered(view: ViewDraft, rings: readonly Outline[], worst: PlanPoint): void {
  view.used.add('uncovered');
  const { factor } = view.sizes;
  const { minX, minY, maxX, maxY } = boundsOf(rings.flat());
  const half = DOT_mm * factor;
  const wished_m = (DOT_EVERY_mm * factor) / view.frame.mm(1);
  const step_m = Math.max(wished_m, Math.sqrt(((maxX - minX) * (maxY - minY)) / MOST_DOTS));
  const reach_m = Math.max(...rings.flat().map((p) => distance_m(p, worst)), step_m);
  const dots: number[] = [];
  // Every other row and column of the fine grid only near the worst place.
  for (let i = 0; minX + i * step_m * 0.5 <= maxX; i += 1) {
    for (let j = 0; minY + j * step_m * 0.5 <= maxY; j += 1) {
      const at = { x: minX + (i + 0.5) * step_m * 0.5, y: minY + (j + 0.5) * step_m * 0.5 };
      const isCoarse = i % 2 === 0 && j % 2 === 0;
      if (!isCoarse && distance_m(at, worst) > reach_m * 0.4) continue;
      if (rings.filter((outline) => isInside(at, outline)).length % 2 === 0) continue;
      const [x, y] = [view.frame.x(at.x), view.frame.y(at.y)];
      dots.push(x - half, y, x + half, y);
    }
  }
  view.under.push(segments(pen(2 * half, PRINT.ink), dots));
}

/** The edge of a coverage inside the room, with sparse ticks on its inner side; the walls themselves are no edge. */
function drawEdge(view: ViewDraft, space: Space, outline: Outline): void {
  const dashed = pen(WEIGHT.thin, PRINT.faint, [3 * view.sizes.factor, 1.2 * view.sizes.factor]);
  const inner = isCounterClockwise(outline) ? Math.PI / 2 : -Math.PI / 2;
  const edges: number[] = [];
  const ticks: number[] = [];
  for (const { a, b } of sidesOf(outline)) {
    const middle = midpoint(a, b);
    if (space.walls.some(({ segment }) => [a, middle, b].every((p) => distanceToSegment_m(p, segment) <= ON_WALL_m))) continue;
    const angle = bearing_rad(a, b);
    edges.push(...onPaper(view.frame, [a, b]));
    const every_m = (TICK_EVERY_mm * view.sizes.factor) / view.frame.mm(1);
    const long_m = (TICK_mm * view.sizes.factor) / view.frame.mm(1);
    const most = Math.min(distance_m(a, b), every_m * MOST_TICKS);
    for (let along = every_m / 2; along < most; along += every_m) {
      const foot = polar(a, angle, along);
      ticks.push(...onPaper(view.frame, [foot, polar(foot, angle + inner, long_m)]));
    }
  }
  if (edges.length === 0) return;
  view.used.add('coverage');
  view.under.push(segments(dashed, edges), segments(pen(WEIGHT.thin, PRINT.faint), ticks));
  for (let i = 0; i + 3 < edges.length; i += 4) view.placer.avoid(edges[i] ?? 0, edges[i + 1] ?? 0, edges[i + 2] ?? 0, edges[i + 3] ?? 0, 1.5);
}
