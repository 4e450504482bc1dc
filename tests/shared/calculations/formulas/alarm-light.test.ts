import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alarmLightSide_m } from '#shared/calculations/formulas/alarm-light';

const FOOT_m = 0.3048;

describe('light on a wall', () => {
  // NFPA 72, wall-mounted visible appliances, one light in a room: 15 cd 20 ft, 30 cd 28 ft, 75 cd 45 ft, 110 cd 54 ft, 177 cd 68 ft (memory).
  test.each([
    [14.9, 0],
    [15, 20],
    [29, 20],
    [30, 28],
    [75, 45],
    [109, 50],
    [110, 54],
    [177, 68],
    [10_000, 130],
    [0, 0],
  ])('%s cd serve a square of %s ft', (light_cd, side_ft) => {
    expect(alarmLightSide_m(light_cd)).toBeCloseTo(side_ft * FOOT_m, 12);
  });

  // Independent of the table: the standard wants 0.0375 lm/ft² at the far wall, I = 0.0375·d², from which the table is rounded.
  test('no room of the table is lit less than 0.0375 lm/ft² at its far wall', () => {
    fc.assert(
      fc.property(fc.double({ min: 15, max: 1000, noNaN: true }), (light_cd) => {
        const side_ft = alarmLightSide_m(light_cd) / FOOT_m;
        expect(light_cd / side_ft ** 2).toBeGreaterThanOrEqual(0.0375 * 0.99);
      }),
    );
  });

  test('a stronger light serves no smaller room', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 700, noNaN: true }), fc.double({ min: 0, max: 700, noNaN: true }), (one, other) => {
        expect(alarmLightSide_m(Math.max(one, other))).toBeGreaterThanOrEqual(alarmLightSide_m(Math.min(one, other)));
      }),
    );
  });

  test('what is no figure is refused', () => {
    expect(() => alarmLightSide_m(-1)).toThrow(RangeError);
    expect(() => alarmLightSide_m(Number.NaN)).toThrow(RangeError);
  });
});
