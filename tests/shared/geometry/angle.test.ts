import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { angleBetween_rad, axisAngle_rad, normalAngle_rad, turnTo_rad } from '#shared/geometry/angle';

const DEGREE = Math.PI / 180;
const anyAngle = fc.integer({ min: -2000, max: 2000 }).map((tenths) => (tenths / 10) * DEGREE);

describe('directions', () => {
  test.each([
    [0, 0],
    [-90, 270],
    [360, 0],
    [725, 5],
    [-725, 355],
  ])('%d° is %d°', (given, normal) => {
    expect(normalAngle_rad(given * DEGREE)).toBeCloseTo(normal * DEGREE, 12);
  });

  test.each([
    [10, 350, 20, 20, -20],
    [0, 180, 180, 0, 180],
    [90, 0, 90, 90, -90],
    [350, 10, 20, 20, 20],
    [0, 135, 135, 45, 135],
  ])('from %d° to %d°', (a, b, between, axis, turn) => {
    expect(angleBetween_rad(a * DEGREE, b * DEGREE)).toBeCloseTo(between * DEGREE, 12);
    expect(axisAngle_rad(a * DEGREE, b * DEGREE)).toBeCloseTo(axis * DEGREE, 12);
    expect(turnTo_rad(a * DEGREE, b * DEGREE)).toBeCloseTo(turn * DEGREE, 12);
  });

  test('the least turn leads there, and neither order nor full turns change an angle between', () => {
    fc.assert(
      fc.property(anyAngle, anyAngle, (a, b) => {
        expect(angleBetween_rad(a + turnTo_rad(a, b), b)).toBeCloseTo(0, 9);
        expect(Math.abs(turnTo_rad(a, b))).toBeCloseTo(angleBetween_rad(b, a), 9);
        expect(axisAngle_rad(a + Math.PI, b)).toBeCloseTo(axisAngle_rad(a, b), 9);
      }),
    );
  });
});
