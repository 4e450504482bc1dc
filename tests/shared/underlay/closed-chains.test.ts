import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closedChains } from '#shared/underlay/closed-chains';
import { ringArea } from '#shared/underlay/line-work';
import { NumberList } from '#shared/underlay/number-list';

const list = (rows: readonly (readonly [number, number, number, number])[]): NumberList => {
  const pieces = new NumberList();
  for (const row of rows) pieces.push(...row);
  return pieces;
};
const square = [
  [0, 0, 4, 0],
  [4, 0, 4, 3],
  [4, 3, 0, 3],
  [0, 3, 0, 0],
] as const;

describe('closed chains', () => {
  test('four walls drawn one by one, in any order and direction, are a ring', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4, maxLength: 4 }), fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }), (order, flips) => {
        const rows = order.map((i) => {
          const [a, b, c, d] = square[i] ?? [0, 0, 0, 0];
          return flips[i] ? ([c, d, a, b] as const) : ([a, b, c, d] as const);
        });
        const rings = closedChains(list(rows), 1e-6);
        expect(rings).toHaveLength(1);
        expect(Math.abs(ringArea(rings[0] ?? []))).toBeCloseTo(12, 9);
        expect(rings[0]).toHaveLength(8);
      }),
    );
  });

  test('a gap leaves no ring', () => {
    expect(closedChains(list([square[0], square[1], square[2]]), 1e-6)).toEqual([]);
  });

  test('a wall that runs on from a corner spoils the ring: three pieces meet there', () => {
    expect(closedChains(list([...square, [4, 3, 9, 3]]), 1e-6)).toEqual([]);
  });

  test('two rooms apart are two rings', () => {
    const away = square.map(([a, b, c, d]) => [a + 10, b, c + 10, d] as const);
    expect(closedChains(list([...square, ...away]), 1e-6)).toHaveLength(2);
  });

  test('two pieces on top of each other enclose nothing', () => {
    expect(closedChains(list([[0, 0, 1, 0], [1, 0, 0, 0], [5, 5, 6, 6]]), 1e-6)).toEqual([]);
  });
});
