import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ALTITUDE_METHODS, ALTITUDE_RANGES, altitudeFactor, atmospherePressure_Pa } from '#shared/calculations/formulas/altitude';

const FOOT_m = 0.3048;
const PSI_Pa = 6894.757;

describe('altitude factor', () => {
  test.each([
    [-1000, 1.13, 1.1244],
    [0, 1, 1],
    [1000, 0.885, 0.887],
    [1500, 0.83, 0.8345],
    [2000, 0.785, 0.7846],
    [2500, 0.735, 0.7371],
    [3000, 0.69, 0.6919],
    [3500, 0.65, 0.649],
    [4000, 0.61, 0.6083],
    [4500, 0.565, 0.5697],
  ])('at %d m: ISO 14520-1 (memory) %d, ISO 2533 standard atmosphere computed apart %d', (altitude_m, iso, isa) => {
    expect(altitudeFactor(altitude_m, 'iso')).toBeCloseTo(iso, 12);
    expect(Math.abs(altitudeFactor(altitude_m, 'isa') - isa)).toBeLessThanOrEqual(1e-4);
  });

  test.each([
    [-3000, 1.11, 16.25, 1.113],
    [-2000, 1.07, 15.71, 1.074],
    [-1000, 1.04, 15.23, 1.037],
    [0, 1, 14.7, 1],
    [1000, 0.96, 14.18, 0.964],
    [2000, 0.93, 13.64, 0.93],
    [3000, 0.89, 13.12, 0.896],
    [4000, 0.86, 12.58, 0.864],
    [5000, 0.82, 12.04, 0.832],
    [6000, 0.78, 11.53, 0.801],
    [7000, 0.75, 11.03, 0.772],
    [8000, 0.72, 10.64, 0.743],
    [9000, 0.69, 10.22, 0.715],
    [10_000, 0.66, 9.77, 0.688],
  ])('at %d ft: NFPA 2001 Table 5.5.3.3 (memory) %d by %d psia, standard atmosphere %d', (altitude_ft, nfpa, pressure_psi, isa) => {
    const factor = altitudeFactor(altitude_ft * FOOT_m, 'nfpa');
    expect(factor).toBeCloseTo(nfpa, 12);
    expect(Math.abs(factor - pressure_psi / 14.696)).toBeLessThanOrEqual(0.0055);
    expect(Math.abs(altitudeFactor(altitude_ft * FOOT_m, 'isa') - isa)).toBeLessThanOrEqual(1e-3);
  });

  // Standard-atmosphere pressures that an answer on NFPA 2001 gives past its table.
  test.each([
    [10_000, 10.108],
    [15_000, 8.297],
  ])('the standard atmosphere at %d ft is %d psi', (altitude_ft, pressure_psi) => {
    expect(atmospherePressure_Pa(altitude_ft * FOOT_m, 'isa') / PSI_Pa).toBeCloseTo(pressure_psi, 2);
  });

  // ISO 2533, geopotential altitude (memory).
  test.each([
    [10_000, 26_436],
    [11_000, 22_632],
  ])('ISO 2533: at %d m %d Pa', (altitude_m, pressure_Pa) => {
    expect(Math.abs(atmospherePressure_Pa(altitude_m, 'isa') / pressure_Pa - 1)).toBeLessThan(5e-4);
  });

  test.each([
    ['iso', -500, 1.065],
    ['iso', 1250, 0.8575],
    ['iso', 4250, 0.5875],
    ['nfpa', 4500 * FOOT_m, 0.84],
    ['nfpa', -250 * FOOT_m, 1.01],
  ] as const)('straight between the rows of %s: at %d m %d', (method, altitude_m, factor) => {
    expect(altitudeFactor(altitude_m, method)).toBeCloseTo(factor, 12);
  });

  test.each([
    ['iso', -1001],
    ['iso', 4501],
    ['nfpa', -914.5],
    ['nfpa', 3048.1],
    ['isa', -2001],
    ['isa', 11_001],
    ['isa', Number.NaN],
  ] as const)('%s has no answer at %d m', (method, altitude_m) => expect(() => altitudeFactor(altitude_m, method)).toThrow(`altitude_m by the method ${method}`));

  test('higher is thinner, without jumps, by every method', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ALTITUDE_METHODS), fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 1e-3, max: 0.5, noNaN: true }), (method, share, step) => {
        const { least_m, greatest_m } = ALTITUDE_RANGES[method];
        const low_m = least_m + share * (greatest_m - least_m) * 0.999;
        const high_m = Math.min(greatest_m, low_m + step);
        const fall = altitudeFactor(low_m, method) - altitudeFactor(high_m, method);
        expect(fall).toBeGreaterThan(0);
        expect(fall).toBeLessThan((high_m - low_m) * 2e-4);
      }),
    );
  });
});
