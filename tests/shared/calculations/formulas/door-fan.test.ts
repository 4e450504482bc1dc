import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FanReading, bothDirections, fitDoorFan, leakageArea_m2 } from '#shared/calculations/formulas/door-fan';
import { fanCoefficientOf } from '#shared/calculations/formulas/hold-time';

const readingsOf = (pairs: readonly (readonly [number, number])[]): FanReading[] => pairs.map(([pressure_Pa, flow_m3_s]) => ({ pressure_Pa, flow_m3_s }));
const law = (k: number, n: number, pressures: readonly number[]): FanReading[] => pressures.map((pressure_Pa) => ({ pressure_Pa, flow_m3_s: k * pressure_Pa ** n }));
const SIX = [12, 20, 31, 42, 55, 60];

describe('door fan', () => {
  // NumPy 2.4.6, polyfit of the logarithms and corrcoef, for six readings with scatter.
  test('NumPy least squares: six readings with scatter', () => {
    const fit = fitDoorFan(readingsOf([[12, 0.281], [20, 0.372], [31, 0.489], [42, 0.578], [55, 0.689], [60, 0.718]]));
    expect(fit.fanExponent).toBeCloseTo(0.588356223504, 11);
    expect(fit.fanCoefficient).toBeCloseTo(0.064609473097, 11);
    expect(fit.correlation).toBeCloseTo(0.999727429428, 11);
    expect([fit.readings, fit.isEnough, fit.isPlausible]).toEqual([6, true, true]);
  });

  // By hand: four times the pressure gives twice the flow.
  test('by hand: two readings of a plain orifice', () => {
    const fit = fitDoorFan(readingsOf([[10, 0.25], [40, 0.5]]));
    expect(fit.fanExponent).toBeCloseTo(0.5, 12);
    expect(fit.fanCoefficient).toBeCloseTo(0.0790569, 7);
    expect(fit.isEnough).toBe(false);
  });

  test('an exact power law comes back, however it is read', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 5, noNaN: true }), fc.double({ min: 0.5, max: 1, noNaN: true }), (k, n) => {
        const fit = fitDoorFan(law(k, n, SIX));
        expect(fit.fanCoefficient / k).toBeCloseTo(1, 9);
        expect(fit.fanExponent).toBeCloseTo(n, 9);
        expect(fit.correlation).toBeCloseTo(1, 9);
        expect(fit.isPlausible).toBe(true);
        expect(fitDoorFan(law(k, n, SIX).reverse()).fanExponent).toBeCloseTo(fit.fanExponent, 9);
      }),
    );
  });

  test.each([
    ['below an orifice', 0.45, false],
    ['an orifice', 0.5, true],
    ['a fine crack', 1, true],
    ['above a fine crack', 1.05, false],
    ['a flow that does not change', 0, false],
  ])('an exponent is flagged: %s', (_, n, plausible) => {
    expect(fitDoorFan(law(0.1, n, SIX)).isPlausible).toBe(plausible);
  });

  test('a flow that does not change has no correlation', () => {
    expect(fitDoorFan(readingsOf([[10, 0.5], [20, 0.5], [40, 0.5]])).correlation).toBe(0);
  });

  test('both directions: means, and the poorer of the judgements', () => {
    const mean = bothDirections(fitDoorFan(law(0.06, 0.58, SIX)), fitDoorFan(law(0.08, 0.62, [10, 40])));
    expect(mean.fanCoefficient).toBeCloseTo(0.07, 12);
    expect(mean.fanExponent).toBeCloseTo(0.6, 12);
    expect([mean.readings, mean.isEnough, mean.isPlausible]).toEqual([8, false, true]);
    expect(bothDirections(fitDoorFan(law(0.06, 0.4, SIX)), fitDoorFan(law(0.08, 0.7, SIX))).isPlausible).toBe(false);
  });

  test.each([
    ['one reading', [[10, 0.2]], 'readings'],
    ['one pressure', [[10, 0.2], [10, 0.21]], 'readings'],
    ['a pressure below 0', [[-10, 0.2], [20, 0.3]], 'pressure_Pa'],
    ['no flow', [[10, 0], [20, 0.3]], 'flow_m3_s'],
  ] as const)('%s is refused', (_, pairs, named) => {
    expect(() => fitDoorFan(readingsOf(pairs))).toThrow(named);
  });
});

describe('equivalent leakage area', () => {
  // A = 1.272·Q/√Δp with C_d 0.61 and air of 1.205 kg/m³; the standards print 1.271 (NFPA 2001, ISO 14520-1, memory).
  test.each([
    ['1.272·Q/√Δp', 1.2725],
    ['as the standards print it', 1.271],
  ])('factor: %s', (_, factor) => {
    expect(leakageArea_m2(0.0624240, 0.6, 10) / ((factor * 0.248514) / Math.sqrt(10))).toBeCloseTo(1, 2);
  });

  test('worked room: 0.248514 m³/s at 10 Pa is 0.10 m²', () => {
    expect(leakageArea_m2(0.0624240, 0.6, 10)).toBeCloseTo(0.1, 6);
  });

  test('inverse of the coefficient of a leakage area', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 5, noNaN: true }), fc.double({ min: 1, max: 100, noNaN: true }), fc.double({ min: 0.5, max: 0.999, noNaN: true }), (area, pressure, n) => {
        expect(leakageArea_m2(fanCoefficientOf(area, pressure, n), n, pressure) / area).toBeCloseTo(1, 9);
      }),
    );
  });
});
