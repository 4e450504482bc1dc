import type { Matrix } from './matrix.ts';

/** A list of coordinates under construction, x and y in turn. */
export type Run = number[];

const TURN = 2 * Math.PI;
const FEWEST_PER_TURN = 48;
const MOST_PER_TURN = 360;
const FEWEST_TINY = 12;

/**
 * How many straight pieces stand for an arc.
 * @param radius     any unit, > 0
 * @param sweep_rad  signed turn
 * @param tolerance  greatest distance between arc and chord that does not matter, same unit; 0 when unknown
 */
export function arcPieces(radius: number, sweep_rad: number, tolerance: number): number {
  const atTolerance = radius > tolerance ? TURN / (2 * Math.acos(1 - tolerance / radius)) : 0;
  const fits = tolerance > 0 ? atTolerance : 2 * FEWEST_PER_TURN;
  const fewest = radius < 20 * tolerance ? FEWEST_TINY : FEWEST_PER_TURN;
  const perTurn = Math.min(MOST_PER_TURN, Math.max(fewest, fits));
  return Math.max(1, Math.ceil((Math.min(Math.abs(sweep_rad), TURN) / TURN) * perTurn - 1e-9));
}

/**
 * Appends an elliptic arc: the unit circle's arc carried through `frame`.
 * @param from_rad   start on the unit circle
 * @param sweep_rad  signed turn; counter-clockwise where `frame` does not mirror
 * @param pieces     straight pieces
 */
export function pushArc(run: Run, frame: Matrix, from_rad: number, sweep_rad: number, pieces: number): void {
  for (let i = 0; i <= pieces; i += 1) {
    const angle = from_rad + (sweep_rad * i) / pieces;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    run.push(frame[0] * cos + frame[2] * sin + frame[4], frame[1] * cos + frame[3] * sin + frame[5]);
  }
}

/**
 * Appends the way from one place to another along an arc, without the start.
 * @param bulge tangent of a quarter of the arc's turn, positive counter-clockwise; 0 is a straight piece
 */
export function pushBulge(run: Run, x1: number, y1: number, x2: number, y2: number, bulge: number, tolerance: number): void {
  const chord = Math.hypot(x2 - x1, y2 - y1);
  const sweep = 4 * Math.atan(bulge);
  if (chord > 0 && Math.abs(sweep) > 1e-6) {
    const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    // Distance from chord to centre, on the chord's left for a counter-clockwise arc of less than half a turn.
    const aside = ((1 - bulge * bulge) / (4 * bulge)) * chord;
    const cx = (x1 + x2) / 2 - ((y2 - y1) / chord) * aside;
    const cy = (y1 + y2) / 2 + ((x2 - x1) / chord) * aside;
    const start = Math.atan2(y1 - cy, x1 - cx);
    const pieces = arcPieces(radius, sweep, tolerance);
    for (let i = 1; i < pieces; i += 1) {
      const angle = start + (sweep * i) / pieces;
      run.push(cx + radius * Math.cos(angle), cy + radius * Math.sin(angle));
    }
  }
  run.push(x2, y2);
}

/**
 * Appends a cubic Bézier curve without its start.
 * Piece count by Wang's bound: n ≥ √(¾·M/tolerance), M the greatest second difference of the control places.
 */
export function pushCubic(
  run: Run,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  tolerance: number,
): void {
  const second = Math.max(Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3));
  const pieces = Math.min(200, Math.max(1, Math.ceil(Math.sqrt((0.75 * second) / Math.max(tolerance, 1e-12)))));
  for (let i = 1; i < pieces; i += 1) {
    const t = i / pieces;
    const s = 1 - t;
    const a = s * s * s;
    const b = 3 * s * s * t;
    const c = 3 * s * t * t;
    const d = t * t * t;
    run.push(a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3);
  }
  run.push(x3, y3);
}
