/** Pieces of one length: how long, and how many of them there are. */
export interface PieceKind {
  readonly size: number;
  readonly count: number;
}

/** The cutting pattern of one bar that is worth most. */
export interface BestPattern {
  /** Pieces of each kind in the bar. */
  readonly pattern: readonly number[];
  readonly worth: number;
  /** No pattern is worth more than this; above `worth` only where the search was cut short. */
  readonly atMost: number;
}

const MOST_STEPS = 20_000;

/**
 * Fills one bar so that what its pieces are worth together is greatest (a bounded knapsack, by branch and bound).
 * @param worths  what one piece of each kind is worth; none below 0
 * @param room    length of the bar, in the unit of the sizes
 */
export function bestPattern(kinds: readonly PieceKind[], worths: readonly number[], room: number): BestPattern {
  const order = kinds
    .map(({ size, count }, i) => ({ i, size, count, worth: worths[i] ?? 0 }))
    .filter(({ worth }) => worth > 1e-12)
    .sort((a, b) => b.worth / b.size - a.worth / a.size || a.i - b.i);
  const taken = order.map(() => 0);
  let best = { worth: 0, taken: [...taken] };
  let steps = 0;
  const rate = (k: number): number => {
    const next = order[k];
    return next ? next.worth / next.size : 0;
  };
  const fill = (k: number, left: number, worth: number): void => {
    steps += 1;
    if (worth > best.worth + 1e-12) best = { worth, taken: [...taken] };
    const kind = order[k];
    if (!kind || steps > MOST_STEPS) return;
    for (let n = Math.min(kind.count, Math.floor(left / kind.size)); n >= 0; n -= 1) {
      const then = worth + n * kind.worth;
      const rest = left - n * kind.size;
      if (then + rest * rate(k + 1) <= best.worth + 1e-12) return;
      taken[k] = n;
      fill(k + 1, rest, then);
      taken[k] = 0;
    }
  };
  fill(0, room, 0);
  const pattern = kinds.map(() => 0);
  for (const [k, { i }] of order.entries()) pattern[i] = best.taken[k] ?? 0;
  return { pattern, worth: best.worth, atMost: steps > MOST_STEPS ? Math.max(best.worth, room * rate(0)) : best.worth };
}
