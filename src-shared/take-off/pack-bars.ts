import type { PieceKind } from './best-pattern.ts';

/** What a search for a number of bars came to. */
export type Packing =
  | { readonly kind: 'found'; readonly bars: readonly (readonly number[])[] }
  /** Proven: no way of cutting does with so few. */
  | { readonly kind: 'none' }
  /** The search grew too long. */
  | { readonly kind: 'unknown' };

/** A way to fill one bar: pieces of each kind, and what is left over. */
interface Filling {
  readonly taken: readonly number[];
  readonly left: number;
}

/**
 * Looks for a way to cut all pieces from a number of bars (bin completion, Korf 2003): bar after bar is begun with the
 * longest piece left and filled in every way that wastes no more than may be wasted altogether. Left out are fillings
 * that another one dominates, a longer piece taking the place of one or two in it (Martello and Toth 1990), and what is
 * left over more than once.
 * @param kinds  longest first
 * @param room   length of a bar, in the unit of the sizes
 * @param most   bars that there are
 * @param mostSteps  steps after which it gives up, the same on every machine
 */
export function packBars(kinds: readonly PieceKind[], room: number, most: number, mostSteps: number): Packing {
  const total = kinds.reduce((sum, { size, count }) => sum + size * count, 0);
  const left = kinds.map(({ count }) => count);
  const bars: number[][] = [];
  /** Most bars with which what was left could not be cut, by what was left. */
  const failed = new Map<string, number>();
  let steps = 0;

  const fillings = (first: number, spare: number): Filling[] => {
    const found: Filling[] = [];
    const taken = kinds.map(() => 0);
    /** All that is left of a kind and those after it. */
    const behind = kinds.map(({ size }, k) => size * (left[k] ?? 0));
    for (let k = behind.length - 2; k >= 0; k -= 1) behind[k] = (behind[k] ?? 0) + (behind[k + 1] ?? 0);
    const fill = (k: number, open: number): void => {
      steps += 1;
      if (steps > mostSteps || open - (behind[k] ?? 0) > spare) return;
      const kind = kinds[k];
      if (!kind) {
        if (open <= spare && !isDominated(taken, open)) found.push({ taken: [...taken], left: open });
        return;
      }
      const already = taken[k] ?? 0;
      const fits = Math.min((left[k] ?? 0) - already, Math.floor(open / kind.size));
      for (let n = fits; n >= 0; n -= 1) {
        taken[k] = already + n;
        fill(k + 1, open - n * kind.size);
      }
      taken[k] = already;
    };
    taken[first] = 1;
    fill(first, room - (kinds[first]?.size ?? 0));
    return found.sort((a, b) => a.left - b.left);
  };

  /** Whether a longer piece that is left over fits in place of nothing, of one piece or of two. The first piece is the longest: nothing takes its place. */
  const isDominated = (taken: readonly number[], open: number): boolean => {
    const inside = kinds.flatMap(({ size }, k) => (taken[k] ? [{ size, k }] : []));
    const sums = [0, ...inside.map(({ size }) => size)];
    for (const [i, a] of inside.entries()) {
      for (const b of inside.slice(i)) if (a.k !== b.k || (taken[a.k] ?? 0) > 1) sums.push(a.size + b.size);
    }
    return kinds.some(({ size }, k) => (left[k] ?? 0) > (taken[k] ?? 0) && sums.some((sum) => (sum < size || sum === 0) && size <= sum + open));
  };

  const place = (rest: number): boolean => {
    const first = left.findIndex((count) => count > 0);
    if (first < 0) return true;
    const barsLeft = most - bars.length;
    const spare = barsLeft * room - rest;
    if (spare < 0 || steps > mostSteps) return false;
    const key = left.join();
    if ((failed.get(key) ?? -1) >= barsLeft) return false;
    for (const { taken, left: over } of fillings(first, spare)) {
      for (const [k, n] of taken.entries()) left[k] = (left[k] ?? 0) - n;
      bars.push([...taken]);
      if (place(rest - (room - over))) return true;
      bars.pop();
      for (const [k, n] of taken.entries()) left[k] = (left[k] ?? 0) + n;
      if (steps > mostSteps) return false;
    }
    failed.set(key, barsLeft);
    return false;
  };

  if (place(total)) return { kind: 'found', bars };
  return { kind: steps > mostSteps ? 'unknown' : 'none' };
}
