import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distanceToOutline_m, isInside, rectangle } from '#shared/geometry/outline';
import { distance_m, planPoint, polar } from '#shared/geometry/point';
import { poleOf } from '#shared/geometry/pole';

test('of a square it is the middle', () => {
  const { at, inside_m } = poleOf([rectangle(4, 4, planPoint(10, 20))]);
  expect(distance_m(at, planPoint(12, 22))).toBeLessThan(0.05);
  expect(inside_m).toBeGreaterThan(1.95);
});

test('of an L it lies in the wide part, not at the centroid', () => {
  const { at, inside_m } = poleOf([[planPoint(0, 0), planPoint(10, 0), planPoint(10, 1), planPoint(4, 1), planPoint(4, 4), planPoint(0, 4)]]);
  expect(inside_m).toBeGreaterThan(1.95);
  expect(distance_m(at, planPoint(2, 2))).toBeLessThan(0.2);
});

test('a hole keeps it away', () => {
  const { at, inside_m } = poleOf([rectangle(10, 4), rectangle(3, 3, planPoint(0.5, 0.5)).toReversed()]);
  expect(at.x).toBeGreaterThan(5);
  expect(inside_m).toBeGreaterThan(1.95);
});

test('a sliver still has a place inside', () => {
  const sliver = [planPoint(0, 0), planPoint(30, 10), planPoint(30, 10.0004)];
  const { at, inside_m } = poleOf([sliver]);
  expect(isInside(at, sliver)).toBe(true);
  expect(inside_m).toBeGreaterThan(0);
});

test.each([1e-2, 1e-3, 1e-4, 1e-6])('a strip %f m wide is looked at in few steps and still has a place inside', (width_m) => {
  const strip = rectangle(width_m, 3.35, planPoint(5, 1));
  let looks = 0;
  const counted = strip.map(({ x, y }) => ({
    get x() {
      looks += 1;
      return x;
    },
    y,
  }));
  const { at, inside_m } = poleOf([counted]);
  expect(isInside(at, strip)).toBe(true);
  expect(inside_m).toBeGreaterThan(0.4 * width_m);
  expect(looks).toBeLessThan(500_000);
});

test('no place of a star is much deeper', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 500, max: 5000 }).map((mm) => mm / 1000), { minLength: 4, maxLength: 12 }), (arms) => {
      const star = arms.map((arm, i) => polar(planPoint(3, -2), (2 * Math.PI * i) / arms.length, arm));
      const { at, inside_m } = poleOf([star]);
      expect(isInside(at, star)).toBe(true);
      expect(inside_m).toBeCloseTo(distanceToOutline_m(at, star), 9);
      let deepest = 0;
      for (let x = -2; x <= 8; x += 0.25) {
        for (let y = -7; y <= 3; y += 0.25) {
          const p = planPoint(x, y);
          if (isInside(p, star)) deepest = Math.max(deepest, distanceToOutline_m(p, star));
        }
      }
      expect(inside_m).toBeGreaterThan(deepest - 0.1);
    }),
    { numRuns: 60 },
  );
});
