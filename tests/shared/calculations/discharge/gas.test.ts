import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { IDEAL_NITROGEN, REAL_NITROGEN, stateWithEnergy, throttledTemperature_K } from '#shared/calculations/discharge/gas';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';

/** Computed from the equation of Span et al. 2000 by a separate program. */
test.each([
  [200, 60, -4.0],
  [200, 1.01325, -18.9],
  [300, 60, -9.9],
  [300, 1.01325, -25.5],
])('throttled from %d bar and 15 °C to %d bar: %d °C (computed from Span et al. 2000)', (from_bar, to_bar, celsius) => {
  const { enthalpy_J_kg } = REAL_NITROGEN.stateOf(REAL_NITROGEN.densityOf(from_bar * 1e5, 288.15), 288.15);
  const temperature_K = throttledTemperature_K(REAL_NITROGEN, enthalpy_J_kg, to_bar * 1e5, 288.15) ?? 0;
  expect(temperature_K - 273.15).toBeGreaterThan(celsius - 0.07);
  expect(temperature_K - 273.15).toBeLessThan(celsius + 0.07);
});

test('an ideal gas of two atoms has c_v = 5/2·R and c_p = 7/2·R', () => {
  const { cv_J_kgK, cp_J_kgK, pressure_Pa } = IDEAL_NITROGEN.stateOf(10, 300);
  expect(cv_J_kgK / NITROGEN_R_J_kgK).toBeCloseTo(2.5, 12);
  expect(cp_J_kgK / NITROGEN_R_J_kgK).toBeCloseTo(3.5, 12);
  expect(pressure_Pa).toBeCloseTo(10 * NITROGEN_R_J_kgK * 300, 6);
});

test('an ideal gas keeps its temperature when it is throttled', () => {
  const { enthalpy_J_kg } = IDEAL_NITROGEN.stateOf(200, 260);
  expect(throttledTemperature_K(IDEAL_NITROGEN, enthalpy_J_kg, 1e5, 300)).toBeCloseTo(260, 9);
});

describe.each([
  ['real', REAL_NITROGEN],
  ['ideal', IDEAL_NITROGEN],
] as const)('%s nitrogen', (_, gas) => {
  test('density and inner energy give back the temperature, from any guess', () => {
    fc.assert(
      fc.property(fc.double({ min: 130, max: 400, noNaN: true }), fc.double({ min: 0.5, max: 350, noNaN: true }), fc.double({ min: 130, max: 400, noNaN: true }), (temperature_K, density_kg_m3, guess_K) => {
        const { internalEnergy_J_kg } = gas.stateOf(density_kg_m3, temperature_K);
        expect(Math.abs((stateWithEnergy(gas, density_kg_m3, internalEnergy_J_kg, guess_K)?.temperature_K ?? 0) - temperature_K)).toBeLessThan(1e-3);
      }),
    );
  });
  test('heat capacities are the slopes of energy and enthalpy', () => {
    const near = gas.stateOf(80, 250);
    const warmer = gas.stateOf(80, 250.01);
    expect((warmer.internalEnergy_J_kg - near.internalEnergy_J_kg) / 0.01 / near.cv_J_kgK).toBeCloseTo(1, 4);
    const alike = gas.stateOf(gas.densityOf(near.pressure_Pa, 250.01), 250.01);
    expect((alike.enthalpy_J_kg - near.enthalpy_J_kg) / 0.01 / near.cp_J_kgK).toBeCloseTo(1, 4);
  });
});

test('colder than the equation goes there is no answer instead of a wrong one', () => {
  const coldest = REAL_NITROGEN.stateOf(50, REAL_NITROGEN.least_K);
  expect(stateWithEnergy(REAL_NITROGEN, 50, coldest.internalEnergy_J_kg - 1000, 150)).toBeUndefined();
  const cold = REAL_NITROGEN.stateOf(REAL_NITROGEN.densityOf(150e5, 140), 140);
  expect(throttledTemperature_K(REAL_NITROGEN, cold.enthalpy_J_kg, 10e5, 140)).toBeUndefined();
});
