import { expect, test } from 'vitest';
import { isInsideOrOn, isInsideRegion, sideOfOutline } from '#shared/geometry/inside';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';

const room = rectangle(4, 3);

test.each([
  ['well inside', planPoint(2, 1), 'inside'],
  ['on a side', planPoint(2, 0), 'on'],
  ['on a corner', planPoint(4, 3), 'on'],
  ['a hair off a side', planPoint(2, -5e-7), 'on'],
  ['just outside', planPoint(2, -2e-6), 'outside'],
  ['far away', planPoint(20, 1), 'outside'],
])('%s', (_, at, side) => {
  expect(sideOfOutline(at, room)).toBe(side);
  expect(sideOfOutline(at, room.toReversed())).toBe(side);
  expect(isInsideOrOn(at, room)).toBe(side !== 'outside');
});

test('a hole is outside, its sides are not', () => {
  const holes = [rectangle(1, 1, planPoint(1, 1))];
  expect(isInsideRegion(planPoint(1.5, 1.5), room, holes)).toBe(false);
  expect(isInsideRegion(planPoint(1, 1.5), room, holes)).toBe(true);
  expect(isInsideRegion(planPoint(3, 1.5), room, holes)).toBe(true);
  expect(isInsideRegion(planPoint(5, 1.5), room, holes)).toBe(false);
});
