import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillRings } from '#shared/underlay/fill-rings';
import { ringArea } from '#shared/underlay/line-work';

const box = (x: number, y: number, size: number): number[] => [x, y, x + size, y, x + size, y + size, x, y + size];
const reversed = (ring: number[]): number[] => {
  const turned: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) turned.push(ring[i] ?? 0, ring[i + 1] ?? 0);
  return turned;
};

/** Winding number of a place: what a painter with the non-zero rule asks. */
const winding = (ring: ArrayLike<number>, x: number, y: number): number => {
  let turns = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const [ax, ay, bx, by] = [ring[i] ?? 0, ring[i + 1] ?? 0, ring[j] ?? 0, ring[j + 1] ?? 0];
    const side = (bx - ax) * (y - ay) - (x - ax) * (by - ay);
    if (ay <= y && by > y && side > 0) turns += 1;
    if (ay > y && by <= y && side < 0) turns -= 1;
  }
  return turns;
};
const isPainted = (rings: readonly Float64Array[], x: number, y: number): boolean => rings.some((ring) => winding(ring, x, y) !== 0);

describe('rings inside rings', () => {
  test('a wall between two rings leaves the room inside free, whatever way the rings wind', () => {
    for (const inner of [box(1, 1, 8), reversed(box(1, 1, 8))]) {
      const rings = fillRings([box(0, 0, 10), inner], 'evenodd');
      expect(rings).toHaveLength(1);
      expect(isPainted(rings, 0.5, 5)).toBe(true);
      expect(isPainted(rings, 5, 5)).toBe(false);
      expect(Math.abs(ringArea(rings[0] ?? []))).toBeCloseTo(36, 9);
    }
  });

  test('by the non-zero rule a ring that winds the same way is no hole', () => {
    expect(isPainted(fillRings([box(0, 0, 10), box(1, 1, 8)], 'nonzero'), 5, 5)).toBe(true);
    expect(isPainted(fillRings([box(0, 0, 10), reversed(box(1, 1, 8))], 'nonzero'), 5, 5)).toBe(false);
  });

  test('an island in a hole is filled again', () => {
    const rings = fillRings([box(0, 0, 10), box(1, 1, 8), box(4, 4, 2)], 'evenodd');
    expect(rings).toHaveLength(2);
    expect(isPainted(rings, 5, 5)).toBe(true);
    expect(isPainted(rings, 2, 2)).toBe(false);
  });

  test('rings side by side stay apart', () => {
    expect(fillRings([box(0, 0, 1), box(5, 0, 1)], 'evenodd')).toHaveLength(2);
  });

  test('several holes of one ring are all free', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), (count) => {
        const holes = Array.from({ length: count }, (_, i) => box(i * 3 + 1, 1, 1));
        const rings = fillRings([box(0, 0, 40), ...holes], 'evenodd');
        expect(rings).toHaveLength(1);
        for (let i = 0; i < count; i += 1) expect(isPainted(rings, i * 3 + 1.5, 1.5)).toBe(false);
        expect(isPainted(rings, 20, 30)).toBe(true);
        expect(Math.abs(ringArea(rings[0] ?? []))).toBeCloseTo(1600 - count, 6);
      }),
    );
  });

  test('many rings apart are all filled; a nest too large to be worked out is left as outlines', () => {
    const apart = Array.from({ length: 3000 }, (_, i) => box((i % 60) * 2, Math.floor(i / 60) * 2, 1));
    expect(fillRings(apart, 'nonzero')).toHaveLength(3000);
    const nest = Array.from({ length: 1400 }, (_, i) => Array.from({ length: 400 }, (__, k) => (k % 2 ? Math.sin(k / 63.66) : Math.cos(k / 63.66)) * (2000 - i)));
    expect(fillRings(nest, 'evenodd')).toEqual([]);
  });

  test('what encloses nothing is left out', () => {
    expect(fillRings([[0, 0, 1, 1], [0, 0, 1, 0, 2, 0]], 'evenodd')).toEqual([]);
  });
});
