import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  LOGARITHMS,
  airChanges,
  concentrationOf_pct,
  cylindersNeeded,
  floodingFactor,
  floodingMass_kg,
  massShareTo95,
  referenceVolume_m3,
} from '#shared/calculations/formulas/agent-quantity';
import { specificVolume_m3_kg } from '#shared/calculations/formulas/specific-volume';

const ig100 = (temperature_C: number): number => specificVolume_m3_kg('IG-100', temperature_C + 273.15, 'iso');
const fahrenheit = (temperature_F: number): number => ig100((temperature_F - 32) / 1.8);
/** Two printed figures agree when they are one unit of the last digit apart at most. */
const agrees = (actual: number, printed: number, unit: number): void => expect(Math.abs(actual - printed)).toBeLessThanOrEqual(unit * 1.000001);

const CONCENTRATIONS = [34, 37.2, 40.3, 41.9, 45.2, 47.6, 50, 62];
/** Room °C, s, and for each concentration kg/m³ and m³/m³ at 20 °C, as printed. */
const FACTORS: [number, number, string][] = [
  [-20, 0.74108, '0.5607 0.4812  0.6278 0.5388  0.6961 0.5974  0.7327 0.6289  0.8116 0.6966  0.8721 0.7485  0.9353 0.8028  1.3056 1.1206'],
  [0, 0.79968, '0.5196 0.4460  0.5818 0.4993  0.6451 0.5536  0.6790 0.5828  0.7522 0.6456  0.8082 0.6936  0.8668 0.7439  1.2100 1.0385'],
  [10, 0.82898, '0.5012 0.4302  0.5612 0.4817  0.6223 0.5341  0.6550 0.5622  0.7256 0.6227  0.7796 0.6691  0.8361 0.7176  1.1672 1.0018'],
  [20, 0.85828, '0.4841 0.4155  0.5420 0.4652  0.6010 0.5158  0.6327 0.5430  0.7008 0.6015  0.7530 0.6463  0.8076 0.6931  1.1274 0.9676'],
  [30, 0.88758, '0.4681 0.4018  0.5241 0.4499  0.5812 0.4988  0.6118 0.5251  0.6777 0.5816  0.7281 0.6249  0.7809 0.6703  1.0901 0.9356'],
  [50, 0.94618, '0.4392 0.3769  0.4917 0.4220  0.5452 0.4679  0.5739 0.4926  0.6357 0.5456  0.6830 0.5862  0.7326 0.6288  1.0226 0.8777'],
];
const US_CONCENTRATIONS = [34, 37.2, 40, 41.9, 46, 50];
/** Room °F, s in ft³/lb, and for each concentration ft³/ft³ at 70 °F, as printed. */
const US_FACTORS: [number, number, string][] = [
  [32, 12.810, '0.4476 0.5012 0.5503 0.5850 0.6638 0.7467'],
  [50, 13.279, '0.4318 0.4835 0.5309 0.5643 0.6404 0.7204'],
  [60, 13.540, '0.4235 0.4742 0.5207 0.5535 0.6280 0.7065'],
  [70, 13.800, '0.4155 0.4652 0.5108 0.5430 0.6162 0.6931'],
  [80, 14.061, '0.4078 0.4566 0.5014 0.5329 0.6048 0.6803'],
  [100, 14.582, '0.3932 0.4403 0.4834 0.5139 0.5831 0.6560'],
];

describe('flooding factors of IG-100, computed apart from the constants of EN 15004-8:2008', () => {
  const cells = FACTORS.flatMap(([temperature_C, , row]) =>
    row.split('  ').map((cell, index) => {
      const [mass = Number.NaN, volume = Number.NaN] = cell.split(' ').map(Number);
      return { temperature_C, concentration_pct: CONCENTRATIONS[index] ?? 0, mass, volume };
    }),
  );

  test('the whole table is here', () => expect(cells).toHaveLength(48));

  test.each(FACTORS)('at %d °C the agent takes %d m³/kg', (temperature_C, specificVolume) => {
    expect(ig100(temperature_C)).toBeCloseTo(specificVolume, 6);
  });

  test.each(cells)('$temperature_C °C, $concentration_pct %: $mass kg/m³', ({ temperature_C, concentration_pct, mass }) => {
    agrees(floodingMass_kg(1, ig100(temperature_C), concentration_pct, 'exact'), mass, 1e-4);
  });

  test.each(cells)('$temperature_C °C, $concentration_pct %: $volume m³/m³', ({ temperature_C, concentration_pct, volume }) => {
    agrees(floodingFactor(ig100(temperature_C), ig100(20), concentration_pct, 'exact'), volume, 1e-4);
  });
});

describe('US flooding factors of IG-100 at 70 °F, computed apart from US constants 11.976 and 0.02606 (NFPA 2001, memory)', () => {
  const cells = US_FACTORS.flatMap(([temperature_F, , row]) => row.split(' ').map((cell, index) => ({ temperature_F, concentration_pct: US_CONCENTRATIONS[index] ?? 0, factor: Number(cell) })));

  test('the whole table is here', () => expect(cells).toHaveLength(36));

  test.each(US_FACTORS)('at %d °F the agent takes %d ft³/lb', (temperature_F, specificVolume_ft3_lb) => {
    expect(Math.abs((fahrenheit(temperature_F) * 16.01846) / specificVolume_ft3_lb - 1)).toBeLessThan(5e-4);
  });

  test.each(cells)('$temperature_F °F, $concentration_pct %: $factor ft³/ft³', ({ temperature_F, concentration_pct, factor }) => {
    agrees(floodingFactor(fahrenheit(temperature_F), fahrenheit(70), concentration_pct, 'exact'), factor, 1e-4);
  });
});

describe('worked room, computed apart: 240 m³, IG-100, 40.3 %', () => {
  test.each([
    [15, 146.748, 125.951],
    [20, 144.243, 123.801],
  ])('at %d °C %d kg, %d m³ at 20 °C', (temperature_C, mass, volume) => {
    const mass_kg = floodingMass_kg(240, ig100(temperature_C), 40.3, 'exact');
    agrees(mass_kg, mass, 1e-3);
    agrees(referenceVolume_m3(mass_kg, ig100(20)), volume, 1e-3);
  });

  test.each([
    [146.748, 20, 40.83],
    [146.748, 35, 42.4],
    [146.748, 50, 43.93],
    [156.91, 35, 44.56],
  ])('%d kg at %d °C give %d vol %%', (mass_kg, temperature_C, concentration_pct) => {
    agrees(concentrationOf_pct(mass_kg, ig100(temperature_C), 240), concentration_pct, 0.01);
  });

  test('containers of 31.382 kg: 4.676, so 5 with 156.91 kg', () => {
    agrees(146.748 / 31.382, 4.676, 1e-3);
    expect(cylindersNeeded(146.748, 31.382)).toBe(5);
    expect(5 * 31.382).toBeCloseTo(156.91, 6);
  });
});

describe('quantity', () => {
  test('arithmetic: 2.303·log10 is 1.000180 times ln', () => {
    expect(airChanges(40.3, '2.303') / airChanges(40.3, 'exact')).toBeCloseTo(1.00018, 6);
  });

  // Computed apart from ln(100/(100 − 0.95·C))/ln(100/(100 − C)).
  test.each([
    [34, 0.9388],
    [40.3, 0.9357],
    [45.2, 0.9328],
    [50, 0.9296],
  ])('95 parts in 100 of %d vol %% are reached with %d of the mass', (concentration_pct, share) => {
    agrees(massShareTo95(concentration_pct), share, 1e-4);
    expect(massShareTo95(concentration_pct)).toBeCloseTo(airChanges(0.95 * concentration_pct, 'exact') / airChanges(concentration_pct, 'exact'), 12);
  });

  test.each([
    ['two exact fills', 49.4, 24.7, 2],
    ['noise of a sum, 0.1 + 0.2 for 3 × 0.1', 0.1 + 0.2, 0.1, 3],
    ['a millionth too much needs one more', 49.4 * (1 + 1e-6), 24.7, 3],
    ['nothing', 0, 24.7, 0],
    ['a trace', 1e-6, 24.7, 1],
  ])('cylinders: %s', (_, mass_kg, massEach_kg, count) => {
    expect(cylindersNeeded(mass_kg, massEach_kg)).toBe(count);
  });

  test('the cylinders hold what is needed, and one less does not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 10_000, noNaN: true }), fc.double({ min: 1, max: 200, noNaN: true }), (mass_kg, massEach_kg) => {
        const count = cylindersNeeded(mass_kg, massEach_kg);
        expect(count * massEach_kg).toBeGreaterThanOrEqual(mass_kg * (1 - 2e-9));
        expect((count - 1) * massEach_kg).toBeLessThan(mass_kg);
      }),
    );
  });

  const volumes = fc.double({ min: 0.1, max: 1e5, noNaN: true });
  const concentrations = fc.double({ min: 0.5, max: 90, noNaN: true });
  const temperatures = fc.double({ min: -20, max: 60, noNaN: true });
  const mores = fc.double({ min: 1.001, max: 1.1, noNaN: true });

  test('more room, more concentration and a colder room need more agent', () => {
    fc.assert(
      fc.property(volumes, concentrations, temperatures, mores, fc.constantFrom(...LOGARITHMS), (volume_m3, concentration_pct, temperature_C, more, logarithm) => {
        const mass_kg = floodingMass_kg(volume_m3, ig100(temperature_C), concentration_pct, logarithm);
        expect(floodingMass_kg(volume_m3 * more, ig100(temperature_C), concentration_pct, logarithm) / mass_kg).toBeCloseTo(more, 9);
        expect(floodingMass_kg(volume_m3, ig100(temperature_C), concentration_pct * more, logarithm)).toBeGreaterThan(mass_kg);
        expect(floodingMass_kg(volume_m3, ig100(temperature_C - 1), concentration_pct, logarithm)).toBeGreaterThan(mass_kg);
      }),
    );
  });

  test('the concentration of a mass is the one it was worked out for, and back', () => {
    fc.assert(
      fc.property(volumes, concentrations, temperatures, (volume_m3, concentration_pct, temperature_C) => {
        const mass_kg = floodingMass_kg(volume_m3, ig100(temperature_C), concentration_pct, 'exact');
        const back_pct = concentrationOf_pct(mass_kg, ig100(temperature_C), volume_m3);
        expect(back_pct).toBeCloseTo(concentration_pct, 9);
        expect(floodingMass_kg(volume_m3, ig100(temperature_C), back_pct, 'exact') / mass_kg).toBeCloseTo(1, 9);
      }),
    );
  });

  test.each([
    ['volume_m3', () => floodingMass_kg(0, 0.8, 40, 'exact')],
    ['specificVolume_m3_kg', () => floodingMass_kg(1, Number.NaN, 40, 'exact')],
    ['concentration_pct', () => floodingMass_kg(1, 0.8, 100, 'exact')],
    ['concentration_pct', () => airChanges(-1, 'exact')],
    ['mass_kg', () => concentrationOf_pct(-1, 0.8, 1)],
    ['massEach_kg', () => cylindersNeeded(1, 0)],
    ['concentration_pct', () => massShareTo95(0)],
  ])('refuses, naming %s', (name, run) => expect(run).toThrow(name));
});
