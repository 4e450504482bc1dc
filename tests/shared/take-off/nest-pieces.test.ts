import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { USUAL_KERF_m, nestPieces } from '#shared/take-off/nest-pieces';
import { STOCK_LENGTH_m } from '#shared/take-off/pieces-of';

const nest = (lengths_m: readonly number[], kerf_m = USUAL_KERF_m) => nestPieces(lengths_m, STOCK_LENGTH_m, kerf_m);

/**
 * Fewest bars by the exact sum over all sets of pieces: of every set, the fewest bars and then the least used of the last
 * one (Held and Karp's way of asking about subsets). It shares nothing with the search under test.
 */
function overAllSets(lengths_m: readonly number[], stock_m: number, kerf_m: number): number {
  const best: { bars: number; used_m: number }[] = [{ bars: 0, used_m: Infinity }];
  for (let set = 1; set < 2 ** lengths_m.length; set += 1) {
    let least = { bars: Infinity, used_m: Infinity };
    for (const [i, length_m] of lengths_m.entries()) {
      const before = (set >> i) & 1 ? best[set ^ (1 << i)] : undefined;
      if (!before) continue;
      const goesOn = before.used_m + kerf_m + length_m <= stock_m + 1e-9;
      const now = goesOn ? { bars: before.bars, used_m: before.used_m + kerf_m + length_m } : { bars: before.bars + 1, used_m: length_m };
      if (now.bars < least.bars || (now.bars === least.bars && now.used_m < least.used_m)) least = now;
    }
    best[set] = least;
  }
  return best[2 ** lengths_m.length - 1]?.bars ?? 0;
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
  expect(isFewest).toBe(bars.length === leastBars);
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

  test('200 sets of up to 12 pieces: as few as the sum over all sets of them gives', () => {
    fc.assert(
      fc.property(fc.oneof(anyLengths(12), awkwardLengths(12)), fc.constantFrom(0, USUAL_KERF_m, 0.02), (lengths_m, kerf_m) => {
        const { bars, leastBars, isFewest } = nest(lengths_m, kerf_m);
        const fewest = overAllSets(lengths_m, STOCK_LENGTH_m, kerf_m);
        expect([bars.length, leastBars, isFewest]).toEqual([fewest, fewest, true]);
      }),
      { numRuns: 200 },
    );
  });

  describe('up to 40 pieces the fewest are found and proven', () => {
    const pieces = (piece: fc.Arbitrary<number>) => fc.array(piece, { minLength: 36, maxLength: 40, size: 'max' });
    test.each([
      ['any lengths', pieces(fc.double({ min: 0.05, max: STOCK_LENGTH_m, noNaN: true }))],
      ['short ones', pieces(fc.double({ min: 0.05, max: 2.5, noNaN: true }))],
      ['three to four in a bar', pieces(fc.double({ min: 1.6, max: 3.2, noNaN: true }))],
      ['near halves, thirds and quarters', awkwardLengths(40)],
    ])('%s', (_, lengths) => {
      fc.assert(
        fc.property(lengths, fc.constantFrom(0, USUAL_KERF_m), (lengths_m, kerf_m) => {
          expectSound(lengths_m, kerf_m);
          expect(nest(lengths_m, kerf_m).isFewest).toBe(true);
        }),
        { numRuns: 25 },
      );
    });

    // Triplets as Falkenauer (1996) makes them: a piece of 380 to 490, one from 250 up to half of what is left, and the rest,
    // so that the fewest bars are known and none of them has any waste.
    const triplet = fc.tuple(fc.integer({ min: 380, max: 490 }), fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true })).map(([long, share]) => {
      const rest = 1000 - long;
      const second = 250 + Math.floor(share * (rest / 2 - 250));
      return [long, second, rest - second];
    });
    test('13 bars of three pieces that fill a bar exactly', () => {
      fc.assert(
        fc.property(fc.array(triplet, { minLength: 13, maxLength: 13 }), (triplets) => {
          expect(nestPieces(triplets.flat(), 1000, 0)).toMatchObject({ bars: { length: 13 }, leastBars: 13, isFewest: true, waste_m: 0 });
        }),
        { numRuns: 25 },
      );
    });

    // Integers of 20 to 50 in bars of 100, as the second data set of Martello and Toth (1990) has them for bars of 100.
    test('whole lengths of 20 to 50 in bars of 100', () => {
      fc.assert(
        fc.property(pieces(fc.integer({ min: 20, max: 50 })), (lengths) => {
          expect(nestPieces(lengths, 100, 0).isFewest).toBe(true);
        }),
        { numRuns: 25 },
      );
    });
  });

  test.each([
    ['any lengths, many', anyLengths(400)],
    ['three to four in a bar', fc.array(fc.double({ min: 1, max: 3.5, noNaN: true }), { minLength: 41, maxLength: 140, size: 'max' })],
    ['near halves, thirds and quarters', awkwardLengths(200)],
    ['whole inches', fc.array(fc.integer({ min: 30, max: 120 }).map((inches) => inches * 0.0254), { minLength: 41, maxLength: 200, size: 'max' })],
  ])('more pieces are never overfull, each is cut once, and one stock length is the most they take too many: %s', (_, lengths) => {
    fc.assert(fc.property(lengths, fc.constantFrom(0, USUAL_KERF_m), expectNear), { numRuns: 12 });
  });

  test('the same pieces in another order take as many bars', () => {
    const lengths_m = Array.from({ length: 60 }, (_, i) => 1.2 + ((i * 37) % 60) / 25);
    expect(nest(lengths_m.toReversed()).bars.length).toBe(nest(lengths_m).bars.length);
  });
});
