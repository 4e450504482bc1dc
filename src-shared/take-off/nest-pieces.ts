import { inches_m } from '../units/convert.ts';
import type { PieceKind } from './best-pattern.ts';
import { packBars } from './pack-bars.ts';
import { patternPlan } from './pattern-plan.ts';
import { roundPatterns } from './round-patterns.ts';
import { fewestBars } from './stock-bound.ts';

/** Width of a saw cut, common practice [m]. */
export const USUAL_KERF_m = inches_m(1 / 8);
/** Up to so many pieces the fewest bars are searched for; beyond, a short search only mends what was found by filling. */
const MOST_EXACT = 40;
const STEPS_EXACT = 4_000_000;
const STEPS_SHORT = 300_000;
/** So many different lengths the bound by patterns is worked out for. */
const MOST_KINDS = 60;
/** Steps of filling one bar as full as it goes. */
const MOST_FILL_STEPS = 2000;
/** Lengths count in whole nanometres, so that pieces that fill a bar exactly do, and alike ones are alike. */
const PER_METRE = 1e9;

export interface Nesting {
  /** Indices of the pieces in each bar of stock. */
  readonly bars: readonly (readonly number[])[];
  /** Pieces longer than the stock. */
  readonly tooLong: readonly number[];
  /** Proven: no way of cutting needs fewer bars than this. */
  readonly leastBars: number;
  /** Proven to be the fewest: as many bars as `leastBars`. False means no more than that no proof was found. */
  readonly isFewest: boolean;
  /** Stock bought less pieces: offcuts and kerf [m]. */
  readonly waste_m: number;
  /** The same for the least number of bars. */
  readonly leastWaste_m: number;
}

interface Item {
  readonly index: number;
  /** Piece and the cut that parts it [nm]. */
  readonly need: number;
}
type Bars = readonly (readonly Item[])[];

/** Longest first, each into the first bar that has room. */
function firstFit(items: readonly Item[], room: number): Bars {
  const bars: { left: number; items: Item[] }[] = [];
  for (const item of items) {
    const open = bars.find(({ left }) => left >= item.need);
    if (open) {
      open.left -= item.need;
      open.items.push(item);
    } else bars.push({ left: room - item.need, items: [item] });
  }
  return bars.map((bar) => bar.items);
}

/** The items that, with the first, fill a bar best. */
function fullest([first, ...others]: readonly Item[], room: number): readonly Item[] {
  if (!first) return [];
  let best: readonly Item[] = [first];
  let bestLeft = room - first.need;
  let steps = 0;
  const fill = (from: number, chosen: readonly Item[], left: number): void => {
    steps += 1;
    if (left < bestLeft) {
      best = chosen;
      bestLeft = left;
    }
    for (let i = from; i < others.length && steps < MOST_FILL_STEPS && bestLeft > 0; i += 1) {
      const item = others[i];
      if (!item || item.need > left || (i > from && others[i - 1]?.need === item.need)) continue;
      fill(i + 1, [...chosen, item], left - item.need);
    }
  };
  fill(0, [first], bestLeft);
  return best;
}

/** Fills bar after bar as full as it goes, each begun with the longest piece left. */
function fillBars(items: readonly Item[], room: number): Bars {
  const bars: (readonly Item[])[] = [];
  let left = items;
  while (left.length > 0) {
    const bar = fullest(left, room);
    const used = new Set(bar);
    left = left.filter((item) => !used.has(item));
    bars.push(bar);
  }
  return bars;
}

/** Items of each length, longest first. */
function byLength(items: readonly Item[]): Item[][] {
  const kinds = new Map<number, Item[]>();
  for (const item of items) {
    const alike = kinds.get(item.need);
    if (alike) alike.push(item);
    else kinds.set(item.need, [item]);
  }
  return [...kinds.values()];
}

/** Bars in place of patterns: which pieces of a length go where is all the same. */
function withItems(alike: readonly (readonly Item[])[], patterns: readonly (readonly number[])[]): Bars {
  const next = alike.map(() => 0);
  return patterns.map((taken) =>
    taken.flatMap((n, k) => {
      const from = next[k] ?? 0;
      next[k] = from + n;
      return alike[k]?.slice(from, from + n) ?? [];
    }),
  );
}

const kindsOf = (alike: readonly (readonly Item[])[]): PieceKind[] => alike.map((each) => ({ size: each[0]?.need ?? 0, count: each.length }));

/** Cuts what is in the emptiest bars anew, with one bar less, for as long as that works. */
function mended(bars: Bars, room: number): Bars {
  const leftOf = (bar: readonly Item[]): number => bar.reduce((left, { need }) => left - need, room);
  let now = bars;
  for (;;) {
    const emptiest = now.map((bar) => ({ bar, left: leftOf(bar) })).sort((a, b) => b.left - a.left);
    const few = [...now.keys()].findLast((n) => emptiest.slice(0, n + 1).reduce((sum, { bar }) => sum + bar.length, 0) <= MOST_EXACT) ?? 0;
    const chosen = emptiest.slice(0, few + 1);
    if (chosen.reduce((sum, { left }) => sum + left, 0) < room) return now;
    const alike = byLength(chosen.flatMap(({ bar }) => bar).sort((a, b) => b.need - a.need || a.index - b.index));
    const packing = packBars(kindsOf(alike), room, chosen.length - 1, STEPS_SHORT);
    if (packing.kind !== 'found') return now;
    now = [...emptiest.slice(few + 1).map(({ bar }) => bar), ...withItems(alike, packing.bars)];
  }
}

/** Fewer bars than the known ones if there are any, and how few are proven to be needed. */
function search(items: readonly Item[], room: number, known: Bars, needed: number): { readonly bars: Bars; readonly least: number } {
  const alike = byLength(items);
  const kinds = kindsOf(alike);
  const isPlanned = kinds.length <= MOST_KINDS;
  let least = isPlanned ? Math.max(needed, patternPlan(kinds, room).least) : needed;
  let bars = known;
  if (items.length > MOST_EXACT) {
    bars = mended(bars, room);
    const rounded = isPlanned && bars.length > least ? roundPatterns(kinds, room) : [];
    if (rounded.length > 0 && rounded.length < bars.length) bars = mended(withItems(alike, rounded), room);
  }
  const steps = items.length <= MOST_EXACT ? STEPS_EXACT : STEPS_SHORT;
  for (let most = least; most < bars.length; most += 1) {
    const packing = packBars(kinds, room, most, steps);
    if (packing.kind === 'none' && most === least) least += 1;
    if (packing.kind === 'found') return { bars: withItems(alike, packing.bars), least };
  }
  return { bars, least };
}

/**
 * Cuts pieces from bars of stock with as few bars as can be found. Up to 40 pieces the fewest are searched for and, but
 * for freak sets, proven; for more, the result is the fewest that filling and a short search find. `isFewest` says
 * whether it is proven. The search counts its steps and never looks at a clock: the same pieces are cut alike everywhere.
 * Between two pieces goes one kerf.
 */
export function nestPieces(lengths_m: readonly number[], stock_m: number, kerf_m: number): Nesting {
  const room = Math.round((stock_m + kerf_m) * PER_METRE);
  const all = lengths_m.map((length_m, index): Item => ({ index, need: Math.max(1, Math.round((length_m + kerf_m) * PER_METRE)) }));
  const items = all.filter(({ need }) => need <= room).sort((a, b) => b.need - a.need || a.index - b.index);
  const needed = fewestBars(items.map(({ need }) => need / room));
  const greedy = [firstFit(items, room), fillBars(items, room)].sort((a, b) => a.length - b.length)[0] ?? [];
  const { bars, least } = greedy.length <= needed ? { bars: greedy, least: needed } : search(items, room, greedy, needed);
  const pieces_m = items.reduce((sum, { index }) => sum + (lengths_m[index] ?? 0), 0);
  return {
    bars: bars.map((bar) => bar.map(({ index }) => index)),
    tooLong: all.filter(({ need }) => need > room).map(({ index }) => index),
    leastBars: least,
    isFewest: bars.length <= least,
    waste_m: bars.length * stock_m - pieces_m,
    leastWaste_m: least * stock_m - pieces_m,
  };
}
