import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { altitude, amount, amountsApart, duration, durationsApart, figure, gauge, gaugesApart, percentsApart } from '#shared/calculations/lines/line-text';

describe('figures and amounts of calculation lines', () => {
  test.each([
    [39.870123, '39.8701'],
    [0.85242, '0.85242'],
    [-18, '−18'],
    [100, '100'],
    [1234567.8, '1234568'],
    [1e-14, '0'],
    [-1e-14, '0'],
    [0.000045678912, '0.0000456789'],
  ])('%d stands in a formula as %s', (value, shown) => {
    expect(figure(value)).toBe(shown);
  });

  test.each([
    [24.1272, 'mass', 'feet', '24.13 kg = 53.19 lb'],
    [24.7, 'mass', 'metric', '24.7 kg'],
    [293.15, 'temperature', 'feet', '20 °C = 68 °F'],
    [263.15, 'temperature', 'metric', '−10 °C'],
    [3.4671, 'length', 'feet', `3.467 m = 11'-4 1/2"`],
    [-0.2032, 'length', 'feet', '−203 mm = −8"'],
    [250, 'pressureDifference', 'feet', '250 Pa = 5.221 psf'],
    [0.5, 'time', 'feet', '0.5 s'],
    [1e-15, 'force', 'metric', '0 N'],
  ] as const)('%d of %s in %s is %s', (value, kind, lengths, shown) => {
    expect(amount(value, kind, lengths)).toBe(shown);
  });

  test('pressures over the surroundings, heights above the sea and times', () => {
    expect(gauge(6e6, 'feet')).toBe('60 bar gauge = 870.2 psi gauge');
    expect(gauge(6e6, 'metric')).toBe('60 bar gauge');
    expect(altitude(1500, 'feet')).toBe('1500 m = 4921.26 ft');
    expect(duration(88.294)).toBe('88.29 s');
    expect(duration(600)).toBe('600 s = 10 min');
    expect(duration(Number.POSITIVE_INFINITY)).toBe('longer than a day');
  });

  test('rounding never makes a figure look like the limit that it misses', () => {
    const pairs = fc.tuple(fc.double({ min: 1e-2, max: 1e5, noNaN: true }), fc.double({ min: -1e-4, max: 1e-4, noNaN: true }).filter((share) => Math.abs(share) > 1e-8));
    fc.assert(
      fc.property(pairs, fc.constantFrom('feet', 'metric'), ([limit, share], lengths) => {
        const value = limit * (1 + share);
        for (const { value: a, limit: b } of [amountsApart(value, limit, 'mass', lengths), amountsApart(value, limit, 'area', lengths), gaugesApart(value * 1e4, limit * 1e4, lengths), durationsApart(value, limit), percentsApart(value, limit)]) {
          if (a !== 'longer than a day') expect(a).not.toBe(b);
        }
      }),
    );
  });

  test('a figure that is its limit reads like it', () => {
    expect(amountsApart(24.7, 24.7, 'mass', 'feet')).toEqual({ value: '24.7 kg = 54.45 lb', limit: '24.7 kg = 54.45 lb' });
    expect(percentsApart(40.3, 40.3)).toEqual({ value: '40.3 %', limit: '40.3 %' });
  });
});
