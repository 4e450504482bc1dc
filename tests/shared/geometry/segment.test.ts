import { describe, expect, test } from 'vitest';
import { planPoint } from '#shared/geometry/point';
import { alongSegment_m, distanceToSegment_m, meetingOf, nearestOnSegment, rayHit_m } from '#shared/geometry/segment';

const p = planPoint;
const along = { a: p(0, 0), b: p(10, 0) };

describe('nearest place of a segment', () => {
  test.each([
    ['beside it', p(3, 4), p(3, 0), 4],
    ['on it', p(7, 0), p(7, 0), 0],
    ['before it', p(-3, 4), p(0, 0), 5],
    ['past it', p(13, -4), p(10, 0), 5],
  ])('%s', (_, at, nearest, far_m) => {
    expect(nearestOnSegment(at, along)).toEqual(nearest);
    expect(distanceToSegment_m(at, along)).toBe(far_m);
  });

  test('of one without length is its end', () => {
    expect(nearestOnSegment(p(3, 4), { a: p(0, 0), b: p(0, 0) })).toEqual(p(0, 0));
  });
});

describe('how far along a segment', () => {
  test.each([
    ['beside it', p(3, 7), 3],
    ['before it', p(-2, 4), -2],
    ['past it', p(13, -4), 13],
  ])('%s', (_, at, along_m) => {
    expect(alongSegment_m(at, along)).toBe(along_m);
    expect(alongSegment_m(at, { a: along.b, b: along.a })).toBe(10 - along_m);
  });

  test('one without length', () => {
    expect(alongSegment_m(p(3, 4), { a: p(1, 1), b: p(1, 1) })).toBe(0);
  });
});

describe('meeting of two segments', () => {
  test.each([
    ['crossing', { a: p(5, -1), b: p(5, 1) }, p(5, 0)],
    ['touching at an end', { a: p(10, 0), b: p(10, 4) }, p(10, 0)],
    ['one ending on the other', { a: p(2, 3), b: p(2, 0) }, p(2, 0)],
    ['apart', { a: p(11, -1), b: p(11, 1) }, undefined],
    ['short of it', { a: p(5, 1), b: p(5, 0.001) }, undefined],
    ['parallel', { a: p(0, 1), b: p(10, 1) }, undefined],
  ])('%s', (_, other, met) => {
    expect(meetingOf(along, other)).toEqual(met);
  });
});

describe('a ray', () => {
  test.each([
    ['straight at it', p(4, 3), -Math.PI / 2, 3],
    ['at its very end', p(10, 2), -Math.PI / 2, 2],
    ['away from it', p(4, 3), Math.PI / 2, undefined],
    ['past it', p(11, 3), -Math.PI / 2, undefined],
    ['along it', p(-1, 0), 0, undefined],
    ['slantwise', p(0, 3), -Math.PI / 4, 3 * Math.SQRT2],
  ])('%s', (_, from, angle_rad, run_m) => {
    const hit = rayHit_m(from, angle_rad, along);
    if (run_m === undefined) expect(hit).toBeUndefined();
    else expect(hit).toBeCloseTo(run_m, 12);
  });
});
