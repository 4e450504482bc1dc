import { expect, test } from 'vitest';
import { placedFootprint } from '#shared/derived/footprint';
import { area_m2, isCounterClockwise } from '#shared/geometry/outline';
import { distance_m, planPoint } from '#shared/geometry/point';

const at = planPoint(3, 4);

test('a round one is a polygon inside the circle that loses less than 0.2 % of it', () => {
  const { ring, reach_m, area_m2: whole_m2 } = placedFootprint({ shape: 'circle', radius_m: 5, source: '' }, at, 1);
  expect(reach_m).toBe(5);
  expect(whole_m2).toBeCloseTo(Math.PI * 25, 12);
  expect(isCounterClockwise(ring)).toBe(true);
  for (const corner of ring) expect(distance_m(at, corner)).toBeCloseTo(5, 12);
  expect(area_m2(ring) / whole_m2).toBeGreaterThan(0.998);
  expect(area_m2(ring)).toBeLessThan(whole_m2);
});

test('a rectangle lies with its length along the rotation', () => {
  const footprint = { shape: 'rectangle', length_m: 6, width_m: 2, source: '' } as const;
  const { ring, reach_m, area_m2: whole_m2 } = placedFootprint(footprint, at, Math.PI / 2);
  expect(ring.map(({ x, y }) => [Math.round(x * 1e9) / 1e9, Math.round(y * 1e9) / 1e9])).toEqual([
    [4, 1],
    [4, 7],
    [2, 7],
    [2, 1],
  ]);
  expect(reach_m).toBeCloseTo(Math.hypot(3, 1), 12);
  expect(whole_m2).toBe(12);
  expect(isCounterClockwise(ring)).toBe(true);
});
