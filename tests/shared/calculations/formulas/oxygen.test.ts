import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { concentrationForOxygen_pct, residualOxygen_pct, seaLevelOxygen_pct } from '#shared/calculations/formulas/oxygen';

describe('oxygen', () => {
  test.each([
    [34, 13.83],
    [37.2, 13.16],
    [38.5, 12.88],
    [40.3, 12.51],
    [41.9, 12.17],
    [43, 11.94],
    [45.2, 11.48],
    [47.6, 10.98],
    [52, 10.06],
    [62, 7.96],
  ])('%d %% of agent leave %d %% of oxygen (base 20.95 %%, computed apart)', (concentration_pct, oxygen_pct) => {
    expect(Math.abs(residualOxygen_pct(concentration_pct, 20.95) - oxygen_pct)).toBeLessThanOrEqual(0.01);
  });

  test.each([
    [20.95, 12, 42.72],
    [20.95, 10, 52.27],
    [20.95, 8, 61.81],
    [20.9, 12, 42.58],
    [20.9, 10, 52.15],
    [20.9, 8, 61.72],
  ])('base %d %%: %d %% of oxygen at %d %% of agent (computed apart; NFPA 2001 has 43, 52 and 62 %%)', (base_pct, oxygen_pct, concentration_pct) => {
    expect(Math.abs(concentrationForOxygen_pct(oxygen_pct, base_pct) - concentration_pct)).toBeLessThanOrEqual(0.01);
  });

  test('worked room, computed apart: 156.91 kg at 35 °C, 44.56 %, leave 11.61 %', () => {
    expect(residualOxygen_pct(44.56, 20.95)).toBeCloseTo(11.61, 2);
  });

  test('worked variant, computed apart: 40.3 % at 1500 m is worth 10.4 % at sea level', () => {
    expect(seaLevelOxygen_pct(residualOxygen_pct(40.3, 20.95), 0.83)).toBeCloseTo(10.38, 2);
  });

  test('base 21 %: half the air, half the oxygen', () => expect(residualOxygen_pct(50, 21)).toBe(10.5));

  test('more agent leaves less oxygen, and the way back is the same', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 99, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true }), fc.constantFrom(20.95, 20.9, 21), (concentration_pct, more, base_pct) => {
        const oxygen_pct = residualOxygen_pct(concentration_pct, base_pct);
        expect(residualOxygen_pct(concentration_pct + more, base_pct)).toBeLessThan(oxygen_pct);
        expect(concentrationForOxygen_pct(oxygen_pct, base_pct)).toBeCloseTo(concentration_pct, 9);
      }),
    );
  });

  test.each([
    ['concentration_pct', () => residualOxygen_pct(101, 20.95)],
    ['oxygenBase_pct', () => residualOxygen_pct(40, 0.2095)],
    ['oxygen_pct', () => concentrationForOxygen_pct(21, 20.95)],
    ['altitudeFactor', () => seaLevelOxygen_pct(12, 0)],
  ])('refuses, naming %s', (name, run) => expect(run).toThrow(name));
});
