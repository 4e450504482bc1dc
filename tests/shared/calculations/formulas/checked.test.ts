import { describe, expect, test } from 'vitest';
import { between, finite, notNegative, positive, within } from '#shared/calculations/formulas/checked';

describe('checked numbers', () => {
  test.each([
    ['finite', () => finite('length_m', Number.NaN)],
    ['positive', () => positive('length_m', 0)],
    ['positive of endless', () => positive('length_m', Number.POSITIVE_INFINITY)],
    ['notNegative', () => notNegative('length_m', -1)],
    ['within', () => within('length_m', 2.1, 1, 2)],
    ['between', () => between('length_m', 1, 1, 2)],
  ])('%s names the number that it refuses', (_, check) => {
    expect(check).toThrow(RangeError);
    expect(check).toThrow('length_m');
  });

  test('a sound number comes back as it is', () => {
    expect([finite('x', -1), positive('x', 1e-9), notNegative('x', 0), within('x', 2, 1, 2), between('x', 1.5, 1, 2)]).toEqual([-1, 1e-9, 0, 2, 1.5]);
  });
});
