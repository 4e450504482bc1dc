import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area_m2, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, distance_m, planPoint } from '#shared/geometry/point';
import { isRectangle, rectangleSides_m, resizedRectangle, withCorner } from '#shared/geometry/rectangle';

const turned = (ring: readonly PlanPoint[], angle_rad: number): PlanPoint[] =>
  ring.map(({ x, y }) => planPoint(x * Math.cos(angle_rad) - y * Math.sin(angle_rad), x * Math.sin(angle_rad) + y * Math.cos(angle_rad)));
const triangle = [planPoint(0, 0), planPoint(3, 0), planPoint(0, 3)];
const kite = [planPoint(0, 0), planPoint(2, 1), planPoint(5, 0), planPoint(2, -1)];
const slanted = [planPoint(0, 0), planPoint(4, 0), planPoint(5, 2), planPoint(1, 2)];

const size = fc.double({ min: 0.1, max: 20, noNaN: true });
const anyRectangle = fc.record({ width: size, depth: size, angle: fc.double({ min: 0, max: 6.28, noNaN: true }) }).map(({ width, depth, angle }) => turned(rectangle(width, depth), angle));

describe('a rectangle', () => {
  test('is known however it is turned, and nothing else is taken for one', () => {
    fc.assert(fc.property(anyRectangle, (ring) => isRectangle(ring) && isRectangle([...ring].reverse())));
    for (const ring of [triangle, kite, slanted, [...rectangle(2, 2), planPoint(0, 1)], rectangle(2, 0)]) expect(isRectangle(ring)).toBe(false);
  });

  test('stays one when a corner is moved, the corner across standing still', () => {
    fc.assert(
      fc.property(anyRectangle, fc.nat(3), size, size, (ring, index, dx, dy) => {
        const corner = ring[index] ?? planPoint(0, 0);
        const across = ring[(index + 2) % 4] ?? planPoint(0, 0);
        // Away from the corner across, so that some area is left.
        const to = planPoint(corner.x + Math.sign(corner.x - across.x) * dx * 0.1, corner.y + Math.sign(corner.y - across.y) * dy * 0.1);
        const moved = withCorner(ring, index, to);
        expect(distance_m(moved[index] ?? across, to)).toBeLessThan(1e-9);
        expect(distance_m(moved[(index + 2) % 4] ?? corner, across)).toBeLessThan(1e-9);
        return isRectangle(moved) || area_m2(moved) < 1e-6;
      }),
    );
  });

  test('has two sides that can be given other lengths from its first corner', () => {
    const ring = turned(rectangle(4, 2), 0.5);
    expect(rectangleSides_m(ring)?.map((side_m) => side_m.toFixed(9))).toEqual(['4.000000000', '2.000000000']);
    const longer = resizedRectangle(ring, [5, 1.5]);
    expect(longer[0]).toEqual(ring[0]);
    expect(rectangleSides_m(longer)?.map((side_m) => side_m.toFixed(9))).toEqual(['5.000000000', '1.500000000']);
    expect(area_m2(longer)).toBeCloseTo(7.5, 9);
  });
});

describe('any other ring', () => {
  test('gets the one corner moved, and keeps its size', () => {
    expect(withCorner(triangle, 1, planPoint(4, 1))).toEqual([planPoint(0, 0), planPoint(4, 1), planPoint(0, 3)]);
    expect(rectangleSides_m(slanted)).toBeUndefined();
    expect(resizedRectangle(slanted, [1, 1])).toEqual(slanted);
  });
});
