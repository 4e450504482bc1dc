import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BATTERY_RESERVE, batteryCharge_Ah } from '#shared/calculations/formulas/battery';

const HOUR_s = 3600;

describe('battery of a panel', () => {
  // By hand: 0.25 A · 24 h = 6 Ah, 1.5 A · 5 min = 0.125 Ah, together 6.125 Ah, and a fifth more 7.35 Ah.
  test('by hand: a day of standing by and five minutes of alarm', () => {
    expect(batteryCharge_Ah(0.25, 24 * HOUR_s, 1.5, 300, BATTERY_RESERVE)).toBeCloseTo(7.35, 12);
    expect(batteryCharge_Ah(0.25, 24 * HOUR_s, 1.5, 300, 1)).toBeCloseTo(6.125, 12);
  });

  test('one ampere for an hour is an ampere-hour, 3600 coulomb by definition', () => {
    expect(batteryCharge_Ah(1, HOUR_s, 0, 0, 1)).toBe(1);
  });

  // Independent of the closed form: charge added up second by second.
  test('adds up second by second', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), fc.integer({ min: 0, max: 4000 }), fc.double({ min: 0, max: 20, noNaN: true }), fc.integer({ min: 0, max: 2000 }), (standby_A, standby_s, alarm_A, alarm_s) => {
        let taken_As = 0;
        for (let t = 0; t < standby_s + alarm_s; t += 1) taken_As += t < standby_s ? standby_A : alarm_A;
        expect(batteryCharge_Ah(standby_A, standby_s, alarm_A, alarm_s, 1.2)).toBeCloseTo((taken_As * 1.2) / HOUR_s, 6);
      }),
      { numRuns: 30 },
    );
  });

  test.each([
    [-1, 1, 1, 1, 1.2],
    [1, -1, 1, 1, 1.2],
    [1, 1, Number.NaN, 1, 1.2],
    [1, 1, 1, Infinity, 1.2],
    [1, 1, 1, 1, 0.9],
  ])('%s, %s, %s, %s, %s is refused', (...given) => {
    expect(() => batteryCharge_Ah(...given)).toThrow(RangeError);
  });
});
