import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offsetBy } from '#shared/geometry/pipe-offset';

const INCH_m = 0.0254;
const east = { x: 1, y: 0, z: 0 };
const from = { x: 1, y: 2, z: 3 };

describe('a 45° offset', () => {
  test('of 12 in travels 16.971 in (worked example of cut lengths, NPS 1 Class 300)', () => {
    const { travel_m, set_m, advance_m } = offsetBy(from, east, { x: 0, y: 12 * INCH_m, z: 0 });
    expect(travel_m / INCH_m).toBeCloseTo(16.971, 3);
    expect([set_m, advance_m].map((value_m) => value_m / INCH_m)).toEqual([expect.closeTo(12, 9), expect.closeTo(12, 9)]);
  });

  test('rolling, sideways and up at once, is set by the diagonal of both (5-12-13 triangle)', () => {
    const { travel_m, set_m, to } = offsetBy(from, east, { x: 0, y: 5 * INCH_m, z: 12 * INCH_m });
    expect(set_m / INCH_m).toBeCloseTo(13, 9);
    expect(travel_m / INCH_m).toBeCloseTo(13 * Math.SQRT2, 9);
    expect(to).toEqual({ x: expect.closeTo(1 + 13 * INCH_m, 9), y: expect.closeTo(2 + 5 * INCH_m, 9), z: expect.closeTo(3 + 12 * INCH_m, 9) });
  });

  test('leaves out what lies along the run', () => {
    expect(offsetBy(from, east, { x: 9, y: 0, z: 0 })).toMatchObject({ set_m: 0, travel_m: 0, to: from });
  });

  test('turns by 45° out of the run and back into it, whichever way it is set over', () => {
    const part = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.28, noNaN: true }), part, part, (angle, left, up) => {
        fc.pre(Math.hypot(left, up) > 0.01);
        const along = { x: Math.cos(angle), y: Math.sin(angle), z: 0 };
        const { to, travel_m } = offsetBy(from, along, { x: -along.y * left, y: along.x * left, z: up });
        const forward = (to.x - from.x) * along.x + (to.y - from.y) * along.y;
        expect(Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z)).toBeCloseTo(travel_m, 9);
        expect(Math.acos(Math.min(1, forward / travel_m))).toBeCloseTo(Math.PI / 4, 6);
      }),
    );
  });
});
