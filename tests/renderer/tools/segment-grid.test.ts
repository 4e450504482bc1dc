import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxesTouch } from '#shared/geometry/outline';
import { buildSegmentGrid } from '../../../src-renderer/tools/segment-grid.ts';

const number = fc.double({ min: -1000, max: 1000, noNaN: true });
const pieces = fc.array(fc.tuple(number, number, number, number), { maxLength: 60 });

const found = (segments: Float64Array, box: { minX: number; minY: number; maxX: number; maxY: number }): Set<number> => {
  const seen = new Set<number>();
  buildSegmentGrid(segments).visitNear(box, (piece) => seen.add(piece));
  return seen;
};

describe('segment grid', () => {
  test('names every piece that has a place in the box', () => {
    fc.assert(
      fc.property(pieces, number, number, fc.double({ min: 0, max: 300, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (list, x, y, reach, share) => {
        const segments = Float64Array.from(list.flat());
        const box = { minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach };
        const seen = found(segments, box);
        list.forEach(([x1, y1, x2, y2], piece) => {
          const px = x1 + (x2 - x1) * share;
          const py = y1 + (y2 - y1) * share;
          if (boxesTouch({ minX: px, minY: py, maxX: px, maxY: py }, box)) expect(seen.has(piece)).toBe(true);
        });
      }),
    );
  });

  test('leaves far pieces out', () => {
    const segments = Float64Array.from(Array.from({ length: 400 }, (_, i) => [i, 0, i + 0.5, 0]).flat());
    const seen = found(segments, { minX: 10, minY: -1, maxX: 11, maxY: 1 });
    expect(seen.has(10)).toBe(true);
    expect(seen.has(200)).toBe(false);
    expect(seen.size).toBeLessThan(20);
  });

  test('many long lines do not fill the grid', () => {
    const segments = Float64Array.from(Array.from({ length: 20_000 }, (_, i) => [0, i / 20, 1000, 1000 - i / 20]).flat());
    expect(found(segments, { minX: 499, minY: 499, maxX: 501, maxY: 501 }).size).toBeGreaterThan(0);
  });

  test('a drawing without lines, or with damaged numbers, answers nothing', () => {
    expect(found(new Float64Array(), { minX: 0, minY: 0, maxX: 1, maxY: 1 }).size).toBe(0);
    expect(found(Float64Array.from([Number.NaN, 0, 1, 1, 0, 0, 1, 1]), { minX: 0, minY: 0, maxX: 1, maxY: 1 })).toEqual(new Set([1]));
  });
});
