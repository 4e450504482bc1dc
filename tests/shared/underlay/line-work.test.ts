import { describe, expect, test } from 'vitest';
import { MOST_SEGMENTS } from '#shared/underlay/drawing';
import { Budget, LineWork, ringArea, ringOf, transformedText } from '#shared/underlay/line-work';
import { scaleBy, turnBy } from '#shared/underlay/matrix';
import { problemOf } from '../../support/underlay.ts';

describe('line work', () => {
  test('pieces of no length and empty texts are dropped', () => {
    const work = new LineWork(new Budget());
    work.line(1, 1, 1, 1);
    work.text(0, 0, 2, 0, '  ');
    work.text(0, 0, 0, 0, 'flat');
    expect(work.isEmpty).toBe(true);
  });

  test('a closed run that repeats its first place has no doubled corner and no piece of no length', () => {
    const work = new LineWork(new Budget());
    work.polyline([0, 0, 4, 0, 4, 3, 0, 0], true);
    expect(work.segmentCount).toBe(3);
    expect([...(work.closed[0] ?? [])]).toEqual([0, 0, 4, 0, 4, 3]);
  });

  test('a drawing that grows past its bound is refused with advice', () => {
    const budget = new Budget();
    budget.spend(MOST_SEGMENTS);
    expect(problemOf(() => budget.spend(1)).remedy).toMatch(/only the floor/);
  });

  test('rings need an area and no more corners than an enclosure takes', () => {
    expect(ringOf([0, 0, 1, 0, 2, 0])).toBeUndefined();
    expect(ringOf(Array.from({ length: 5000 }, (_, i) => Math.cos(i) * i))).toBeUndefined();
    expect(ringArea([0, 0, 4, 0, 4, 3, 0, 3])).toBe(12);
    expect(ringArea([1e9, 1e9, 1e9, 1e9 + 1, 1e9 + 1, 1e9 + 1, 1e9 + 1, 1e9])).toBe(-1);
  });
});

describe('texts in mirrored symbols', () => {
  const text = { x: 10, y: 5, height: 2, rotation_rad: 0, text: 'N1' };

  test('turning and stretching carry place, direction and height', () => {
    const moved = transformedText(turnBy(Math.PI / 2), text);
    expect([moved.x, moved.y, moved.height]).toEqual([expect.closeTo(-5), expect.closeTo(10), expect.closeTo(2)]);
    expect(moved.rotation_rad).toBeCloseTo(Math.PI / 2);
    expect(transformedText(scaleBy(3, 3), text).height).toBeCloseTo(6);
  });

  test('mirrored top to bottom it covers the same band and reads forward', () => {
    const moved = transformedText(scaleBy(1, -1), text);
    expect(moved).toMatchObject({ x: 10, y: -7, rotation_rad: 0 });
  });

  test('mirrored left to right it ends where it began and reads forward', () => {
    const moved = transformedText(scaleBy(-1, 1), text);
    expect(moved.x).toBeLessThan(-10);
    expect(moved.y).toBe(5);
    expect(Math.cos(moved.rotation_rad)).toBeCloseTo(1);
  });
});
