import { expect, test } from 'vitest';
import { angleBetween3_rad, direction3, opposite3 } from '#shared/geometry/vector3';

const p = (x: number, y: number, z: number) => ({ x, y, z });

test('a direction has length 1, and none is found between places that are one', () => {
  expect(direction3(p(1, 1, 1), p(1, 1, 4), 1e-6)).toEqual(p(0, 0, 1));
  expect(direction3(p(0, 0, 0), p(3, 4, 0), 1e-6)).toEqual(p(0.6, 0.8, 0));
  expect(direction3(p(0, 0, 0), p(0, 0, 1e-7), 1e-6)).toBeUndefined();
});

test('turns between directions, exact at the ends of the range', () => {
  expect(angleBetween3_rad(p(1, 0, 0), p(1, 0, 0))).toBe(0);
  expect(angleBetween3_rad(p(1, 0, 0), p(0, 0, 1))).toBeCloseTo(Math.PI / 2, 15);
  expect(angleBetween3_rad(p(1, 0, 0), opposite3(p(1, 0, 0)))).toBe(Math.PI);
  const tiny = 1e-9;
  expect(angleBetween3_rad(p(1, 0, 0), p(Math.cos(tiny), Math.sin(tiny), 0))).toBeCloseTo(tiny, 18);
});
