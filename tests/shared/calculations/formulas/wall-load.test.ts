import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anchorPull_N, anchorShear_N, wallLoad_N } from '#shared/calculations/formulas/wall-load';

describe('cylinder on a wall', () => {
  // Statics by hand: 150 kg · 9.80665 m/s² · 1.5 = 2206.496 N.
  test('by hand: 150 kg with a factor of 1.5', () => {
    expect(wallLoad_N(150, 1.5)).toBeCloseTo(2206.496, 3);
    expect(wallLoad_N(100, 1)).toBeCloseTo(980.665, 9);
  });

  // In pounds-force, where the weight is the mass by definition.
  test('by hand: 300 lb weighs 300 lbf, 1334.466 N', () => {
    expect(wallLoad_N(300 * 0.45359237, 1) / 4.4482216152605).toBeCloseTo(300, 9);
  });

  test('by hand: four anchors share the shear', () => {
    expect(anchorShear_N(2206.496, 4)).toBeCloseTo(551.624, 3);
  });

  // Moment about the lower edge: 2206.496 N · 0.16 m = 353.04 N·m, over 0.8 m and two anchors.
  test.each([
    ['two anchors 0.8 m up', 0.8, 2, 220.65],
    ['two anchors 0.2 m up', 0.2, 2, 882.598],
    ['one anchor 0.1 m up', 0.1, 1, 3530.394],
  ])('by hand: pull of %s', (_, lever_m, anchors, expected) => {
    expect(anchorPull_N(2206.496, 0.16, lever_m, anchors)).toBeCloseTo(expected, 2);
  });

  test('the moments about the lower edge balance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        (load_N, standOff_m, lever_m, anchors) => {
          const pull_N = anchorPull_N(load_N, standOff_m, lever_m, anchors);
          expect(Math.abs(pull_N * anchors * lever_m - load_N * standOff_m)).toBeLessThanOrEqual(1e-9 * load_N);
          expect(anchorPull_N(load_N, standOff_m, lever_m * 2, anchors)).toBeLessThanOrEqual(pull_N);
        },
      ),
    );
  });

  test.each([
    ['no anchors', () => anchorShear_N(100, 0), 'anchors'],
    ['no lever', () => anchorPull_N(100, 0.1, 0, 2), 'leverArm_m'],
    ['a factor that takes weight off', () => wallLoad_N(100, 0.9), 'loadFactor'],
    ['a mass that is not known', () => wallLoad_N(Number.NaN, 1), 'filledMass_kg'],
  ])('%s is refused', (_, run, named) => {
    expect(run).toThrow(named);
  });
});
