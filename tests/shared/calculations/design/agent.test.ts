import { describe, expect, test } from 'vitest';
import { enclosureSums, known, profileOf, reason, roomOf, wholePlan } from '../../../support/whole-plan.ts';

describe('agent for an enclosure', () => {
  test('EN 15004-8:2008 by hand: 40 m³ at 18 °C and 40.3 %', () => {
    const built = wholePlan();
    const { agent, cylindersNeeded, supply } = enclosureSums(built);
    const sums = known(agent);
    // s = 0.79968 + 0.00293·18; m = V/s·ln(100/59.7).
    const mass_kg = (40 / (0.79968 + 0.00293 * 18)) * Math.log(100 / 59.7);
    expect(sums.massNeeded_kg).toBeCloseTo(mass_kg, 9);
    expect(mass_kg).toBeCloseTo(24.2, 1);
    expect(sums.coldSpecificVolume_m3_kg).toBeCloseTo(0.85242, 9);
    expect(sums.hotSpecificVolume_m3_kg).toBeCloseTo(0.87879, 9);
    expect(sums.referenceVolume_m3).toBeCloseTo(mass_kg * 0.85828, 9);
    expect(sums.floodingFactor_kg_m3).toBeCloseTo(mass_kg / 40, 12);
    expect(known(cylindersNeeded)).toBe(1);
    expect(known(supply)).toMatchObject({ cylinders: 1, massEach_kg: 24.7, installed_kg: 24.7 });
  });

  test('at altitude less mass does', () => {
    const built = wholePlan();
    roomOf(built).altitude_m = 1500;
    const sums = known(enclosureSums(built).agent);
    expect(sums.massNeeded_kg / sums.massSeaLevel_kg).toBeCloseTo(0.83, 2);
    expect(sums.altitudeFactor).toBeCloseTo(0.83, 2);
  });

  test('the least concentration comes from the adopted edition, or from nobody', () => {
    const built = wholePlan();
    expect(known(enclosureSums(built).minimum).concentration_pct).toBeCloseTo(40.3, 9);
    roomOf(built).hazardClass = 'unknown';
    expect(reason(enclosureSums(built).minimum)).toBe('what can burn in the enclosure is not known.');
    roomOf(built).hazardClass = 'A-higher';
    built.plan.basis.designSet = 'nfpa-2001-2012';
    expect(reason(enclosureSums(built).minimum)).toMatch(/gives no least concentration for this hazard/);
  });

  test.each([
    ['concentration', { concentration_pct: null }, 'no design concentration is chosen for “Room 1”.'],
    ['concentration of nothing', { concentration_pct: 0 }, 'no design concentration is chosen for “Room 1”.'],
    ['temperatures', { temperature: null }, 'the temperatures of “Room 1” are not known.'],
    ['temperatures the wrong way round', { temperature: { least_K: 300, greatest_K: 290 } }, 'the lowest temperature of “Room 1” is above its highest.'],
    ['altitude', { altitude_m: null }, 'the height of “Room 1” above the sea is not known.'],
    ['height', { height_m: null }, 'the height of “Room 1” is not known.'],
  ])('without %s it is not known, nor are people, band, vent and hold', (_, change, because) => {
    const built = wholePlan();
    Object.assign(roomOf(built), change);
    const { agent, cylindersNeeded, people, fill, vent, hold } = enclosureSums(built);
    for (const group of [agent, cylindersNeeded, people, fill, vent, hold]) expect(reason(group)).toBe(because);
  });

  test('without what one cylinder holds nobody knows how many are needed', () => {
    const built = wholePlan();
    delete profileOf(built).limits.agentMass_kg;
    const { agent, cylindersNeeded } = enclosureSums(built);
    expect(known(agent).massNeeded_kg).toBeGreaterThan(24);
    expect(reason(cylindersNeeded)).toBe('“Agent mass” is blank in the unit profile “Sample 80 L unit (invented)”.');
    profileOf(built).limits.agentMass_kg = { value: 5e-324, source: '' };
    expect(reason(enclosureSums(built).cylindersNeeded)).toBe('a cylinder holds next to nothing.');
  });
});
