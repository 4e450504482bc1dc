import { expect, test } from 'vitest';
import { isCounterClockwise, rectangle } from '#shared/geometry/outline';
import { clockwise, counterClockwise } from '#shared/geometry/ring-order';

test('a ring that winds the right way is left alone, another is turned round', () => {
  const ring = rectangle(2, 1);
  expect(counterClockwise(ring)).toBe(ring);
  expect(isCounterClockwise(counterClockwise(ring.toReversed()))).toBe(true);
  expect(isCounterClockwise(clockwise(ring))).toBe(false);
  expect(clockwise(ring.toReversed())).toEqual(ring.toReversed());
});
