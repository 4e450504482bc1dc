import fc from 'fast-check';
import { union } from 'polyclip-ts';
import { describe, expect, test } from 'vitest';
import { differenceOf, fillOf, intersectionOf, partsOf, type Region, unionOf } from '#shared/derived/polygon-sums';
import { momentsOf } from '#shared/geometry/moments';
import { isCounterClockwise, rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';

const areaOf = (region: Region): number => momentsOf(region).area_m2;
const at = (x: number, y: number, width = 2, depth = 2) => rectangle(width, depth, planPoint(x, y));

describe('polygon sums', () => {
  test('of two squares that overlap in a quarter', () => {
    expect(areaOf(unionOf([[at(0, 0)], [at(1, 1)]]))).toBeCloseTo(7, 9);
    expect(areaOf(intersectionOf([at(0, 0)], [at(1, 1)]))).toBeCloseTo(1, 9);
    expect(areaOf(differenceOf([at(0, 0)], [[at(1, 1)]]))).toBeCloseTo(3, 9);
  });

  test('of squares that share a side leave no seam', () => {
    expect(unionOf([[at(0, 0)], [at(2, 0)]])).toHaveLength(1);
    expect(intersectionOf([at(0, 0)], [at(2, 0)])).toEqual([]);
  });

  test('with nothing', () => {
    expect(unionOf([])).toEqual([]);
    expect(fillOf([])).toEqual([]);
    expect(differenceOf([], [[at(0, 0)]])).toEqual([]);
    expect(differenceOf([at(0, 0)], [])).toHaveLength(1);
    expect(intersectionOf([], [at(0, 0)])).toEqual([]);
    expect(partsOf([])).toEqual([]);
  });

  test('fill rings of either winding and those that cross themselves', () => {
    expect(areaOf(fillOf([at(0, 0).toReversed()]))).toBeCloseTo(4, 9);
    const bowTie = [planPoint(0, 0), planPoint(2, 2), planPoint(2, 0), planPoint(0, 2)];
    expect(areaOf(fillOf([bowTie]))).toBeCloseTo(2, 5);
  });

  test('parts come apart with their holes, islands in holes as parts of their own', () => {
    const region = differenceOf([at(0, 0, 10, 10), at(20, 0)], [[at(2, 2, 6, 6)]]);
    const withIsland = unionOf([region, [at(4, 4)]]);
    const parts = partsOf(withIsland);
    expect(parts.map(areaOf).sort((a, b) => a - b)).toEqual([4, 4, 64]);
    const ring = parts.find((part) => part.length === 2);
    expect(ring?.map(isCounterClockwise)).toEqual([true, false]);
  });

  test('agree with another polygon library on random rectangles', () => {
    const square = fc.record({ x: fc.integer({ min: 0, max: 80 }), y: fc.integer({ min: 0, max: 80 }), w: fc.integer({ min: 1, max: 40 }), d: fc.integer({ min: 1, max: 40 }) });
    fc.assert(
      fc.property(fc.array(square, { minLength: 1, maxLength: 12 }), (squares) => {
        const rings = squares.map(({ x, y, w, d }) => at(x / 7, y / 7, w / 7, d / 7));
        const [first, ...others] = rings.map((ring): [number, number][][] => [ring.map((p): [number, number] => [p.x, p.y])]);
        const theirs = first ? union(first, ...others) : [];
        const area = theirs.flat().reduce((sum, ring) => sum + momentsOf([ring.slice(0, -1).map(([x, y]) => planPoint(x, y))]).area_m2, 0);
        expect(areaOf(unionOf(rings.map((ring) => [ring])))).toBeCloseTo(area, 3);
      }),
      { numRuns: 60 },
    );
  });
});
