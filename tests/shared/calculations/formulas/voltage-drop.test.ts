import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { END_OF_BATTERY_V, longestRun_m, voltageDrops_V } from '#shared/calculations/formulas/voltage-drop';
import { wireResistance_ohm_m } from '#shared/calculations/formulas/wire';

describe('longest run', () => {
  // Computed by hand from NEC Chapter 9 Table 8, solid, 75 °C: 20.4 V to 16 V at 2.0 A, feet one way.
  test.each([
    ['18', 141.6],
    ['16', 224.9],
    ['14', 358.3],
    ['12', 569.9],
    ['10', 909.1],
  ] as const)('NEC Table 8: %s AWG reaches %d ft', (gauge, expected_ft) => {
    const length_m = longestRun_m(END_OF_BATTERY_V, 16, 2, wireResistance_ohm_m(gauge, 'solid', 348.15));
    expect(Math.abs(length_m / 0.3048 - expected_ft)).toBeLessThanOrEqual(0.051);
  });

  // By hand: 4.4 V/(2·2 A·6.390 Ω/1000 ft), copper at 20 °C by the factor 0.00323.
  test('by hand: cool copper reaches farther, 18 AWG at 20 °C 172.1 ft', () => {
    expect(longestRun_m(20.4, 16, 2, wireResistance_ohm_m('18', 'solid', 293.15)) / 0.3048).toBeCloseTo(172.15, 1);
  });

  test('UL 864 and NFPA 72 practice, memory: 85 % of 24 V', () => {
    expect(END_OF_BATTERY_V).toBeCloseTo(0.85 * 24, 12);
  });

  test('inverse: a device at the longest run has its least voltage', () => {
    const volts = fc.double({ min: 5, max: 24, noNaN: true });
    fc.assert(
      fc.property(volts, volts, fc.double({ min: 0.05, max: 5, noNaN: true }), fc.double({ min: 0.003, max: 0.03, noNaN: true }), (one, other, current_A, resistance) => {
        const [least_V, supply_V] = [Math.min(one, other), Math.max(one, other)];
        const distance_m = longestRun_m(supply_V, least_V, current_A, resistance);
        expect(supply_V - (voltageDrops_V([{ distance_m, current_A }], resistance)[0] ?? Number.NaN)).toBeCloseTo(least_V, 9);
        expect(longestRun_m(least_V, supply_V, current_A, resistance)).toBe(0);
      }),
    );
  });

  test('no current is refused, not endless', () => {
    expect(() => longestRun_m(20.4, 16, 0, 0.01)).toThrow('current_A');
  });
});
