import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Arc, gapsBetween, turned } from '#shared/derived/turn-intervals';

const arc = (from_rad: number, to_rad: number): Arc => ({ from_rad, to_rad });
const TURN = 2 * Math.PI;

test('nothing taken leaves a full turn, everything taken leaves nothing', () => {
  expect(gapsBetween([], 0.1)).toEqual([arc(0, TURN)]);
  expect(gapsBetween([arc(1, 1 + TURN)], 0)).toEqual([]);
  expect(gapsBetween([arc(0, 4), arc(3, 7)], 0)).toEqual([]);
  expect(gapsBetween([arc(2, 2)], 0)).toEqual([arc(0, TURN)]);
});

test('gaps lie between the arcs, one of them past the full turn', () => {
  expect(gapsBetween([arc(1, 2), arc(3, 4)], 0)).toEqual([arc(2, 3), arc(4, TURN + 1)]);
  const [gap, ...others] = gapsBetween([arc(-1, 1)], 0.1);
  expect(others).toEqual([]);
  expect(gap?.from_rad).toBeCloseTo(1.1, 12);
  expect(gap?.to_rad).toBeCloseTo(TURN - 1.1, 12);
});

test('arcs that touch leave no gap, and a gap narrower than its margins is dropped', () => {
  expect(gapsBetween([arc(1, 2), arc(2, 3)], 0)).toEqual([arc(3, TURN + 1)]);
  expect(gapsBetween([arc(1, 2), arc(2.1, 3)], 0.06)).toHaveLength(1);
});

test('an angle is in a gap exactly when it is in no arc', () => {
  const milli = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 1000);
  const anyArc = fc.tuple(milli(-7000, 7000), milli(1, 3000)).map(([from, width]) => arc(from, from + width));
  fc.assert(
    fc.property(fc.array(anyArc, { minLength: 1, maxLength: 6 }), milli(0, 6283), (arcs, whole) => {
      const angle = whole + 0.0005;
      const isIn = (list: readonly Arc[]) => list.some(({ from_rad, to_rad }) => [-2, -1, 0, 1, 2].some((k) => angle + k * TURN > from_rad && angle + k * TURN < to_rad));
      fc.pre(!arcs.some(({ from_rad, to_rad }) => [from_rad, to_rad].some((end) => Math.abs(Math.sin((angle - end) / 2)) < 1e-5)));
      expect(isIn(gapsBetween(arcs, 0))).toBe(!isIn(arcs));
    }),
  );
});

test('turning shifts both ends', () => {
  expect(turned([arc(1, 2)], 0.5)).toEqual([arc(1.5, 2.5)]);
});
