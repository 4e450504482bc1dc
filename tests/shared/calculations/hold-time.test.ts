import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LeakyEnclosure, fanCoefficientOf, interfaceTime_s, mixingTime_s, mixtureDensity_kg_m3, wideInterfaceHeight_m } from '#shared/calculations/formulas/hold-time';
import { holdTimeTopic } from '#shared/calculations/hold-time';
import { numberOf, runTopic } from '../../support/run-topic.ts';

/** Worked room: 240 m³, 3 m high, protected to 2.5 m, leakage 0.10 m² at 10 Pa, n 0.6. */
const K1 = fanCoefficientOf(0.1, 10, 0.6);
const ROOM = { volume_m3: 240, height_m: 3, protectedHeight_m: 2.5, fanCoefficient: K1, fanExponent: 0.6, lowerLeakFraction: 0.5, endFraction_pct: 85 };
const IG55 = { agent: 'IG-55', concentration_pct: 40.3, agentDensity_kg_m3: 1.412 };
const LEAKY: LeakyEnclosure = { volume_m3: 240, height_m: 3, fanCoefficient: K1, fanExponent: 0.6, lowerLeakFraction: 0.5, bias_Pa: 0 };

/** The same balances by small steps of time: an independent way to the same answer. */
function sharpBySteps_s(room: LeakyEnclosure, mixture_kg_m3: number, until_m: number, step_s: number): number {
  const ratio = room.lowerLeakFraction / (1 - room.lowerLeakFraction);
  let height_m = room.height_m;
  let time_s = 0;
  while (height_m > until_m) {
    const column_Pa = 9.80665 * height_m * Math.abs(mixture_kg_m3 - 1.205) + room.bias_Pa;
    const lower_Pa = column_Pa / (1 + (1.205 / mixture_kg_m3) * ratio ** (1 / room.fanExponent));
    const flow_m3_s = room.fanCoefficient * room.lowerLeakFraction * ((lower_Pa * 1.205) / mixture_kg_m3) ** room.fanExponent;
    height_m -= (flow_m3_s * step_s * room.height_m) / room.volume_m3;
    time_s += step_s;
  }
  return time_s;
}

describe('hold time', () => {
  // Steps computed by hand from the equations of NFPA 2001 Annex C (form from memory, derived again).
  test('worked room: steps', () => {
    expect(K1 * 10 ** 0.6).toBeCloseTo(0.248514, 6);
    expect(K1).toBeCloseTo(0.062424, 6);
    expect(mixtureDensity_kg_m3(1.412, 40.3)).toBeCloseTo(1.288421, 6);
    expect(wideInterfaceHeight_m(3, 2.5, 40.3, 34.255)).toBeCloseTo(2.70588, 5);
    expect(numberOf(runTopic(holdTimeTopic, { ...ROOM, ...IG55 }), 'columnPressure_Pa')).toBeCloseTo(2.4542, 3);
  });

  test.each([
    ['IG-55', 40.3, 1.412, 1.288421, 1220.5, 701.6, 1183.0, 'descending'],
    ['IG-100, lighter than air', 40.3, 1.165, 1.18888, 3193.4, 1835.8, 3101.3, 'rising'],
    ['IG-541', 39.9, 1.417, 1.28959, 1210.7, 696.0, 1173.5, 'descending'],
    ['IG-01', 41.9, 1.661, 1.39606, 761.4, 437.7, 736.6, 'descending'],
  ])('worked room: %s', (_, concentration_pct, agentDensity_kg_m3, density, sharp_s, wide_s, mixing_s, way) => {
    const result = runTopic(holdTimeTopic, { ...ROOM, agent: 'IG-55', concentration_pct, agentDensity_kg_m3 });
    expect(numberOf(result, 'mixtureDensity_kg_m3')).toBeCloseTo(density, 4);
    expect(Math.abs(numberOf(result, 'sharp_s') - sharp_s)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(numberOf(result, 'wide_s') - wide_s)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(numberOf(result, 'mixing_s') - mixing_s)).toBeLessThanOrEqual(0.1);
    expect(result.interface).toBe(way);
  });

  test('worked room: 1 Pa of ventilation', () => {
    expect(numberOf(runTopic(holdTimeTopic, { ...ROOM, ...IG55, bias_Pa: 1 }), 'sharp_s')).toBeCloseTo(978.1, 0);
  });

  test('worked room: a quarter of the leaks below', () => {
    expect(numberOf(runTopic(holdTimeTopic, { ...ROOM, ...IG55, lowerLeakFraction: 0.25 }), 'sharp_s')).toBeCloseTo(1786.1, 0);
  });

  test('NFPA 2001, older form for n = 0.5 (memory): t = 2·A_R/(C3·F·A_T)·(√(C3·H0) − √(C3·H))', () => {
    const room = { ...LEAKY, fanExponent: 0.5, fanCoefficient: fanCoefficientOf(0.1, 10, 0.5) };
    const c3 = (2 * 9.80665 * (1.288421 - 1.205)) / (1.288421 + 1.205);
    const older_s = ((2 * 80) / (c3 * 0.5 * 0.061)) * (Math.sqrt(c3 * 3) - Math.sqrt(c3 * 2.5));
    expect(interfaceTime_s(room, 1.288421, 2.5)).toBeCloseTo(older_s, 6);
  });

  test.each([
    ['heavier', 1.288421, 0, 0.5],
    ['lighter', 1.18888, 0, 0.5],
    ['with ventilation', 1.288421, 1, 0.5],
    ['few leaks below', 1.288421, 0, 0.25],
  ])('small steps of the volume balance agree: %s', (_, mixture, bias_Pa, lowerLeakFraction) => {
    const room = { ...LEAKY, bias_Pa, lowerLeakFraction };
    expect(interfaceTime_s(room, mixture, 2.5) / sharpBySteps_s(room, mixture, 2.5, 0.05)).toBeCloseTo(1, 3);
  });

  test('the agent’s density is that of its specific volume unless given', () => {
    const { agentDensity_kg_m3: _, ...bare } = IG55;
    expect(numberOf(runTopic(holdTimeTopic, { ...ROOM, ...bare }), 'sharp_s')).toBeCloseTo(1220.5, -1);
  });

  test('a leakier room, a higher protected height and more ventilation hold for less', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 2.9, noNaN: true }), fc.double({ min: 1.01, max: 1.3, noNaN: true }), fc.double({ min: 0.01, max: 5, noNaN: true }), (height, factor, bias) => {
        const time = interfaceTime_s(LEAKY, 1.3, height);
        expect(interfaceTime_s({ ...LEAKY, fanCoefficient: K1 * factor }, 1.3, height)).toBeCloseTo(time / factor, 6);
        expect(interfaceTime_s(LEAKY, 1.3, Math.min(3, height * factor))).toBeLessThan(time);
        expect(interfaceTime_s({ ...LEAKY, bias_Pa: bias }, 1.3, height)).toBeLessThan(time);
        expect(mixingTime_s({ ...LEAKY, bias_Pa: bias }, 1.412, 40, 34)).toBeLessThan(mixingTime_s(LEAKY, 1.412, 40, 34));
      }),
    );
  });

  test('a mixture as heavy as air is held for ever by nothing, and for a time against ventilation', () => {
    expect(() => interfaceTime_s(LEAKY, 1.205, 2.5)).toThrow('nothing drives it out');
    expect(() => mixingTime_s(LEAKY, 1.205, 40, 34)).toThrow('nothing drives it out');
    const room = { ...LEAKY, bias_Pa: 2 };
    expect(interfaceTime_s(room, 1.205, 2.5) / interfaceTime_s(room, 1.2050001, 2.5)).toBeCloseTo(1, 5);
  });

  test('units in any form give the same answer', () => {
    const { volume_m3: _v, height_m: _h, protectedHeight_m: _p, ...rest } = { ...ROOM, ...IG55 };
    const metric = numberOf(runTopic(holdTimeTopic, { ...ROOM, ...IG55 }), 'wide_s');
    expect(numberOf(runTopic(holdTimeTopic, { ...rest, volume_L: 240_000, height_mm: 3000, protectedHeight_in: 2.5 / 0.0254 }), 'wide_s')).toBeCloseTo(metric, 6);
  });

  // By hand: k1 and 0.10 m² times the hold time over the time wanted.
  test.each([
    ['wide', 600, 701.6],
    ['sharp', 600, 1220.5],
    ['mixing', 1200, 1183.0],
  ])('leakage allowed by the %s model for %d s', (model, wantedTime_s, time_s) => {
    const result = runTopic(holdTimeTopic, { ...ROOM, ...IG55, model, wantedTime_s });
    expect(numberOf(result, 'allowedFanCoefficient') / ((K1 * time_s) / wantedTime_s)).toBeCloseTo(1, 3);
    expect(numberOf(result, 'allowedLeakageArea_m2') / ((0.1 * time_s) / wantedTime_s)).toBeCloseTo(1, 3);
  });

  test('leakage allowed is that of the wide interface for 10 minutes unless said otherwise', () => {
    const usual = runTopic(holdTimeTopic, { ...ROOM, ...IG55 });
    expect(usual.allowedFanCoefficient).toBe(runTopic(holdTimeTopic, { ...ROOM, ...IG55, model: 'wide', wantedTime_min: 10 }).allowedFanCoefficient);
    expect(numberOf(runTopic(holdTimeTopic, { ...ROOM, ...IG55, fanCoefficient: numberOf(usual, 'allowedFanCoefficient') }), 'wide_s')).toBeCloseTo(600, 6);
  });

  test('a protected height above the ceiling is refused', () => {
    expect(() => runTopic(holdTimeTopic, { ...ROOM, ...IG55, protectedHeight_m: 3.5 })).toThrow('protectedHeight');
  });
});
