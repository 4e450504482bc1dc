import { describe, expect, test } from 'vitest';
import { blowdownTopic } from '#shared/calculations/blowdown';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const VESSEL = { volume_L: 80, pressure_bar: 200, temperature_K: 288.15, diameter_mm: 5, dischargeCoefficient: 0.85 };

describe('blowdown', () => {
  // Closed form of choked blowdown of an ideal gas, any gas-dynamics text.
  test.each([
    ['isothermal', 162.299, 5, 288.15, 0.811495],
    ['isothermal', 57.114, 30, 288.15, 0.28557],
    ['isothermal', 16.31, 60, 288.15, 0.08155],
    ['adiabatic', 150.18, 5, 265.5, 0.8149],
    ['adiabatic', 41.79, 30, 184.22, 0.3268],
    ['adiabatic', 11.634, 60, 127.84, 0.1311],
  ])('closed form: %s to %d bar takes %d s and leaves %d K and %d of the mass', (process, toPressure_bar, time_s, temperature_K, massFraction) => {
    const result = runTopic(blowdownTopic, { ...VESSEL, process, gas: 'ideal', toPressure_bar });
    expect(numberOf(result, 'time_s')).toBeCloseTo(time_s, 2);
    expect(numberOf(result, 'temperature_K')).toBeCloseTo(temperature_K, 1);
    expect(numberOf(result, 'massFraction')).toBeCloseTo(massFraction, 4);
    expect(numberOf(result, 'massLeft_kg')).toBeCloseTo(18.7082 * massFraction, 2);
  });

  // Span et al. 2000, evaluated independently.
  test.each([
    [100, 235.4, 0.685],
    [60, 202.2, 0.503],
    [30, 164.0, 0.319],
  ])('Span et al. 2000: real gas, adiabatic to %d bar leaves %d K and %d of 17.855 kg', (toPressure_bar, temperature_K, massFraction) => {
    const result = runTopic(blowdownTopic, { ...VESSEL, process: 'adiabatic', gas: 'real', toPressure_bar });
    expect(Math.abs(numberOf(result, 'temperature_K') - temperature_K)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(numberOf(result, 'massFraction') - massFraction)).toBeLessThanOrEqual(5.1e-4);
    expect(numberOf(result, 'massLeft_kg') / 17.855).toBeCloseTo(numberOf(result, 'massFraction'), 4);
  });

  test('units in any form give the same answer', () => {
    const one = runTopic(blowdownTopic, { ...VESSEL, process: 'adiabatic', gas: 'real', toPressure_bar: 60 });
    const same = { volume_m3: 0.08, pressure_Pa: 2e7, temperature_F: 59, diameter_in: 5 / 25.4, dischargeCoefficient: 0.85, toPressure_barg: 60 - 1.01325, backPressure_psig: 0, process: 'adiabatic', gas: 'real' };
    expect(numberOf(runTopic(blowdownTopic, same), 'time_s')).toBeCloseTo(numberOf(one, 'time_s'), 7);
  });

  test('a pressure that no longer chokes is refused by its name', () => {
    expect(() => runTopic(blowdownTopic, { ...VESSEL, process: 'adiabatic', gas: 'ideal', toPressure_bar: 1.5 })).toThrow('toPressure_Pa brings the vessel to 150000 Pa');
    expect(() => runTopic(blowdownTopic, { ...VESSEL, process: 'adiabatic', gas: 'real', toPressure_bar: 10 })).toThrow('toPressure_Pa is too low for the real gas');
    expect(() => runTopic(blowdownTopic, { ...VESSEL, process: 'adiabatic', gas: 'real', toPressure_bar: 210 })).toThrow('toPressure_Pa');
  });
});
