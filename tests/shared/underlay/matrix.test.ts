import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Matrix, determinant, multiply, scaleBy, shiftBy, transformed, turnBy } from '#shared/underlay/matrix';

const number = fc.double({ min: -50, max: 50, noNaN: true });
const matrix = fc.tuple(number, number, number, number, number, number);

test('multiplying does the inner transform first', () => {
  expect([...transformed(multiply(shiftBy(10, 0), scaleBy(2, 3)), [1, 1])]).toEqual([12, 3]);
  expect([...transformed(multiply(scaleBy(2, 3), shiftBy(10, 0)), [1, 1])]).toEqual([22, 3]);
});

test('a product carries places as its parts do, one after the other', () => {
  fc.assert(
    fc.property(matrix, matrix, number, number, (a: Matrix, b: Matrix, x, y) => {
      const [px = 0, py = 0] = transformed(multiply(a, b), [x, y]);
      const [qx = 0, qy = 0] = transformed(a, transformed(b, [x, y]));
      expect(px).toBeCloseTo(qx, 6);
      expect(py).toBeCloseTo(qy, 6);
    }),
  );
});

test('turning keeps areas and goes counter-clockwise', () => {
  expect(determinant(turnBy(0.7))).toBeCloseTo(1, 12);
  const [x = 0, y = 0] = transformed(turnBy(Math.PI / 2), [1, 0]);
  expect(x).toBeCloseTo(0, 12);
  expect(y).toBeCloseTo(1, 12);
  expect(determinant(scaleBy(-1, 2))).toBe(-2);
});
