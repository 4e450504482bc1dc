import fc from 'fast-check';
import { expect, test } from 'vitest';
import { polar } from '#shared/geometry/point';
import { wallFrame } from '#shared/elevation/wall-frame';

const frame = wallFrame({ segment: { a: { x: 0, y: 0 }, b: { x: 4, y: 0 } } });

test('who looks south at a wall from the room north of it has its east end at the left', () => {
  expect(frame.length_m).toBe(4);
  expect(frame.place({ x: 4, y: 0, z: 1 })).toEqual({ s: expect.closeTo(0, 12), z: 1, off: expect.closeTo(0, 12) });
  expect(frame.place({ x: 1, y: 0.3, z: 0 })).toEqual({ s: expect.closeTo(3, 12), z: 0, off: expect.closeTo(0.3, 12) });
  expect(frame.onFace(1)).toEqual({ x: expect.closeTo(3, 12), y: expect.closeTo(0, 12) });
  // North is toward the viewer, west to the right.
  expect(frame.seen(Math.PI / 2).toward).toBeCloseTo(1, 12);
  expect(frame.seen(Math.PI).right).toBeCloseTo(1, 12);
});

test('places keep their distances however the wall lies', () => {
  const within = fc.double({ min: -50, max: 50, noNaN: true });
  fc.assert(
    fc.property(within, within, within, within, fc.double({ min: 0, max: 6.28, noNaN: true }), (x, y, px, py, turn_rad) => {
      const a = { x, y };
      const turned = wallFrame({ segment: { a, b: polar(a, turn_rad, 3) } });
      const { s, off } = turned.place({ x: px, y: py, z: 0 });
      // Square distances from the left end, which is b.
      const b = polar(a, turn_rad, 3);
      expect(s ** 2 + off ** 2).toBeCloseTo((px - b.x) ** 2 + (py - b.y) ** 2, 6);
      // Left of a → b is the room.
      expect(turned.place({ ...polar(a, turn_rad + Math.PI / 2, 1), z: 0 }).off).toBeCloseTo(1, 9);
    }),
  );
});
