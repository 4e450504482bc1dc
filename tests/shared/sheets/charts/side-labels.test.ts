import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spreadLabels } from '#shared/sheets/charts/side-labels';

test('labels keep their distance and their order, and stay where they are when nothing is near', () => {
  expect(spreadLabels([{ words: 'b', y: 20 }, { words: 'a', y: 5 }], 4, 0, 40)).toEqual([
    { words: 'a', y: 5, from: 5 },
    { words: 'b', y: 20, from: 20 },
  ]);
  expect(spreadLabels([{ words: 'a', y: 39 }, { words: 'b', y: 40 }], 4, 0, 40).map(({ y }) => y)).toEqual([36, 40]);
});

test('as many labels as have room never cover each other', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -10, max: 50, noNaN: true }), { maxLength: 10 }), (heights) => {
      const placed = spreadLabels(heights.map((y, i) => ({ words: String(i), y })), 4, 0, 40);
      placed.forEach(({ y }, i) => {
        expect(y).toBeGreaterThanOrEqual(-1e-9);
        expect(y).toBeLessThanOrEqual(40 + 1e-9);
        if (i > 0) expect(y - (placed[i - 1]?.y ?? 0)).toBeGreaterThanOrEqual(4 - 1e-9);
      });
    }),
  );
});
