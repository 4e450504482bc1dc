import type { PieceKind } from './best-pattern.ts';
import { packBars } from './pack-bars.ts';
import { patternPlan } from './pattern-plan.ts';

/** So few pieces are left to the search. */
const FEW = 30;
const SEARCH_STEPS = 60_000;

/**
 * Makes whole bars of a cutting plan in parts: patterns that are cut at least once are cut as often as they are whole;
 * where none is, the one nearest to a whole bar is; then what is left is planned anew. The last pieces are searched.
 * @param kinds  longest first
 * @returns pieces of each kind in each bar
 */
export function roundPatterns(kinds: readonly PieceKind[], room: number): number[][] {
  const left = kinds.map(({ count }) => count);
  const bars: number[][] = [];
  const cut = (pieces: readonly number[]): boolean => {
    if (!pieces.some((n) => n > 0) || pieces.some((n, k) => n > (left[k] ?? 0))) return false;
    bars.push([...pieces]);
    for (const [k, n] of pieces.entries()) left[k] = (left[k] ?? 0) - n;
    return true;
  };
  for (;;) {
    const open = kinds.flatMap(({ size }, k) => ((left[k] ?? 0) > 0 ? [{ k, size, count: left[k] ?? 0 }] : []));
    if (open.length === 0) return bars;
    const wide = (pieces: readonly number[]): number[] => {
      const all = kinds.map(() => 0);
      for (const [i, { k }] of open.entries()) all[k] = pieces[i] ?? 0;
      return all;
    };
    const { least, patterns } = patternPlan(open, room);
    if (open.reduce((sum, { count }) => sum + count, 0) <= FEW) {
      for (let most = least; most <= least + 1; most += 1) {
        const packing = packBars(open, room, most, SEARCH_STEPS);
        if (packing.kind !== 'found') continue;
        for (const pieces of packing.bars) cut(wide(pieces));
        return bars;
      }
    }
    let whole = 0;
    for (const { pieces, bars: parts } of patterns) {
      for (let n = Math.floor(parts + 1e-6); n > 0; n -= 1) if (cut(wide(pieces))) whole += 1;
    }
    const [nearest] = patterns;
    if (whole === 0 && !(nearest && cut(wide(nearest.pieces)))) {
      // No plan to go by: one bar with the longest piece.
      const [first] = open;
      cut(kinds.map((_, k) => (k === first?.k ? 1 : 0)));
    }
  }
}
