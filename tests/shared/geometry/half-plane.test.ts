import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clipToHalfPlane, nearerTo } from '#shared/geometry/half-plane';
import { area_m2, rectangle, signedArea_m2 } from '#shared/geometry/outline';
import { distance_m, planPoint } from '#shared/geometry/point';

const room = rectangle(4, 2);

test('keeps all, half and nothing of a ring', () => {
  expect(clipToHalfPlane(room, { x: 1, y: 0, limit: 9 })).toEqual(room);
  expect(area_m2(clipToHalfPlane(room, { x: 1, y: 0, limit: 1 }))).toBeCloseTo(2, 12);
  expect(clipToHalfPlane(room, { x: 1, y: 0, limit: -1 })).toEqual([]);
});

test('keeps the winding', () => {
  const half = { x: 1, y: 1, limit: 3 };
  expect(signedArea_m2(clipToHalfPlane(room, half))).toBeGreaterThan(0);
  expect(signedArea_m2(clipToHalfPlane(room.toReversed(), half))).toBeLessThan(0);
});

test('a U cut through both legs keeps its area although it becomes two parts', () => {
  const u = [planPoint(0, 0), planPoint(5, 0), planPoint(5, 4), planPoint(4, 4), planPoint(4, 1), planPoint(1, 1), planPoint(1, 4), planPoint(0, 4)];
  expect(signedArea_m2(clipToHalfPlane(u, { x: 0, y: -1, limit: -2 }))).toBeCloseTo(4, 12);
});

test('the half-plane between two places holds what is nearer to the first', () => {
  const coordinate = fc.integer({ min: -50_000, max: 50_000 }).map((mm) => mm / 1000);
  const place = fc.record({ x: coordinate, y: coordinate });
  fc.assert(
    fc.property(place, place, place, (near, far, p) => {
      fc.pre(Math.abs(distance_m(p, near) - distance_m(p, far)) > 1e-6);
      const { x, y, limit } = nearerTo(near, far);
      expect(x * p.x + y * p.y <= limit).toBe(distance_m(p, near) < distance_m(p, far));
    }),
  );
});
