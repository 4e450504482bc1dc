import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roundCut } from '#shared/take-off/round-cut';

const INCH_m = 0.0254;

describe('rounding of a cut', () => {
  test.each([
    [118.245, 118.25, 'up', -0.005],
    [118.22, 118.25, 'up', -0.03],
    [118.21, 118.1875, 'down', 0.0225],
    [118.25, 118.25, 'exact', 0],
    [118.03125, 118.0625, 'up', -0.03125],
  ] as const)('%d in is cut to %d in', (cut_in, shown_in, way, remainder_in) => {
    const rounded = roundCut(cut_in * INCH_m, 'feet');
    expect(rounded.length_m / INCH_m).toBeCloseTo(shown_in, 9);
    expect(rounded.way).toBe(way);
    expect(rounded.remainder_m / INCH_m).toBeCloseTo(remainder_in, 9);
  });

  test('3003.42 mm are cut to 3003 mm', () => {
    expect(roundCut(3.003423, 'metric')).toMatchObject({ way: 'down', length_m: expect.closeTo(3.003, 9), remainder_m: expect.closeTo(0.000423, 9) });
  });

  test('is off by half a step at most, and nothing gets lost', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 7, noNaN: true }), fc.constantFrom('feet' as const, 'metric' as const), (cut_m, lengths) => {
        const { length_m, remainder_m } = roundCut(cut_m, lengths);
        expect(Math.abs(remainder_m)).toBeLessThanOrEqual((lengths === 'feet' ? INCH_m / 32 : 0.0005) + 1e-9);
        expect(length_m + remainder_m).toBeCloseTo(cut_m, 12);
      }),
    );
  });
});
