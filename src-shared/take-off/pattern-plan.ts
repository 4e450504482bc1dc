import { type PieceKind, bestPattern } from './best-pattern.ts';

const MOST_ROUNDS = 600;
/** A bound this little above a whole number of bars is float noise. */
const NOISE = 1e-6;

/** A column of the cutting plan: a pattern, which costs one bar, or a piece too many, which costs nothing. */
interface Column {
  readonly pieces: readonly number[];
  readonly bars: 0 | 1;
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

/** A cutting plan with bars in parts. */
export interface PatternPlan {
  /** No cutting plan needs fewer bars. */
  readonly least: number;
  /** Patterns, each with the bars that are cut by it, in parts; most bars first. */
  readonly patterns: readonly { readonly pieces: readonly number[]; readonly bars: number }[];
}

/**
 * Fewest bars that any cutting plan needs, if bars could be shared out in parts (Gilmore and Gomory 1961): patterns are
 * found one by one with the worth that the plan so far gives the pieces. Every round gives a sound bound of its own
 * (Farley 1990), so that neither float noise nor an early end makes it too great.
 * @param kinds  each with a size above 0 and no longer than the room
 */
export function patternPlan(kinds: readonly PieceKind[], room: number): PatternPlan {
  const most = kinds.map(({ size, count }) => Math.min(count, Math.floor(room / size)));
  if (most.some((n) => n < 1)) return { least: 0, patterns: [] };
  const basis: Column[] = kinds.map((_, i) => ({ pieces: kinds.map((__, k) => (k === i ? (most[i] ?? 1) : 0)), bars: 1 }));
  const inverse = kinds.map((_, i) => kinds.map((__, k) => (k === i ? 1 / (most[i] ?? 1) : 0)));
  const bars = kinds.map(({ count }, i) => count / (most[i] ?? 1));
  let least = 0;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const worths = kinds.map((_, k) => basis.reduce((sum, column, i) => sum + column.bars * (inverse[i]?.[k] ?? 0), 0));
    const sound = worths.map((worth) => Math.max(0, worth));
    const best = bestPattern(kinds, sound, room);
    least = Math.max(least, kinds.reduce((sum, { count }, i) => sum + count * (sound[i] ?? 0), 0) / Math.max(1, best.atMost));
    const used = basis.reduce((sum, column, i) => sum + column.bars * (bars[i] ?? 0), 0);
    if (Math.ceil(least - NOISE) >= Math.ceil(used - NOISE)) break;
    const costly = worths.findIndex((worth) => worth < -1e-9);
    if (costly < 0 && best.worth <= 1 + 1e-9) break;
    const entering: Column = costly < 0 ? { pieces: best.pattern, bars: 1 } : { pieces: kinds.map((_, k) => (k === costly ? -1 : 0)), bars: 0 };
    if (!enter(entering, basis, inverse, bars)) break;
  }
  const patterns = basis.flatMap((column, i) => (column.bars === 1 && (bars[i] ?? 0) > NOISE ? [{ pieces: column.pieces, bars: bars[i] ?? 0 }] : []));
  return { least: Math.max(0, Math.ceil(least - NOISE)), patterns: patterns.sort((a, b) => b.bars - a.bars) };
}

/** Lets a column into the basis in place of the one that runs out first; false when none does. */
function enter(entering: Column, basis: Column[], inverse: number[][], bars: number[]): boolean {
  const change = inverse.map((row) => dot(row, entering.pieces));
  let leaving = -1;
  let least = Infinity;
  for (const [i, rate] of change.entries()) {
    const share = rate > 1e-9 ? (bars[i] ?? 0) / rate : Infinity;
    if (share < least) [least, leaving] = [share, i];
  }
  const [pivotRow, pivot] = [inverse[leaving], change[leaving]];
  if (!pivotRow || pivot === undefined) return false;
  for (const [k, value] of pivotRow.entries()) pivotRow[k] = value / pivot;
  for (const [i, row] of inverse.entries()) {
    const rate = change[i] ?? 0;
    if (i === leaving || rate === 0) continue;
    for (const [k, value] of pivotRow.entries()) row[k] = (row[k] ?? 0) - rate * value;
  }
  for (const [i, rate] of change.entries()) bars[i] = i === leaving ? least : Math.max(0, (bars[i] ?? 0) - rate * least);
  basis[leaving] = entering;
  return true;
}
