import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestPattern } from '#shared/take-off/best-pattern';
import { packBars } from '#shared/take-off/pack-bars';
import { patternPlan } from '#shared/take-off/pattern-plan';
import { roundPatterns } from '#shared/take-off/round-patterns';

const anyKinds = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 5, max: 60 }), fc.integer({ min: 1, max: 4 })), { minLength: 1, maxLength: 7, selector: ([size]) => size })
  .map((kinds) => kinds.map(([size, count]) => ({ size, count })).sort((a, b) => b.size - a.size));

test('the best pattern is worth as much as the best of all patterns', () => {
  fc.assert(
    fc.property(anyKinds, fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 7, maxLength: 7 }), (kinds, worths) => {
      let best = 0;
      const every = (k: number, left: number, worth: number): void => {
        best = Math.max(best, worth);
        const kind = kinds[k];
        for (let n = 0; kind && n <= kind.count && n * kind.size <= left; n += 1) every(k + 1, left - n * kind.size, worth + n * (worths[k] ?? 0));
      };
      every(0, 100, 0);
      const found = bestPattern(kinds, worths, 100);
      expect([found.worth, found.atMost]).toEqual([best, best]);
      expect(found.pattern.reduce((sum, n, k) => sum + n * (worths[k] ?? 0), 0)).toBe(best);
      expect(found.pattern.reduce((sum, n, k) => sum + n * (kinds[k]?.size ?? 0), 0)).toBeLessThanOrEqual(100);
    }),
  );
});

test('the bound by patterns is never above what a search needs, and never below the sum of the lengths', () => {
  fc.assert(
    fc.property(anyKinds, (kinds) => {
      const { least, patterns } = patternPlan(kinds, 100);
      const sum = kinds.reduce((total, { size, count }) => total + size * count, 0);
      expect(least).toBeGreaterThanOrEqual(Math.ceil(sum / 100 - 1e-9));
      expect(packBars(kinds, 100, least - 1, 1e6).kind).toBe('none');
      for (const { pieces } of patterns) expect(pieces.reduce((total, n, k) => total + n * (kinds[k]?.size ?? 0), 0)).toBeLessThanOrEqual(100);
    }),
    { numRuns: 60 },
  );
});

// Two thirds of a bar cannot be paired: 3 pieces of 0.6 need 3 bars, though their sum needs 2.
test('sees what the sum does not', () => {
  expect(patternPlan([{ size: 60, count: 3 }], 100).least).toBe(3);
  expect(patternPlan([{ size: 101, count: 3 }], 100).least).toBe(0);
});

test('whole bars of a plan hold every piece once', () => {
  fc.assert(
    fc.property(anyKinds, (kinds) => {
      const bars = roundPatterns(kinds, 100);
      for (const [k, { count }] of kinds.entries()) expect(bars.reduce((sum, pieces) => sum + (pieces[k] ?? 0), 0)).toBe(count);
      for (const pieces of bars) expect(pieces.reduce((sum, n, k) => sum + n * (kinds[k]?.size ?? 0), 0)).toBeLessThanOrEqual(100);
    }),
    { numRuns: 60 },
  );
});

test('a search that grows too long says so', () => {
  expect(packBars([{ size: 40, count: 3 }, { size: 30, count: 9 }, { size: 21, count: 9 }], 100, 6, 5).kind).toBe('unknown');
});
