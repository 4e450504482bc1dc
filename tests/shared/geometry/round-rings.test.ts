import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convexHull } from '#shared/geometry/convex-hull';
import { isInsideOrOn } from '#shared/geometry/inside';
import { area_m2, distanceToOutline_m, isCounterClockwise, rectangle } from '#shared/geometry/outline';
import { planPoint, polar } from '#shared/geometry/point';
import { distanceToSegment_m } from '#shared/geometry/segment';
import { ROUND_OFF_m, ringAround, ringAroundSegment, ringInside, ringInsideSegment, wedge } from '#shared/geometry/round-rings';
import { trianglesOf } from '#shared/geometry/triangles';

const radius = fc.double({ min: 0.01, max: 3, noNaN: true });
const turn = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

describe('rings in place of circles', () => {
  test('lie no farther off than a quarter of a millimetre, on the side that they are meant for', () => {
    fc.assert(
      fc.property(radius, turn, (radius_m, angle_rad) => {
        const at = planPoint(1, 2);
        const on = polar(at, angle_rad, radius_m);
        expect(isInsideOrOn(on, ringAround(at, radius_m))).toBe(true);
        expect(distanceToOutline_m(on, ringAround(at, radius_m))).toBeLessThan(ROUND_OFF_m * 1.01);
        expect(isInsideOrOn(polar(at, angle_rad, radius_m - ROUND_OFF_m * 1.01), ringInside(at, radius_m))).toBe(true);
        expect(ringInside(at, radius_m).every((p) => Math.abs(Math.hypot(p.x - 1, p.y - 2) - radius_m) < 1e-9)).toBe(true);
      }),
    );
  });

  test('around a segment they hold all that is near, within it nothing that is not', () => {
    fc.assert(
      fc.property(radius, turn, fc.double({ min: 0, max: 4, noNaN: true }), (radius_m, angle_rad, away_m) => {
        const segment = { a: planPoint(0, 0), b: planPoint(1, 0.5) };
        const p = polar(segment.b, angle_rad, away_m);
        if (distanceToSegment_m(p, segment) <= radius_m) expect(isInsideOrOn(p, ringAroundSegment(segment, radius_m))).toBe(true);
        if (isInsideOrOn(p, ringInsideSegment(segment, radius_m))) expect(distanceToSegment_m(p, segment)).toBeLessThanOrEqual(radius_m + 2e-6);
      }),
    );
  });

  test('a wedge holds what is seen within its angle', () => {
    const ring = wedge(planPoint(0, 0), 1, 0.3, 5);
    expect(isInsideOrOn(polar(planPoint(0, 0), 1.29, 5), ring)).toBe(true);
    expect(isInsideOrOn(polar(planPoint(0, 0), 1.31, 4), ring)).toBe(false);
  });
});

describe('hulls and triangles', () => {
  test('the hull of places holds them all and winds counter-clockwise', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ x: fc.integer({ min: -50, max: 50 }), y: fc.integer({ min: -50, max: 50 }) }), { minLength: 3, maxLength: 30 }), (places) => {
        const hull = convexHull(places);
        if (hull.length < 3) return;
        expect(isCounterClockwise(hull)).toBe(true);
        for (const p of places) expect(isInsideOrOn(p, hull)).toBe(true);
      }),
    );
  });

  test('triangles fill an L and a notched room', () => {
    const ell = [planPoint(0, 0), planPoint(4, 0), planPoint(4, 1), planPoint(1, 1), planPoint(1, 3), planPoint(0, 3)];
    const notched = [planPoint(0, 0), planPoint(4, 0), planPoint(4, 3), planPoint(3, 3), planPoint(3, 1), planPoint(2, 1), planPoint(2, 3), planPoint(0, 3)];
    for (const ring of [ell, notched, rectangle(2, 3)]) {
      const triangles = trianglesOf(ring);
      expect(triangles.reduce((sum, each) => sum + area_m2(each), 0)).toBeCloseTo(area_m2(ring), 9);
      expect(trianglesOf(ring.toReversed()).length).toBe(triangles.length);
    }
  });
});
