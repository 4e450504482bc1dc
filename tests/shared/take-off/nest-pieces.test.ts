import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { USUAL_KERF_m, nestPieces } from '#shared/take-off/nest-pieces';
import { STOCK_LENGTH_m } from '#shared/take-off/pieces-of';

const nest = (lengths_m: readonly number[], kerf_m = USUAL_KERF_m) => nestPieces(lengths_m, STOCK_LENGTH_m, kerf_m);

/** Fewest bars by trying every way of sharing the pieces out. */
function bruteForce(lengths_m: readonly number[], stock_m: number, kerf_m: number): number {
  let best = lengths_m.length;
  const bars: number[] = [];
  const place = (i: number): void => {
    const length_m = lengths_m[i];
    if (length_m === undefined) {
      best = Math.min(best, bars.length);
      return;
    }
    for (const [bar, used_m] of bars.entries()) {
      if (used_m + kerf_m + length_m > stock_m + 1e-9) continue;
      bars[bar] = used_m + kerf_m + length_m;
      place(i + 1);
      bars[bar] = used_m;
    }
    bars.push(length_m);
    place(i + 1);
    bars.pop();
  };
  place(0);
  return best;
}

const anyLengths = (most: number) =>
  fc.oneof(
    fc.array(fc.double({ min: 0.05, max: STOCK_LENGTH_m, noNaN: true }), { minLength: 1, maxLength: most, size: 'max' }),
    fc.array(fc.double({ min: 0.05, max: 2.5, noNaN: true }), { minLength: 1, maxLength: most, size: 'max' }),
  );
/** Near halves, thirds and quarters of the stock, where filling first what comes first goes wrong. */
const awkwardLengths = (most: number) => fc.array(fc.constantFrom(1.57, 1.6, 1.62, 2.1, 2.13, 2.14, 3.19, 3.2, 3.21), { minLength: 1, maxLength: most, size: 'max' });

function expectSound(lengths_m: readonly number[], kerf_m: number): void {
  const { bars, tooLong, leastBars, waste_m, isFewest } = nest(lengths_m, kerf_m);
  for (const bar of bars) {
    expect(bar.length).toBeGreaterThan(0);
    expect(bar.reduce((sum, i) => sum + (lengths_m[i] ?? Number.NaN), 0) + (bar.length - 1) * kerf_m).toBeLessThanOrEqual(STOCK_LENGTH_m + 1e-8);
  }
  expect([...bars.flat(), ...tooLong].sort((a, b) => a - b)).toEqual(lengths_m.map((_, i) => i));
  expect(bars.length).toBeGreaterThanOrEqual(leastBars);
  if (bars.length === leastBars) expect(isFewest).toBe(true);
  expect(waste_m).toBeGreaterThanOrEqual(-1e-8);
}

function expectNear(lengths_m: readonly number[], kerf_m: number): void {
  expectSound(lengths_m, kerf_m);
  const { bars, leastBars } = nest(lengths_m, kerf_m);
  expect(bars.length).toBeLessThanOrEqual(leastBars + 1);
}

describe('nesting', () => {
  test('nothing needs no stock', () => {
    expect(nest([])).toEqual({ bars: [], tooLong: [], leastBars: 0, isFewest: true, waste_m: 0, leastWaste_m: 0 });
  });

  test('a piece as long as the stock fits, a longer one does not', () => {
    expect(nest([STOCK_LENGTH_m])).toMatchObject({ bars: [[0]], tooLong: [] });
    expect(nest([STOCK_LENGTH_m + 1e-6, 1])).toMatchObject({ bars: [[1]], tooLong: [0] });
  });

  test('halves share a bar only while the kerf leaves room', () => {
    const half_m = STOCK_LENGTH_m / 2;
    expect(nest([half_m, half_m], 0).bars).toHaveLength(1);
    expect(nest([half_m, half_m]).bars).toHaveLength(2);
    expect(nest([half_m, half_m - USUAL_KERF_m]).bars).toHaveLength(1);
  });

  test('finds the fewest bars where first fit does not', () => {
    // Stock 10 without kerf: first fit of 6 5 5 4 … by hand; 4 + 6, 5 + 5, 3 + 3 + 4 are full.
    expect(nestPieces([5, 5, 6, 4, 4, 3, 3], 10, 0)).toMatchObject({ leastBars: 3, isFewest: true, bars: { length: 3 } });
    // First fit puts 4.4 + 3.5 + 2 together and needs a third bar; 4.4 + 3.5 + 2.1 and 4 + 4 + 2 do.
    expect(nestPieces([4.4, 4, 4, 3.5, 2.1, 2], 10, 0)).toMatchObject({ isFewest: true, bars: { length: 2 } });
  });

  // No fewer can hold their sum; filling the longest first takes one bar more.
  test.each([
    [[40, 26, 45, 16, 26, 54, 51, 22, 17, 24, 35, 41], 4],
    [[40, 17, 37, 33, 44, 31, 14, 34, 30, 32, 47, 33], 4],
    [[10, 20, 29, 47, 46, 48, 14, 17, 12, 34, 22], 3],
    [[32, 25, 38, 51, 23, 16, 17, 44, 18, 46, 32, 24, 33], 4],
  ])('searches for the fewest bars: %j of stock 100 take %d', (lengths_m, bars) => {
    expect(Math.ceil(lengths_m.reduce((sum, length_m) => sum + length_m, 0) / 100)).toBe(bars);
    expect(nestPieces(lengths_m, 100, 0)).toMatchObject({ bars: { length: bars }, isFewest: true });
  });

  test('for up to 8 pieces it equals every way tried', () => {
    fc.assert(
      fc.property(fc.oneof(anyLengths(8), awkwardLengths(8)), fc.constantFrom(0, USUAL_KERF_m, 0.02), (lengths_m, kerf_m) => {
        const { bars, leastBars, isFewest } = nest(lengths_m, kerf_m);
        const fewest = bruteForce(lengths_m, STOCK_LENGTH_m, kerf_m);
        expect([bars.length, isFewest]).toEqual([fewest, true]);
        expect(leastBars).toBeLessThanOrEqual(fewest);
      }),
      { numRuns: 400 },
    );
  });

  test('never overfull, every piece once, within one bar of the bound: up to 40 pieces', () => {
    fc.assert(fc.property(anyLengths(40), fc.constantFrom(0, USUAL_KERF_m), expectNear), { numRuns: 150 });
  });

  test('the same for many pieces', () => {
    fc.assert(fc.property(anyLengths(400), fc.constantFrom(0, USUAL_KERF_m), expectNear), { numRuns: 30 });
  });

  test('awkward lengths are never overfull and each is cut once; what is not proven is not called fewest', () => {
    fc.assert(fc.property(awkwardLengths(60), fc.constantFrom(0, USUAL_KERF_m), expectSound), { numRuns: 40 });
  });
});
