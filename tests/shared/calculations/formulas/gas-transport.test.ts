import { describe, expect, test } from 'vitest';
import { nitrogenConductivity_W_mK, nitrogenViscosity_Pas } from '#shared/calculations/formulas/gas-transport';
import { nitrogenDensity_kg_m3 } from '#shared/calculations/formulas/nitrogen';

const MOLAR_MASS = 0.02801348;

describe('viscosity of nitrogen', () => {
  // Check points printed in Lemmon and Jacobsen 2004.
  test.each([
    [300, 0, 17.877, 3],
    [300, 5, 20.743, 3],
    [200, 10, 21.081, 3],
    [100, 25, 79.7418, 4],
  ])('Lemmon and Jacobsen 2004: %d K, %d mol/L is %d µPa·s', (temperature_K, density_mol_L, expected, digits) => {
    expect(nitrogenViscosity_Pas(temperature_K, density_mol_L * 1000 * MOLAR_MASS) * 1e6).toBeCloseTo(expected, digits);
  });

  // The same equation with densities of Span et al. 2000, evaluated independently.
  test.each([
    [1.01325, 0, 16.63],
    [1.01325, 15, 17.34],
    [1.01325, 20, 17.57],
    [60, 20, 18.67],
    [200, 15, 23.05],
    [200, 20, 23.1],
    [200, 50, 23.57],
    [300, 15, 26.97],
    [300, 20, 26.89],
    [300, 50, 26.72],
  ])('Lemmon and Jacobsen 2004: %d bar, %d °C is %d µPa·s', (pressure_bar, temperature_C, expected) => {
    const temperature_K = temperature_C + 273.15;
    expect(nitrogenViscosity_Pas(temperature_K, nitrogenDensity_kg_m3(pressure_bar * 1e5, temperature_K)) * 1e6).toBeCloseTo(expected, 2);
  });

  // Sutherland's law with 16.63 µPa·s at 273.15 K and S = 107 K: textbook, memory.
  test.each([200, 250, 300, 350])('Sutherland, memory: thin gas at %d K within 0.5 %%', (temperature_K) => {
    const sutherland = 1.663e-5 * (temperature_K / 273.15) ** 1.5 * ((273.15 + 107) / (temperature_K + 107));
    expect(Math.abs(nitrogenViscosity_Pas(temperature_K) / sutherland - 1)).toBeLessThan(5e-3);
  });

  test('what is said about the thin gas holds: 6 % low at 60 bar, 25 % at 200', () => {
    expect(1 - nitrogenViscosity_Pas(293.15) / nitrogenViscosity_Pas(293.15, 69.356)).toBeCloseTo(0.06, 2);
    expect(1 - nitrogenViscosity_Pas(288.15) / nitrogenViscosity_Pas(288.15, 223.187)).toBeCloseTo(0.25, 2);
  });

  test('outside the range of the equation nothing is answered', () => {
    expect(() => nitrogenViscosity_Pas(60)).toThrow('temperature_K');
    expect(() => nitrogenViscosity_Pas(300, -1)).toThrow('density_kg_m3');
  });
});

describe('thermal conductivity of nitrogen', () => {
  // Check points printed in Lemmon and Jacobsen 2004, memory.
  test.each([
    [300, 0, 25.9361],
    [300, 5, 32.7694],
  ])('Lemmon and Jacobsen 2004, memory: %d K, %d mol/L is %d mW/(m·K)', (temperature_K, density_mol_L, expected) => {
    expect(nitrogenConductivity_W_mK(temperature_K, density_mol_L * 1000 * MOLAR_MASS) * 1e3).toBeCloseTo(expected, 3);
  });

  test('Lemmon and Jacobsen 2004, memory: 200 K, 10 mol/L is 36.0099 mW/(m·K) with the critical enhancement, 3 % of it', () => {
    expect((nitrogenConductivity_W_mK(200, 10_000 * MOLAR_MASS) * 1e3) / 36.0099).toBeCloseTo(0.975, 2);
  });

  test('Lemmon and Jacobsen 2004, memory: liquid at 100 K, 25 mol/L is 103.834 mW/(m·K), 0.3 % of it critical enhancement', () => {
    expect((nitrogenConductivity_W_mK(100, 25_000 * MOLAR_MASS) * 1e3) / 103.834).toBeCloseTo(0.997, 3);
  });

  test('outside the range of the equation nothing is answered', () => {
    expect(() => nitrogenConductivity_W_mK(60, 0)).toThrow('temperature_K');
    expect(() => nitrogenConductivity_W_mK(300, 1000)).toThrow('density_kg_m3');
  });
});
