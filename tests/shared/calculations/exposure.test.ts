import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agentQuantityTopic } from '#shared/calculations/agent-quantity';
import { exposureTopic } from '#shared/calculations/exposure';
import type { TopicResult } from '#shared/calculations/topic';
import { numberOf, runTopic } from '../../support/run-topic.ts';

/** Worked room: 240 m³ with five containers of IG-100, hottest 35 °C. */
const ROOM = { agent: 'IG-100', mass_kg: 156.91, volume_m3: 240, temperature_C: 35 };
const answer = (change: object = {}): TopicResult => runTopic(exposureTopic, { ...ROOM, ...change });
const within = (actual: number, printed: number, unit: number): void => expect(Math.abs(actual - printed)).toBeLessThanOrEqual(unit * 1.000001);

/** The mass that gives a concentration in the worked room at 20 °C. */
const massOf = (concentration_pct: number): number => numberOf(runTopic(agentQuantityTopic, { agent: 'IG-100', volume_m3: 240, temperature_C: 20, concentration_pct }), 'mass_kg');

describe('exposure', () => {
  test('worked room, computed apart: whole containers give 44.56 %, 11.61 % of oxygen, and the 3 min band', () => {
    const result = answer();
    within(numberOf(result, 'concentration_pct'), 44.56, 0.01);
    within(numberOf(result, 'oxygen_pct'), 11.61, 0.01);
    expect(result.oxygenSeaLevel_pct).toBe(result.oxygen_pct);
    expect(result).toMatchObject({ bandByConcentration: '3-min', bandByOxygen: '3-min', bandsAgree: true, band: '3-min', longestExposure_s: 180 });
  });

  test.each([
    [20, 40.83],
    [35, 42.4],
    [50, 43.93],
  ])('worked room, computed apart: the mass for 15 °C gives at %d °C %d vol %%', (temperature_C, concentration_pct) => {
    within(numberOf(answer({ mass_kg: 146.748, temperature_C }), 'concentration_pct'), concentration_pct, 0.01);
  });

  test.each([
    ['a hut', 24.7, 39.87, 12.15, '5-min'],
    ['an L-shaped archive', 123.5, 199.84, 12.17, '5-min'],
    ['room 206', 74.1, 89.2, 10.1, '3-min'],
  ])('invented unit, worked apart: %s', (_, mass_kg, volume_m3, oxygen_pct, band) => {
    const result = answer({ mass_kg, volume_m3, temperature_C: 27 });
    within(numberOf(result, 'oxygen_pct'), oxygen_pct, 0.01);
    expect(result.band).toBe(band);
  });

  test.each([
    ['stricter', '3-min'],
    ['concentration', '5-min'],
    ['oxygen', '3-min'],
  ])('the trap at exactly 43 %%: the two ways differ, and by %s it is %s', (judgedBy, band) => {
    const result = answer({ mass_kg: massOf(43), temperature_C: 20, judgedBy });
    expect(result).toMatchObject({ bandByConcentration: '5-min', bandByOxygen: '3-min', bandsAgree: false, band });
    within(numberOf(result, 'oxygen_pct'), 11.94, 0.01);
  });

  test('worked variant, computed apart: at 1500 m 0.83 of the mass gives the same 40.3 %, worth 10.4 % of oxygen', () => {
    const result = answer({ mass_kg: 0.83 * massOf(40.3), temperature_C: 20, altitude_m: 1500 });
    expect(numberOf(result, 'concentration_pct')).toBeCloseTo(40.3, 9);
    within(numberOf(result, 'oxygen_pct'), 12.5, 0.05);
    within(numberOf(result, 'oxygenSeaLevel_pct'), 10.38, 0.01);
    expect(result).toMatchObject({ bandByConcentration: '5-min', bandByOxygen: '3-min', bandsAgree: false, band: '3-min' });
  });

  test.each([
    [20.9, 12.48],
    [21, 12.54],
  ])('oxygen of the air %d %%, computed apart: %d %% left of 40.3 %%', (oxygenBase_pct, oxygen_pct) => {
    within(numberOf(answer({ mass_kg: massOf(40.3), temperature_C: 20, oxygenBase_pct }), 'oxygen_pct'), oxygen_pct, 0.01);
  });

  test('leaving the room', () => {
    expect(answer()).toMatchObject({ egressKept: null, delayCoversEgress: null });
    expect(answer({ egressTime_s: 40 })).toMatchObject({ egressKept: true, delayCoversEgress: null });
    expect(answer({ egressTime_min: 4, delay_s: 30 })).toMatchObject({ egressKept: false, delayCoversEgress: false });
    expect(answer({ egressTime_s: 30, delay_s: 30 })).toMatchObject({ egressKept: true, delayCoversEgress: true });
  });

  test('no agent leaves the air as it is', () => {
    expect(answer({ mass_kg: 0 })).toMatchObject({ concentration_pct: 0, oxygen_pct: 20.95, band: '5-min' });
  });

  test('the concentration of the quantity comes back, at any altitude by any method', () => {
    const concentration = fc.double({ min: 1, max: 90, noNaN: true });
    const altitude = fc.double({ min: -900, max: 3000, noNaN: true });
    fc.assert(
      fc.property(concentration, altitude, fc.constantFrom('iso', 'nfpa', 'isa'), fc.constantFrom('IG-100', 'IG-01', 'IG-55', 'IG-541'), (concentration_pct, altitude_m, altitudeMethod, agent) => {
        const room = { agent, volume_m3: 55, temperature_C: 12, altitude_m, altitudeMethod };
        const mass_kg = numberOf(runTopic(agentQuantityTopic, { ...room, concentration_pct }), 'massAtAltitude_kg');
        expect(numberOf(runTopic(exposureTopic, { ...room, mass_kg }), 'concentration_pct')).toBeCloseTo(concentration_pct, 9);
      }),
    );
  });

  test('more agent, a smaller or hotter room and a higher place leave less oxygen', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 300, noNaN: true }), fc.double({ min: -20, max: 50, noNaN: true }), fc.double({ min: -900, max: 4000, noNaN: true }), (mass_kg, temperature_C, altitude_m) => {
        const room = { mass_kg, temperature_C, altitude_m };
        const oxygen_pct = numberOf(answer(room), 'oxygenSeaLevel_pct');
        for (const worse of [{ mass_kg: mass_kg * 1.01 }, { volume_m3: 239 }, { temperature_C: temperature_C + 1 }, { altitude_m: altitude_m + 10 }]) {
          expect(numberOf(answer({ ...room, ...worse }), 'oxygenSeaLevel_pct')).toBeLessThan(oxygen_pct);
        }
      }),
    );
  });

  test('units in any form give the same answer', () => {
    const metric = numberOf(answer(), 'oxygen_pct');
    expect(numberOf(runTopic(exposureTopic, { agent: 'IG-100', mass_lb: 156.91 / 0.45359237, volume_ft3: 240 / 0.028316846592, temperature_F: 95, altitude_ft: 0 }), 'oxygen_pct')).toBeCloseTo(metric, 9);
    expect(numberOf(runTopic(exposureTopic, { agent: 'IG-100', mass_kg: 156.91, volume_L: 240_000, temperature_K: 308.15 }), 'oxygen_pct')).toBeCloseTo(metric, 9);
  });

  test.each([
    ['mass_kg', { mass_kg: -1 }],
    ['oxygenBase_pct', { oxygenBase_pct: 0.2095 }],
    ['altitude_m', { altitude_m: 4600 }],
    ['judgedBy', { judgedBy: 'hope' }],
  ])('refuses, naming %s', (name, change) => expect(() => answer(change)).toThrow(name));
});
