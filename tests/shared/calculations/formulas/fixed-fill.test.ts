import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { concentrationOf_pct, cylindersNeeded, floodingMass_kg } from '#shared/calculations/formulas/agent-quantity';
import { type CountedFill, type FixedFillBand, feasibleCounts, fixedFillBand } from '#shared/calculations/formulas/fixed-fill';
import { residualOxygen_pct, seaLevelOxygen_pct } from '#shared/calculations/formulas/oxygen';
import { specificVolume_m3_kg } from '#shared/calculations/formulas/specific-volume';

const COLD = specificVolume_m3_kg('IG-100', 291.15, 'iso');
const HOT = specificVolume_m3_kg('IG-100', 300.15, 'iso');

/** Invented unit: 24.7 kg a cylinder, 18 to 27 °C, 40.3 %, not below 12 % of oxygen, sea level. */
const ONE: CountedFill = {
  massEach_kg: 24.7,
  count: 1,
  concentration_pct: 40.3,
  coldSpecificVolume_m3_kg: COLD,
  hotSpecificVolume_m3_kg: HOT,
  oxygenLimit_pct: 12,
  oxygenBase_pct: 20.95,
  altitudeFactor: 1,
  logarithm: 'exact',
};
function bandOf(change: Partial<CountedFill> = {}): FixedFillBand {
  const band = fixedFillBand({ ...ONE, ...change });
  if (!band) throw new Error('no band');
  return band;
}

describe('fixed-fill band, worked apart for an invented unit', () => {
  test('one cylinder: 38.95 to 40.82 m³', () => {
    expect(Math.abs(bandOf().least_m3 - 38.95)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(bandOf().greatest_m3 - 40.82)).toBeLessThanOrEqual(0.01);
  });

  test('at 37.2 % up to 45.26 m³', () => expect(Math.abs(bandOf({ concentration_pct: 37.2 }).greatest_m3 - 45.26)).toBeLessThanOrEqual(0.01));

  test('at 41.9 % empty', () => expect(bandOf({ concentration_pct: 41.9 }).least_m3).toBeGreaterThan(bandOf({ concentration_pct: 41.9 }).greatest_m3));

  test('with 10 % of oxygen from 29.35 m³', () => expect(Math.abs(bandOf({ oxygenLimit_pct: 10 }).least_m3 - 29.35)).toBeLessThanOrEqual(0.01));

  test.each([
    ['a hut', 39.87, [1]],
    ['an L-shaped archive', 199.84, [5]],
    ['room 201', 79.51, [2]],
    ['room 202', 39.76, [1]],
    ['room 203', 118.25, [3]],
    ['room 204', 40.14, [1]],
    ['room 205', 78.49, [2]],
    ['room 206', 89.2, []],
  ])('%s of %d m³ takes %j cylinders', (_, volume_m3, counts) => expect(feasibleCounts(volume_m3, ONE, 20)).toEqual(counts));
});

describe('rooms worked apart for an invented unit', () => {
  test.each([
    ['a hut', 39.87, 24.13, 1],
    ['an L-shaped archive', 199.84, 120.93, 5],
    ['room 206', 89.2, 53.98, 3],
  ])('%s of %d m³ needs %d kg in %d cylinders', (_, volume_m3, needed_kg, count) => {
    const mass_kg = floodingMass_kg(volume_m3, COLD, 40.3, 'exact');
    expect(Math.abs(mass_kg - needed_kg)).toBeLessThanOrEqual(0.01);
    expect(cylindersNeeded(mass_kg, 24.7)).toBe(count);
  });

  test.each([
    ['a hut', 39.87, 24.7, 12.15],
    ['an L-shaped archive', 199.84, 123.5, 12.17],
    ['room 201', 79.51, 49.4, 12.14],
    ['room 202', 39.76, 24.7, 12.14],
    ['room 203', 118.25, 74.1, 12.08],
    ['room 204', 40.14, 24.7, 12.2],
    ['room 205', 78.49, 49.4, 12.05],
    ['room 206', 89.2, 74.1, 10.1],
  ])('%s of %d m³ with %d kg keeps %d %% of oxygen at 27 °C', (_, volume_m3, mass_kg, oxygen_pct) => {
    expect(Math.abs(residualOxygen_pct(concentrationOf_pct(mass_kg, HOT, volume_m3), 20.95) - oxygen_pct)).toBeLessThanOrEqual(0.01);
  });
});

describe('fixed-fill band', () => {
  const altitudes = fc.double({ min: 0.7, max: 1.1, noNaN: true });
  const counts = fc.integer({ min: 1, max: 40 });

  test('at its ends the oxygen and the mass are just enough', () => {
    fc.assert(
      fc.property(counts, altitudes, fc.constantFrom(12, 10, 8), (count, altitudeFactor, oxygenLimit_pct) => {
        const { least_m3, greatest_m3 } = bandOf({ count, altitudeFactor, oxygenLimit_pct });
        const hot_pct = concentrationOf_pct(count * 24.7, HOT / altitudeFactor, least_m3);
        expect(seaLevelOxygen_pct(residualOxygen_pct(hot_pct, 20.95), altitudeFactor)).toBeCloseTo(oxygenLimit_pct, 9);
        expect(floodingMass_kg(greatest_m3, COLD, 40.3, 'exact') * altitudeFactor).toBeCloseTo(count * 24.7, 9);
      }),
    );
  });

  test('it grows with the count, and the altitude moves its upper end up', () => {
    fc.assert(
      fc.property(counts, altitudes, (count, altitudeFactor) => {
        expect(bandOf({ count, altitudeFactor }).least_m3 / bandOf({ altitudeFactor }).least_m3).toBeCloseTo(count, 9);
        expect(bandOf({ count, altitudeFactor: altitudeFactor * 0.9 }).greatest_m3).toBeGreaterThan(bandOf({ count, altitudeFactor }).greatest_m3);
      }),
    );
  });

  test('a room exactly on either end is held', () => {
    const { least_m3, greatest_m3 } = bandOf({ count: 3 });
    expect(feasibleCounts(least_m3, ONE, 20)).toContain(3);
    expect(feasibleCounts(greatest_m3, ONE, 20)).toContain(3);
    expect(feasibleCounts(greatest_m3 * 1.000001, ONE, 20)).not.toContain(3);
    expect(feasibleCounts(least_m3 * 0.999999, ONE, 20)).not.toContain(3);
  });

  test('no more cylinders than come into question', () => expect(feasibleCounts(199.84, ONE, 4)).toEqual([]));

  test('the other logarithm narrows it, as it asks for more agent', () => {
    expect(bandOf().greatest_m3 / bandOf({ logarithm: '2.303' }).greatest_m3).toBeCloseTo(1.00018, 6);
  });

  test('so high that even air has too little oxygen: no band, no count', () => {
    expect(fixedFillBand({ ...ONE, altitudeFactor: 0.565 })).toBeUndefined();
    expect(feasibleCounts(40, { ...ONE, altitudeFactor: 0.565 }, 20)).toEqual([]);
  });

  test.each([
    ['massEach_kg', { massEach_kg: 0 }],
    ['count', { count: 0 }],
    ['concentration_pct', { concentration_pct: 100 }],
    ['coldSpecificVolume_m3_kg', { coldSpecificVolume_m3_kg: -1 }],
    ['hotSpecificVolume_m3_kg', { hotSpecificVolume_m3_kg: Number.NaN }],
    ['oxygenLimit_pct', { oxygenLimit_pct: 0 }],
    ['oxygenBase_pct', { oxygenBase_pct: 40 }],
    ['altitudeFactor', { altitudeFactor: 0 }],
  ])('refuses, naming %s', (name, change) => expect(() => bandOf(change)).toThrow(name));
});
