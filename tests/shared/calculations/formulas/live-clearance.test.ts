import { describe, expect, test } from 'vitest';
import { liveClearance_m } from '#shared/calculations/formulas/live-clearance';

const INCH_m = 0.0254;
const toEarth_V = (nominal_kV: number): number => (nominal_kV * 1000) / Math.sqrt(3);

describe('clearance to live parts', () => {
  // NEC 490.24, outdoors, phase to ground: nominal kV and inches, read; up to 161 kV the suppression standards print the same.
  test.each([[13.8, 7], [23, 10], [34.5, 13], [46, 17], [69, 25], [115, 42], [138, 50], [161, 58]])('NEC 490.24: %s kV take %s in', (nominal_kV, clearance_in) => {
    expect((liveClearance_m(toEarth_V(nominal_kV)) ?? 0) / INCH_m).toBeCloseTo(clearance_in, 9);
  });

  // NFPA 2001 style table (memory), the largest clearance of each group of insulation levels.
  test.each([[230, 84], [345, 104], [500, 144], [765, 167]])('%s kV take %s in', (nominal_kV, clearance_in) => {
    expect((liveClearance_m(toEarth_V(nominal_kV)) ?? 0) / INCH_m).toBeCloseTo(clearance_in, 9);
  });

  test('between two rows the larger holds, and no voltage takes less than a lower one', () => {
    expect(liveClearance_m(toEarth_V(13.801))).toBeCloseTo(10 * INCH_m, 9);
    expect(liveClearance_m(0)).toBeCloseTo(7 * INCH_m, 9);
    const all = Array.from({ length: 400 }, (_, i) => liveClearance_m(i * 1000) ?? 0);
    expect(all.every((each, i) => i === 0 || each >= (all[i - 1] ?? 0))).toBe(true);
  });

  test('above the table it does not say, below 0 it refuses', () => {
    expect(liveClearance_m(toEarth_V(766))).toBeUndefined();
    expect(() => liveClearance_m(-1)).toThrow('toEarth_V');
  });
});
