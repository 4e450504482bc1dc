import { describe, expect, test } from 'vitest';
import {
  area_m2,
  boundsOf,
  boxesTouch,
  distanceToOutline_m,
  findSelfCrossing,
  isCounterClockwise,
  isInside,
  rectangle,
  sidesOf,
  signedArea_m2,
} from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';

const room = rectangle(6, 4, planPoint(1, 2));

describe('a ring', () => {
  test('has an area whose sign tells the winding', () => {
    expect(signedArea_m2(room)).toBe(24);
    expect(signedArea_m2(room.toReversed())).toBe(-24);
    expect(area_m2(room.toReversed())).toBe(24);
    expect(isCounterClockwise(room)).toBe(true);
    expect(isCounterClockwise(room.toReversed())).toBe(false);
  });

  test('has a side from each corner to the next, the last back to the first', () => {
    expect(sidesOf(room)).toHaveLength(4);
    expect(sidesOf(room)[3]).toEqual({ a: planPoint(1, 6), b: planPoint(1, 2) });
    expect(sidesOf([])).toEqual([]);
  });

  test('has places inside and outside, and a distance to its sides from both', () => {
    expect(isInside(planPoint(4, 4), room)).toBe(true);
    expect(isInside(planPoint(0, 4), room)).toBe(false);
    expect(distanceToOutline_m(planPoint(4, 3), room)).toBe(1);
    expect(distanceToOutline_m(planPoint(-2, -2), room)).toBe(5);
    expect(distanceToOutline_m(planPoint(1, 2), room)).toBe(0);
  });

  test('that crosses or touches itself is found out', () => {
    expect(findSelfCrossing(room)).toBeUndefined();
    expect(findSelfCrossing([planPoint(0, 0), planPoint(2, 2), planPoint(2, 0), planPoint(0, 2)])).toEqual(planPoint(1, 1));
    expect(findSelfCrossing([planPoint(0, 0), planPoint(4, 0), planPoint(2, 2), planPoint(2, 0), planPoint(0, 4)])).toBeDefined();
  });
});

describe('boxes', () => {
  test('hold all places; none give a box turned inside out, which touches nothing', () => {
    expect(boundsOf(room)).toEqual({ minX: 1, minY: 2, maxX: 7, maxY: 6 });
    expect(boxesTouch(boundsOf([]), boundsOf(room))).toBe(false);
  });

  test.each([
    ['overlapping', { minX: 6, minY: 5, maxX: 9, maxY: 9 }, true],
    ['touching at a corner', { minX: 7, minY: 6, maxX: 9, maxY: 9 }, true],
    ['beside it', { minX: 7.001, minY: 2, maxX: 9, maxY: 6 }, false],
    ['above it', { minX: 1, minY: 6.001, maxX: 7, maxY: 9 }, false],
  ])('%s', (_, box, touches) => {
    expect(boxesTouch(box, boundsOf(room))).toBe(touches);
    expect(boxesTouch(boundsOf(room), box)).toBe(touches);
  });
});
