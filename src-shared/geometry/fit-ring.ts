import { type PlanPoint, distance_m } from './point.ts';
import { solveSymmetric } from './solve-symmetric.ts';

/** A measured distance between two corners of a ring, by their places in it. */
export interface RingLength {
  readonly from: number;
  readonly to: number;
  readonly length_m: number;
}

/** A ring with its corners where measured lengths put them. */
export interface FittedRing {
  readonly corners: readonly PlanPoint[];
  /** Fitted less measured length [m], in the order of the lengths. */
  readonly residuals_m: readonly number[];
  /** How much of an error of each length the others show: 0 nothing checks it, 1 all of it. */
  readonly redundancy: readonly number[];
}

/** Beside a measured length, the drawn direction of a wall weighs so little, and its drawn length even less: they only stand in where nothing was measured. */
const DIRECTION_WEIGHT = 1e-3;
const LENGTH_WEIGHT = 1e-5;
const MOST_STEPS = 60;
const STILL_m = 1e-10;

/** One equation: what is still missing, and how it changes with the coordinates that it names. */
interface Row {
  readonly off: number;
  readonly weight: number;
  readonly slopes: readonly (readonly [unknown: number, slope: number])[];
}

const slopesOf = (from: number, to: number, ux: number, uy: number): Row['slopes'] => [
  [2 * to, ux],
  [2 * to + 1, uy],
  [2 * from, -ux],
  [2 * from + 1, -uy],
];

const NOWHERE: PlanPoint = { x: 0, y: 0 };

function measuredRow(at: readonly PlanPoint[], { from, to, length_m }: RingLength): Row {
  const [a, b] = [at[from] ?? NOWHERE, at[to] ?? NOWHERE];
  const now_m = distance_m(a, b) || 1e-12;
  return { off: now_m - length_m, weight: 1, slopes: slopesOf(from, to, (b.x - a.x) / now_m, (b.y - a.y) / now_m) };
}

/** What keeps the ring as drawn where nothing is measured, and where it stands: the held corner, and the direction of the wall that starts at `along`. */
function drawnRows(drawn: readonly PlanPoint[], at: readonly PlanPoint[], held: number, along: number): Row[] {
  const rows: Row[] = [];
  for (const [i, a] of drawn.entries()) {
    const k = (i + 1) % drawn.length;
    const [b, nowA, nowB] = [drawn[k] ?? a, at[i] ?? a, at[k] ?? a];
    const length_m = distance_m(a, b) || 1;
    const [ux, uy] = [(b.x - a.x) / length_m, (b.y - a.y) / length_m];
    const [dx, dy] = [nowB.x - nowA.x - (b.x - a.x), nowB.y - nowA.y - (b.y - a.y)];
    rows.push({ off: dx * ux + dy * uy, weight: LENGTH_WEIGHT, slopes: slopesOf(i, k, ux, uy) });
    rows.push({ off: dy * ux - dx * uy, weight: i === along ? 1 : DIRECTION_WEIGHT, slopes: slopesOf(i, k, -uy, ux) });
  }
  const [corner, now] = [drawn[held] ?? NOWHERE, at[held] ?? NOWHERE];
  rows.push({ off: now.x - corner.x, weight: 1, slopes: [[2 * held, 1]] }, { off: now.y - corner.y, weight: 1, slopes: [[2 * held + 1, 1]] });
  return rows;
}

const costOf = (rows: readonly Row[]): number => rows.reduce((sum, { off, weight }) => sum + (weight * off) ** 2, 0);

/** Normal equations of weighted rows. */
function normalOf(rows: readonly Row[], size: number): { readonly matrix: number[][]; readonly right: number[] } {
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  for (const { off, weight, slopes } of rows) {
    for (const [i, slope] of slopes) {
      right[i] = (right[i] ?? 0) - weight ** 2 * slope * off;
      const line = matrix[i];
      if (line) for (const [k, other] of slopes) line[k] = (line[k] ?? 0) + weight ** 2 * slope * other;
    }
  }
  return { matrix, right };
}

/**
 * Fits a ring to measured lengths by least squares (Gauss–Newton, each step halved until it helps). Where lengths leave
 * it free, walls keep their drawn directions first and their drawn lengths second.
 * @param drawn    open ring, last corner not repeated
 * @param lengths  between any two of its corners
 * @param held     corner that stays where it is drawn
 * @param along    corner where the wall starts that keeps its drawn direction
 * @returns undefined where the ring has a wall without length
 */
export function fitRing(drawn: readonly PlanPoint[], lengths: readonly RingLength[], held: number, along: number): FittedRing | undefined {
  const size = drawn.length * 2;
  const rowsAt = (at: readonly PlanPoint[]): Row[] => [...lengths.map((length) => measuredRow(at, length)), ...drawnRows(drawn, at, held, along)];
  let corners: PlanPoint[] = drawn.map(({ x, y }) => ({ x, y }));
  let rows = rowsAt(corners);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const { matrix, right } = normalOf(rows, size);
    const shift = solveSymmetric(matrix)?.(right);
    if (!shift) return undefined;
    const cost = costOf(rows);
    let share = 1;
    const moved = (): PlanPoint[] => corners.map(({ x, y }, i) => ({ x: x + share * (shift[2 * i] ?? 0), y: y + share * (shift[2 * i + 1] ?? 0) }));
    let next = moved();
    while (costOf(rowsAt(next)) > cost && share > 1e-6) {
      share /= 2;
      next = moved();
    }
    corners = next;
    rows = rowsAt(corners);
    if (Math.max(...shift.map(Math.abs)) * share < STILL_m) break;
  }
  const solve = solveSymmetric(normalOf(rows, size).matrix);
  if (!solve) return undefined;
  const redundancy = rows.slice(0, lengths.length).map(({ slopes }) => {
    const right = new Array<number>(size).fill(0);
    for (const [i, slope] of slopes) right[i] = slope;
    const answer = solve(right);
    return Math.max(0, 1 - slopes.reduce((sum, [i, slope]) => sum + slope * (answer[i] ?? 0), 0));
  });
  return { corners, residuals_m: rows.slice(0, lengths.length).map(({ off }) => off), redundancy };
}
