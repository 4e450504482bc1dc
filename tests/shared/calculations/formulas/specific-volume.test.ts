import { describe, expect, test } from 'vitest';
import { specificVolume_m3_kg } from '#shared/calculations/formulas/specific-volume';

describe('specific volume', () => {
  // EN 15004-8:2008: k1 0.79968, k2 0.00293.
  test.each([
    [-20, 0.74108],
    [0, 0.79968],
    [10, 0.82898],
    [20, 0.85828],
    [30, 0.88758],
    [50, 0.94618],
  ])('EN 15004-8: IG-100 at %d °C', (temperature_C, expected) => {
    expect(specificVolume_m3_kg('IG-100', temperature_C + 273.15, 'iso')).toBeCloseTo(expected, 6);
  });

  test.each([
    ['EN 15004-7', 'IG-01', 'iso', 0.60228, 5],
    ['NFPA 2001, memory', 'IG-01', 'nfpa', 0.6101, 6],
    ['EN 15004-9, memory', 'IG-55', 'iso', 0.7082, 6],
    ['EN 15004-10, k2 memory', 'IG-541', 'iso', 0.70579, 6],
  ] as const)('%s: %s (%s) at 20 °C', (_, agent, constants, expected, digits) => {
    expect(specificVolume_m3_kg(agent, 293.15, constants)).toBeCloseTo(expected, digits);
  });

  // Ideal gas R·T/(M·p) at 101 325 Pa, molar masses in g/mol of IUPAC.
  test.each([
    ['IG-100', 28.0134],
    ['IG-01', 39.948],
    ['IG-55', 33.981],
    ['IG-541', 34.067],
  ] as const)('%s is the ideal gas within 0.06 %%', (agent, molarMass) => {
    const ideal = (8.314462618 * 293.15) / (molarMass / 1000) / 101_325;
    expect(Math.abs(specificVolume_m3_kg(agent, 293.15, 'iso') / ideal - 1)).toBeLessThan(6e-4);
  });

  test('a temperature that no room has is refused', () => {
    expect(() => specificVolume_m3_kg('IG-100', 20, 'iso')).toThrow('temperature_K');
  });
});
