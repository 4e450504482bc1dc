import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Segment3, along3, distanceBetween3_m, distanceToSegment3_m } from '#shared/geometry/segment3';

const p = (x: number, y: number, z: number) => ({ x, y, z });
const coordinate = fc.integer({ min: -5000, max: 5000 }).map((mm) => mm / 1000);
const place = fc.record({ x: coordinate, y: coordinate, z: coordinate });
const segment = fc.record({ a: place, b: place });

/** Least distance by trying many pairs of places, then narrowing down around the best pair. */
function triedDistance_m(first: Segment3, second: Segment3): number {
  let best = { s: 0, t: 0, far: Infinity };
  let width = 0.5;
  let middle = { s: 0.5, t: 0.5 };
  for (let round = 0; round < 9; round += 1) {
    for (let i = -10; i <= 10; i += 1) {
      for (let k = -10; k <= 10; k += 1) {
        const s = Math.max(0, Math.min(1, middle.s + (width * i) / 10));
        const t = Math.max(0, Math.min(1, middle.t + (width * k) / 10));
        const one = along3(first, s);
        const other = along3(second, t);
        const far = Math.hypot(one.x - other.x, one.y - other.y, one.z - other.z);
        if (far < best.far) best = { s, t, far };
      }
    }
    middle = best;
    width /= 3;
  }
  return best.far;
}

describe('distance between segments in 3D', () => {
  test.each([
    ['crossing at right angles, one above the other', { a: p(-1, 0, 0), b: p(1, 0, 0) }, { a: p(0, -1, 3), b: p(0, 1, 3) }, 3],
    ['meeting', { a: p(0, 0, 0), b: p(2, 0, 0) }, { a: p(1, 0, 0), b: p(1, 5, 5) }, 0],
    ['touching at an end', { a: p(0, 0, 0), b: p(1, 0, 0) }, { a: p(1, 0, 0), b: p(1, 1, 0) }, 0],
    ['parallel, side by side', { a: p(0, 0, 0), b: p(4, 0, 0) }, { a: p(1, 2, 0), b: p(9, 2, 0) }, 2],
    ['in one line, apart', { a: p(0, 0, 0), b: p(1, 0, 0) }, { a: p(3, 0, 0), b: p(4, 0, 0) }, 2],
    ['end to end, out of line', { a: p(0, 0, 0), b: p(1, 0, 0) }, { a: p(4, 4, 0), b: p(4, 9, 0) }, 5],
    ['two places', { a: p(0, 0, 0), b: p(0, 0, 0) }, { a: p(2, 3, 6), b: p(2, 3, 6) }, 7],
    ['a place and a segment', { a: p(1, 1, 0), b: p(1, 1, 0) }, { a: p(0, 0, 0), b: p(9, 0, 0) }, 1],
    ['a segment and a place', { a: p(0, 0, 0), b: p(9, 0, 0) }, { a: p(12, 0, 4), b: p(12, 0, 4) }, 5],
  ])('%s', (_, first, second, far_m) => {
    expect(distanceBetween3_m(first, second)).toBeCloseTo(far_m, 12);
    expect(distanceBetween3_m(second, first)).toBeCloseTo(far_m, 12);
  });

  test('agrees with trying many pairs of places', () => {
    fc.assert(
      fc.property(segment, segment, (first, second) => {
        const far_m = distanceBetween3_m(first, second);
        const tried_m = triedDistance_m(first, second);
        expect(far_m).toBeLessThanOrEqual(tried_m + 1e-9);
        expect(far_m).toBeGreaterThan(tried_m - 0.01);
      }),
      { numRuns: 150 },
    );
  });

  test('to a place beside, before and past a segment', () => {
    const along = { a: p(0, 0, 0), b: p(10, 0, 0) };
    expect(distanceToSegment3_m(p(5, 3, 4), along)).toBeCloseTo(5, 12);
    expect(distanceToSegment3_m(p(-3, 0, 4), along)).toBeCloseTo(5, 12);
    expect(distanceToSegment3_m(p(10, 0, 0), along)).toBe(0);
  });
});
