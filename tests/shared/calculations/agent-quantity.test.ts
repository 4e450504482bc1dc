import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agentQuantityTopic } from '#shared/calculations/agent-quantity';
import type { TopicResult } from '#shared/calculations/topic';
import { numberOf, runTopic } from '../../support/run-topic.ts';

/** Worked room: 240 m³, IG-100, 40.3 %, coldest 15 °C. */
const ROOM = { agent: 'IG-100', volume_m3: 240, temperature_C: 15, concentration_pct: 40.3 };
const answer = (change: object = {}): TopicResult => runTopic(agentQuantityTopic, { ...ROOM, ...change });
const number = (key: string, change: object = {}): number => numberOf(answer(change), key);
const within = (actual: number, printed: number, unit: number): void => expect(Math.abs(actual - printed)).toBeLessThanOrEqual(unit * 1.000001);

describe('agent quantity', () => {
  test.each([
    ['at 15 °C', {}, 'mass_kg', 146.748, 1e-3],
    ['at 15 °C', {}, 'massAtAltitude_kg', 146.748, 1e-3],
    ['at 15 °C', {}, 'volumeAtReference_m3', 125.951, 1e-3],
    ['at 20 °C', { temperature_C: 20 }, 'mass_kg', 144.243, 1e-3],
    ['at 20 °C', { temperature_C: 20 }, 'volumeAtReference_m3', 123.801, 1e-3],
    ['at 20 °C', { temperature_C: 20 }, 'floodingFactor', 0.5158, 1e-4],
    ['at 20 °C', { temperature_C: 20 }, 'massFactor_kg_m3', 0.601, 1e-4],
    ['at 20 °C', { temperature_C: 20 }, 'specificVolume_m3_kg', 0.85828, 1e-6],
    ['at 1500 m by ISO 14520-1', { altitude_m: 1500 }, 'massAtAltitude_kg', 121.801, 1e-3],
    ['at 1500 m by ISO 14520-1', { altitude_m: 1500 }, 'mass_kg', 146.748, 1e-3],
    ['95 %', {}, 'massShareTo95', 0.9357, 1e-4],
    ['containers of 31.382 kg', { massEach_kg: 31.382 }, 'installedMass_kg', 156.91, 0.01],
  ])('worked room, computed apart: %s, %j, %s is %d', (_, change, key, expected, unit) => within(number(key, change), expected, unit));

  test('worked room: 4.676 containers are 5', () => expect(answer({ massEach_kg: 31.382 }).cylinders).toBe(5));

  test.each([
    ['iso', 1500, 0.83],
    ['nfpa', 1524, 0.82],
    ['isa', 1500, 0.8345],
  ])('altitude by %s: %d m, %d', (altitudeMethod, altitude_m, factor) => within(number('altitudeFactor', { altitudeMethod, altitude_m }), factor, 1e-4));

  test('arithmetic: 2.303·log10 asks for 1.000180 times the mass', () => {
    expect(number('mass_kg', { logarithm: '2.303' }) / number('mass_kg')).toBeCloseTo(1.00018, 6);
    expect(number('mass_kg', { logarithm: 2303 / 1000 })).toBe(number('mass_kg', { logarithm: '2.303' }));
  });

  test('NFPA 2001, memory: at 70 °F the reference volume is V_s·m', () => {
    within(number('floodingFactor', { temperature_C: (100 - 32) / 1.8, concentration_pct: 40, referenceTemperature_F: 70 }), 0.4834, 1e-4);
  });

  test('reference 20 °C over 70 °F, computed apart: 0.99622', () => {
    expect(number('volumeAtReference_m3') / number('volumeAtReference_m3', { referenceTemperature_F: 70 })).toBeCloseTo(0.99622, 5);
  });

  test('constants differ for IG-01 only: 1.3 % less agent by NFPA 2001 (memory)', () => {
    expect(number('mass_kg', { constants: 'nfpa' })).toBe(number('mass_kg'));
    const argon = { agent: 'IG-01', temperature_C: 20 };
    expect(number('mass_kg', argon) / number('mass_kg', { ...argon, constants: 'nfpa' })).toBeCloseTo(0.6101 / 0.60228, 5);
  });

  test('invented unit, worked apart: 199.84 m³ at 18 to 27 °C', () => {
    const result = answer({ volume_m3: 199.84, temperature_C: 18, hottestTemperature_C: 27, massEach_kg: 24.7 });
    expect(result).toMatchObject({ cylinders: 5, feasibleCounts: [5] });
    within(numberOf(result, 'massAtAltitude_kg'), 120.93, 0.01);
    within(numberOf(result, 'leastVolume_m3'), 5 * 38.95, 0.05);
    within(numberOf(result, 'greatestVolume_m3'), 5 * 40.82, 0.05);
  });

  test('what was not asked for is null, never a guess', () => {
    expect(answer()).toMatchObject({ cylinders: null, installedMass_kg: null, installedConcentration_pct: null, leastVolume_m3: null, greatestVolume_m3: null, feasibleCounts: null, minimumDesign_pct: null, dischargeLimit_s: null });
    expect(answer({ massEach_kg: 24.7 })).toMatchObject({ leastVolume_m3: null, feasibleCounts: null });
    expect(answer({ hazardClass: 'A-higher', designSet: 'nfpa-2001-2012' })).toMatchObject({ minimumDesign_pct: null, dischargeLimit_s: null });
  });

  test('the rules of an edition', () => {
    expect(answer({ hazardClass: 'A-surface', designSet: 'en-15004-2008' })).toMatchObject({ minimumDesign_pct: 40.3, dischargeLimit_s: 60 });
    expect(answer({ hazardClass: 'C', designSet: 'nfpa-2001-2012' })).toMatchObject({ minimumDesign_pct: 41.9, dischargeLimit_s: 120 });
  });

  test('so high that even air has too little oxygen no volume suits', () => {
    expect(answer({ altitude_m: 4500, massEach_kg: 24.7, hottestTemperature_C: 27 })).toMatchObject({ leastVolume_m3: null, greatestVolume_m3: null, feasibleCounts: [] });
  });

  test('more room and concentration need more, more altitude less, and the installed mass reaches the design', () => {
    const volume = fc.double({ min: 1, max: 1e4, noNaN: true });
    const concentration = fc.double({ min: 10, max: 70, noNaN: true });
    const altitude = fc.double({ min: -900, max: 2900, noNaN: true });
    fc.assert(
      fc.property(volume, concentration, altitude, fc.constantFrom('iso', 'nfpa', 'isa'), (volume_m3, concentration_pct, altitude_m, altitudeMethod) => {
        const room = { volume_m3, concentration_pct, altitude_m, altitudeMethod, massEach_kg: 20 };
        const mass_kg = number('massAtAltitude_kg', room);
        expect(number('massAtAltitude_kg', { ...room, volume_m3: volume_m3 * 1.01 })).toBeGreaterThan(mass_kg);
        expect(number('massAtAltitude_kg', { ...room, concentration_pct: concentration_pct + 0.1 })).toBeGreaterThan(mass_kg);
        expect(number('massAtAltitude_kg', { ...room, altitude_m: altitude_m + 10 })).toBeLessThan(mass_kg);
        expect(number('installedConcentration_pct', room)).toBeGreaterThan(concentration_pct - 1e-6);
      }),
    );
  });

  test('units in any form give the same answer', () => {
    const metric = number('massAtAltitude_kg', { altitude_m: 609.6 });
    const { volume_m3: _v, temperature_C: _t, ...rest } = ROOM;
    const others = [
      { ...rest, volume_L: 240_000, temperature_K: 288.15, altitude_ft: 2000 },
      { ...rest, volume_ft3: 240 / 0.028316846592, temperature_F: 59, altitude_mm: 609_600 },
    ];
    for (const other of others) expect(numberOf(runTopic(agentQuantityTopic, other), 'massAtAltitude_kg')).toBeCloseTo(metric, 8);
  });

  test.each([
    ['altitude_m', { altitude_m: 5000 }],
    ['altitude_m', { altitude_m: 3100, altitudeMethod: 'nfpa' }],
    ['hottestTemperature', { massEach_kg: 24.7, hottestTemperature_C: 10 }],
    ['concentration_pct', { concentration_pct: 100 }],
    ['logarithm', { logarithm: 'log2' }],
    ['agent', { agent: 'IG-00' }],
  ])('refuses, naming %s', (name, change) => expect(() => answer(change)).toThrow(name));
});
