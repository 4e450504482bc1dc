import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pipeGasOf } from '#shared/calculations/discharge/pipe-gas';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';
import { nitrogenDensity_kg_m3 } from '#shared/calculations/formulas/nitrogen';
import { chokedFlowFunction, realChokedFlux_kg_m2s } from '#shared/calculations/formulas/orifice';

const gasAt = pipeGasOf('real');

/** Computed from the equation of Span et al. 2000 along an isentrope by a separate program. */
test.each([
  [10, 1.004],
  [40, 1.0161],
  [60, 1.0239],
  [100, 1.0385],
  [200, 1.0644],
  [300, 1.0726],
])('choked flux of real over ideal nitrogen at 15 °C and %d bar: %d (computed from Span et al. 2000)', (bar, ratio) => {
  expect(gasAt(288.15).fluxRatio(bar * 1e5)).toBeGreaterThan(ratio - 3e-4);
  expect(gasAt(288.15).fluxRatio(bar * 1e5)).toBeLessThan(ratio + 3e-4);
});

test('between its points the table keeps to what it stands for', () => {
  fc.assert(
    fc.property(fc.double({ min: 175, max: 330, noNaN: true }), fc.double({ min: 1e5, max: 3e7, noNaN: true }), (temperature_K, pressure_Pa) => {
      const gas = gasAt(temperature_K);
      const compressibility = pressure_Pa / (nitrogenDensity_kg_m3(pressure_Pa, temperature_K) * NITROGEN_R_J_kgK * temperature_K);
      expect(Math.abs(gas.compressibility(pressure_Pa) / compressibility - 1)).toBeLessThan(2e-4);
      const ideal = (chokedFlowFunction(1.4) * pressure_Pa) / Math.sqrt(NITROGEN_R_J_kgK * temperature_K);
      expect(Math.abs(gas.fluxRatio(pressure_Pa) / (realChokedFlux_kg_m2s(pressure_Pa, temperature_K) / ideal) - 1)).toBeLessThan(temperature_K > 230 ? 4e-4 : 2e-3);
    }),
    { numRuns: 300 },
  );
});

test('where the throat would be too cold for the equation, that of warmer gas is taken', () => {
  const ratio = gasAt(135).fluxRatio(20e5);
  expect(ratio).toBeGreaterThan(0.9);
  expect(ratio).toBeLessThan(1.2);
});

test('an ideal gas has neither', () => {
  const gas = pipeGasOf('ideal')(80);
  expect([gas.compressibility(3e7), gas.fluxRatio(3e7)]).toEqual([1, 1]);
  expect(gas.viscosity_Pas).toBeGreaterThan(0);
});
