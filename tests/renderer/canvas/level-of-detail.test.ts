import fc from 'fast-check';
import { expect, test } from 'vitest';
import { detailAt, gridStep_m, pipeWidth_px } from '../../../src-renderer/canvas/level-of-detail.ts';

test('nothing that is drawn at a scale is missing at a larger one', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 5000, noNaN: true }), fc.double({ min: 1, max: 50, noNaN: true }), (scale, factor) => {
      const far = detailAt(scale);
      const near = detailAt(scale * factor);
      for (const key of ['symbols', 'names', 'figures', 'fittings', 'fine'] as const) if (far[key]) expect(near[key]).toBe(true);
    }),
  );
});

test('grid lines never stand closer than nine pixels and stay on the snap grid', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.005, max: 2, noNaN: true }), fc.double({ min: 0.01, max: 5000, noNaN: true }), (grid_m, scale) => {
      const step = gridStep_m(grid_m, scale);
      if (step === undefined) return;
      expect(step * scale).toBeGreaterThanOrEqual(9 - 1e-9);
      expect(step / grid_m).toBeCloseTo(Math.round(step / grid_m), 6);
    }),
  );
  expect(gridStep_m(0.1, 200)).toBe(0.1);
  expect(gridStep_m(0.1, 0.001)).toBeUndefined();
});

test('a pipe is true to scale between a line that can be seen and one that is still a line', () => {
  expect(pipeWidth_px(0.0267, 200)).toBeCloseTo(5.34);
  expect(pipeWidth_px(0.0267, 10)).toBe(2);
  expect(pipeWidth_px(0.1143, 4000)).toBe(14);
});
