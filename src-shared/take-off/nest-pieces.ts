import { inches_m } from '../units/convert.ts';
import { fewestBars } from './stock-bound.ts';

/** Width of a saw cut, common practice [m]. */
export const USUAL_KERF_m = inches_m(1 / 8);
/** Up to so many pieces the fewest bars are searched for, not only approached. */
const MOST_EXACT = 40;
/** Steps of the search before it settles for the best found. */
const MOST_STEPS = 200_000;
/** Steps of filling one bar as full as it goes. */
const MOST_FILL_STEPS = 2000;
/** Float noise of lengths [m]. */
const NOISE_m = 1e-9;

export interface Nesting {
  /** Indices of the pieces in each bar of stock. */
  readonly bars: readonly (readonly number[])[];
  /** Pieces longer than the stock. */
  readonly tooLong: readonly number[];
  /** No way of cutting needs fewer bars than this. */
  readonly leastBars: number;
  /** Proven to be the fewest. */
  readonly isFewest: boolean;
  /** Stock bought less pieces: offcuts and kerf [m]. */
  readonly waste_m: number;
  /** The same for the least number of bars. */
  readonly leastWaste_m: number;
}

interface Item {
  readonly index: number;
  /** Piece and the cut that parts it [m]. */
  readonly need_m: number;
}
type Bars = readonly (readonly Item[])[];

/** Longest first, each into the first bar that has room. */
function firstFit(items: readonly Item[], room_m: number): Bars {
  const bars: { left_m: number; items: Item[] }[] = [];
  for (const item of items) {
    const open = bars.find(({ left_m }) => left_m >= item.need_m - NOISE_m);
    if (open) {
      open.left_m -= item.need_m;
      open.items.push(item);
    } else bars.push({ left_m: room_m - item.need_m, items: [item] });
  }
  return bars.map((bar) => bar.items);
}

/** The items that, with the first, fill a bar best. */
function fullest([first, ...others]: readonly Item[], room_m: number): readonly Item[] {
  if (!first) return [];
  let best: readonly Item[] = [first];
  let bestLeft_m = room_m - first.need_m;
  let steps = 0;
  const fill = (from: number, chosen: readonly Item[], left_m: number): void => {
    steps += 1;
    if (left_m < bestLeft_m) {
      best = chosen;
      bestLeft_m = left_m;
    }
    for (let i = from; i < others.length && steps < MOST_FILL_STEPS && bestLeft_m > NOISE_m; i += 1) {
      const item = others[i];
      if (!item || item.need_m > left_m + NOISE_m || (i > from && others[i - 1]?.need_m === item.need_m)) continue;
      fill(i + 1, [...chosen, item], left_m - item.need_m);
    }
  };
  fill(0, [first], bestLeft_m);
  return best;
}

/** Fills bar after bar as full as it goes, each begun with the longest piece left. */
function fillBars(items: readonly Item[], room_m: number): Bars {
  const bars: (readonly Item[])[] = [];
  let left = items;
  while (left.length > 0) {
    const bar = fullest(left, room_m);
    const used = new Set(bar);
    left = left.filter((item) => !used.has(item));
    bars.push(bar);
  }
  return bars;
}

/** Branch and bound: each item, longest first, into every bar that differs, then into a new one. */
function search(items: readonly Item[], room_m: number, known: Bars, least: number): { readonly bars: Bars; readonly isDone: boolean } {
  let best = known;
  let steps = 0;
  const bars: { left_m: number; items: Item[] }[] = [];
  const rest_m = items.map((_, i) => items.slice(i).reduce((sum, { need_m }) => sum + need_m, 0));
  const place = (i: number): void => {
    steps += 1;
    if (steps > MOST_STEPS || best.length <= least) return;
    const item = items[i];
    if (!item) {
      best = bars.map((bar) => [...bar.items]);
      return;
    }
    const open_m = bars.reduce((sum, { left_m }) => sum + Math.max(0, left_m), 0);
    const more = Math.max(0, Math.ceil(((rest_m[i] ?? 0) - open_m) / room_m - NOISE_m));
    if (bars.length + more >= best.length) return;
    const tried: number[] = [];
    for (const bar of bars) {
      const { left_m } = bar;
      if (left_m < item.need_m - NOISE_m || tried.some((each) => Math.abs(each - left_m) < NOISE_m / 10)) continue;
      tried.push(left_m);
      bar.items.push(item);
      bar.left_m = left_m - item.need_m;
      place(i + 1);
      bar.items.pop();
      bar.left_m = left_m;
    }
    if (bars.length + 1 >= best.length) return;
    bars.push({ left_m: room_m - item.need_m, items: [item] });
    place(i + 1);
    bars.pop();
  };
  place(0);
  return { bars: best, isDone: steps <= MOST_STEPS };
}

/**
 * Cuts pieces from bars of stock with as few bars as can be found: proven fewest up to 40 pieces unless the search
 * grows too long, which `isFewest` tells. Between two pieces goes one kerf.
 */
export function nestPieces(lengths_m: readonly number[], stock_m: number, kerf_m: number): Nesting {
  const room_m = stock_m + kerf_m;
  const all = lengths_m.map((length_m, index): Item => ({ index, need_m: length_m + kerf_m }));
  const items = all.filter(({ need_m }) => need_m <= room_m + NOISE_m).sort((a, b) => b.need_m - a.need_m || a.index - b.index);
  // A bar may be overfilled by the noise of each piece.
  const leastBars = fewestBars(items.map(({ need_m }) => Math.min(1, need_m / (room_m + NOISE_m * items.length))));
  const greedy = [firstFit(items, room_m), fillBars(items, room_m)].sort((a, b) => a.length - b.length)[0] ?? [];
  const isProven = greedy.length <= leastBars;
  const searched = isProven || items.length > MOST_EXACT ? { bars: greedy, isDone: isProven } : search(items, room_m, greedy, leastBars);
  const pieces_m = items.reduce((sum, { index }) => sum + (lengths_m[index] ?? 0), 0);
  const bars = searched.bars.map((bar) => bar.map(({ index }) => index));
  return {
    bars,
    tooLong: all.filter(({ need_m }) => need_m > room_m + NOISE_m).map(({ index }) => index),
    leastBars,
    isFewest: searched.isDone || bars.length <= leastBars,
    waste_m: bars.length * stock_m - pieces_m,
    leastWaste_m: leastBars * stock_m - pieces_m,
  };
}
