import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atPlaces, axisUnit, gaugeUnit, nearestIndex, tickText, ticksBetween } from '../../../src-renderer/panels/charts/axis.ts';
import { bandVerdict } from '../../../src-renderer/store/band-verdict.ts';
import { pathThrough, scaleOf } from '../../../src-renderer/panels/charts/plot.ts';

describe('axes', () => {
  test.each([
    [0, 41.3, 5, [0, 10, 20, 30, 40]],
    [0, 0.79, 4, [0, 0.2, 0.4, 0.6]],
    [0, 4350, 4, [0, 2000, 4000]],
    [-4, 12, 5, [0, 5, 10]],
    [5, 5, 4, [5]],
  ])('from %d to %d at most %d ticks', (least, greatest, most, ticks) => {
    expect(ticksBetween(least, greatest, most)).toEqual(ticks);
  });

  test('ticks stay inside, rise evenly, and are as many as fit', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.double({ min: 1e-3, max: 1e5, noNaN: true }), fc.integer({ min: 2, max: 12 }), (least, span, most) => {
        const ticks = ticksBetween(least, least + span, most);
        const slack = 1e-6 * (span + Math.abs(least));
        expect(ticks.length).toBeLessThanOrEqual(most);
        for (const tick of ticks) expect(tick >= least - slack && tick <= least + span + slack).toBe(true);
        for (let i = 2; i < ticks.length; i += 1) expect((ticks[i] ?? 0) - (ticks[i - 1] ?? 0)).toBeCloseTo((ticks[1] ?? 0) - (ticks[0] ?? 0), 6);
      }),
    );
  });

  test.each([
    [0.25, 0.25, '0.25'],
    [10, 5, '10'],
    [2.5, 2.5, '2.5'],
    [4000, 2000, '4\u2009000'],
    [0.6, 0.2, '0.6'],
  ])('%d in steps of %d reads %s', (value, step, text) => {
    expect(tickText(value, step)).toBe(text);
  });

  test('figures are those of the plan’s units', () => {
    // Exact: 1 lb = 0.45359237 kg, 1 psi = 6894.757 Pa (NIST SP 811); 32 °F is the ice point.
    expect(axisUnit('massFlow', 'feet').of(0.453_592_37)).toBeCloseTo(1, 9);
    expect(axisUnit('temperature', 'feet').of(273.15)).toBeCloseTo(32, 9);
    expect(gaugeUnit('feet').of(6894.757)).toBeCloseTo(1, 6);
    expect(gaugeUnit('metric')).toMatchObject({ name: 'bar gauge' });
  });

  test('the nearest of a rising list', () => {
    expect([-1, 0, 0.4, 0.6, 2.6, 9].map((at) => nearestIndex([0, 1, 2, 3], at))).toEqual([0, 0, 0, 1, 3, 3]);
    expect(nearestIndex([7], 3)).toBe(0);
  });
});

describe('curves', () => {
  const same = scaleOf([0, 1], [0, 1]);

  test('a line breaks where a value is not known', () => {
    expect(pathThrough([0, 10, 20, 30], [0, 10, Number.NaN, 5], same, same)).toBe('M0.0 0.0L10.0 10.0M30.0 5.0');
  });

  test('crowded places are passed over, a peak among them is not', () => {
    expect(pathThrough([0, 0.1, 0.2, 0.3, 10], [0, 0, 50, 0, 0], same, same)).toBe('M0.0 0.0L0.2 50.0L0.3 0.0L10.0 0.0');
  });

  test('a scale with no span stays where it begins', () => {
    expect(scaleOf([3, 3], [10, 90])(3)).toBe(10);
  });
});

describe('bands of full cylinders', () => {
  test.each([
    [40, { least_m3: 39, greatest_m3: 41 }, 'fits', true],
    [39, { least_m3: 39, greatest_m3: 41 }, 'fits', true],
    [42, { least_m3: 39, greatest_m3: 41 }, 'too little agent', false],
    [38, { least_m3: 39, greatest_m3: 41 }, 'too little oxygen left', false],
    [40, { least_m3: 41, greatest_m3: 39 }, 'fits no volume', false],
  ])('a room of %d m³', (net_m3, band, words, fits) => {
    expect(bandVerdict(net_m3, band)).toEqual({ words, fits });
  });
});

test('a curve is read between its own places, and stays at its ends', () => {
  expect(atPlaces([0, 2, 4], [0, 10, 30], [-1, 0, 1, 2, 3.5, 4, 9])).toEqual([0, 0, 5, 10, 25, 30, 30]);
  expect(atPlaces([1], [7], [0, 1, 2])).toEqual([7, 7, 7]);
  expect(atPlaces([], [], [1])).toEqual([0]);
});
