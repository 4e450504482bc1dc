import { expect, test } from 'vitest';
import { bearing_rad, distance3_m, distance_m, midpoint, planPoint, polar } from '#shared/geometry/point';

const p = planPoint;

test('distances on the plan leave heights out, distances in space do not', () => {
  expect(distance_m({ x: 0, y: 0, z: 9 }, { x: 3, y: 4, z: 0 })).toBe(5);
  expect(distance3_m({ x: 0, y: 0, z: 0 }, { x: 2, y: 3, z: 6 })).toBe(7);
});

test('bearings run counter-clockwise from east; of a place to itself it is 0', () => {
  expect(bearing_rad(p(1, 1), p(1, 5))).toBeCloseTo(Math.PI / 2, 15);
  expect(bearing_rad(p(1, 1), p(-5, 1))).toBeCloseTo(Math.PI, 15);
  expect(bearing_rad(p(1, 1), p(1, -5))).toBeCloseTo(-Math.PI / 2, 15);
  expect(bearing_rad(p(1, 1), p(1, 1))).toBe(0);
});

test('a place by direction and distance, and the one halfway', () => {
  const there = polar(p(1, 2), Math.PI / 2, 3);
  expect(there.x).toBeCloseTo(1, 15);
  expect(there.y).toBe(5);
  expect(midpoint(p(0, 0), p(4, 2))).toEqual(p(2, 1));
});
