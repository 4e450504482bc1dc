import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LabelWish, lineInside_px, overlap_px2, placeLabels, spotsAround } from '../../../src-renderer/canvas/label-placer.ts';

const wish = (key: string, spots: LabelWish['spots'], must = false): LabelWish => ({ key, width: 40, height: 14, spots, must });
const nothing = { boxes: [], lines: [] };

describe('placing labels', () => {
  test('the first spot is taken while it is free', () => {
    expect(placeLabels([wish('a', [{ x: 5, y: 6 }, { x: 100, y: 6 }])], nothing).get('a')).toEqual({ x: 5, y: 6, width: 40, height: 14 });
  });

  test('a spot on a line is left for a free one', () => {
    const placed = placeLabels([wish('a', [{ x: 0, y: 0 }, { x: 0, y: 40 }])], { boxes: [], lines: [[-50, 7, 90, 7]] });
    expect(placed.get('a')?.y).toBe(40);
  });

  test('a long line counts wherever the label lies along it', () => {
    const placed = placeLabels([wish('a', [{ x: 3000, y: 3000 }, { x: 3000, y: 2000 }])], { boxes: [], lines: [[0, 7, 6000, 6007]] });
    expect(placed.get('a')?.y).toBe(2000);
  });

  test('a spot on a symbol is left for a free one', () => {
    const placed = placeLabels([wish('a', [{ x: 0, y: 0 }, { x: 60, y: 0 }])], { boxes: [{ x: 10, y: 0, width: 10, height: 10 }], lines: [] });
    expect(placed.get('a')?.x).toBe(60);
  });

  test('a label that could only cover another is left out, unless it must show', () => {
    const spot = [{ x: 0, y: 0 }];
    expect([...placeLabels([wish('a', spot), wish('b', spot)], nothing).keys()]).toEqual(['a']);
    expect([...placeLabels([wish('a', spot), wish('b', spot, true)], nothing).keys()]).toEqual(['a', 'b']);
  });

  test('shown labels that need not show never cover each other', () => {
    const place = fc.record({ x: fc.integer({ min: 0, max: 300 }), y: fc.integer({ min: 0, max: 200 }) });
    fc.assert(
      fc.property(fc.array(fc.array(place, { minLength: 1, maxLength: 4 }), { maxLength: 25 }), (all) => {
        const boxes = [...placeLabels(all.map((spots, i) => wish(`${i}`, spots)), nothing).values()];
        for (const [i, a] of boxes.entries()) for (const b of boxes.slice(i + 1)) expect(overlap_px2(a, b)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

test('the length of a line inside a box', () => {
  const box = { x: 0, y: 0, width: 10, height: 10 };
  expect(lineInside_px(box, [-5, 5, 15, 5])).toBeCloseTo(10);
  expect(lineInside_px(box, [5, 5, 5, 30])).toBeCloseTo(5);
  expect(lineInside_px(box, [-5, 20, 15, 20])).toBe(0);
  expect(lineInside_px(box, [-5, 5, 5, -5])).toBe(0);
  expect(lineInside_px(box, [0, 0, 10, 10])).toBeCloseTo(Math.hypot(10, 10));
});

test('spots around a symbol keep clear of it', () => {
  for (const { x, y } of spotsAround({ x: 0, y: 0 }, 18, 30, 14)) {
    expect(overlap_px2({ x, y, width: 30, height: 14 }, { x: -10, y: -10, width: 20, height: 20 })).toBe(0);
  }
});
