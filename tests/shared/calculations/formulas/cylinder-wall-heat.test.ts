import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wallHeat_W_m2K } from '#shared/calculations/formulas/cylinder-wall-heat';
import { nitrogenConductivity_W_mK, nitrogenViscosity_Pas } from '#shared/calculations/formulas/gas-transport';
import { nitrogenDensity_kg_m3, nitrogenState } from '#shared/calculations/formulas/nitrogen';

describe('heat from the steel of a cylinder', () => {
  // Worked by hand: g·β·ΔT·ρ²·cp/(λ·η) = 9.80665·(2/530)·30·100²·1250/(0.03·1.9e-5) = 2.4345e13, cube root 28 984; 0.13·0.03·28 984 = 113.03.
  test('worked by hand: 100 kg/m³, 250 K gas, 280 K steel gives 113.0 W/(m²·K)', () => {
    expect(wallHeat_W_m2K(100, 250, 280, 1250, 1.9e-5, 0.03)).toBeCloseTo(113.03, 2);
  });

  // McAdams' short form for air at room temperature, h = 1.31·ΔT^(1/3), textbook, memory; Nu 0.13 with properties at 20 °C lies 20 % above it.
  test('McAdams, memory: air at a turbulent wall is 1.31·ΔT^(1/3) within a quarter', () => {
    const h = wallHeat_W_m2K(1.205, 288.15, 298.15, 1006, 18.1e-6, 0.0257);
    expect(Math.abs(h / (1.31 * 10 ** (1 / 3)) - 1)).toBeLessThan(0.25);
  });

  test('a cylinder at 200 bar takes hundreds of times what still air takes at a wall', () => {
    const gas = nitrogenState(nitrogenDensity_kg_m3(200e5, 288.15), 288.15);
    const h = wallHeat_W_m2K(gas.density_kg_m3, 268.15, 288.15, gas.cp_J_kgK, nitrogenViscosity_Pas(268.15, gas.density_kg_m3), nitrogenConductivity_W_mK(268.15, gas.density_kg_m3));
    expect(h).toBeGreaterThan(100);
    expect(h).toBeLessThan(300);
  });

  test('it goes with ρ^(2/3) and ΔT^(1/3), either way, and is nothing when both are equally warm', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 300, noNaN: true }), fc.double({ min: 0.1, max: 30, noNaN: true }), (density, half_K) => {
        const between = (factor: number, span: number): number => wallHeat_W_m2K(density * factor, 280 - span, 280 + span, 1100, 2e-5, 0.026);
        expect(between(8, half_K) / between(1, half_K)).toBeCloseTo(4, 9);
        expect(between(1, 8 * half_K) / between(1, half_K)).toBeCloseTo(2, 9);
        expect(between(1, -half_K)).toBeCloseTo(between(1, half_K), 9);
      }),
    );
    expect(wallHeat_W_m2K(100, 280, 280, 1100, 2e-5, 0.026)).toBe(0);
  });

  test('what no gas has is refused', () => {
    expect(() => wallHeat_W_m2K(0, 280, 290, 1100, 2e-5, 0.026)).toThrow('density_kg_m3');
    expect(() => wallHeat_W_m2K(1, 280, 0, 1100, 2e-5, 0.026)).toThrow('wallTemperature_K');
  });
});
