import { expect, test } from 'vitest';
import { momentsOf } from '#shared/geometry/moments';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';

test('area and first moments of a rectangle: area times the place of its middle', () => {
  const { area_m2, x_m3, y_m3 } = momentsOf([rectangle(4, 2, planPoint(1, 3))]);
  expect(area_m2).toBe(8);
  expect(x_m3).toBeCloseTo(24, 12);
  expect(y_m3).toBeCloseTo(32, 12);
});

test('a hole that winds clockwise is taken off', () => {
  const { area_m2, x_m3, y_m3 } = momentsOf([rectangle(4, 4), rectangle(2, 2, planPoint(2, 0)).toReversed()]);
  expect(area_m2).toBe(12);
  expect(x_m3).toBeCloseTo(16 * 2 - 4 * 3, 12);
  expect(y_m3).toBeCloseTo(16 * 2 - 4 * 1, 12);
});

test('centroid of a triangle is the mean of its corners', () => {
  const { area_m2, x_m3, y_m3 } = momentsOf([[planPoint(0, 0), planPoint(6, 0), planPoint(0, 3)]]);
  expect([x_m3 / area_m2, y_m3 / area_m2]).toEqual([2, 1]);
});

test('no rings have no area', () => {
  expect(momentsOf([])).toEqual({ area_m2: 0, x_m3: 0, y_m3: 0 });
});
