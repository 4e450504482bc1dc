import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area_m2, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { findOutside, findOverlap, findRingFault } from '#shared/model/ring-relations';
import * as polyclip from 'polyclip-ts';

const ring = (...places: [number, number][]): PlanPoint[] => places.map(([x, y]) => planPoint(x, y));
const ell = ring([0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]);

describe('fault of a ring', () => {
  test.each([
    ['a rectangle', rectangle(2, 1), undefined],
    ['one wound clockwise', rectangle(2, 1).reverse(), undefined],
    ['an L', ell, undefined],
    ['corners along a straight side', ring([0, 0], [1, 0], [2, 0], [2, 2], [0, 2]), undefined],
    ['a bow tie', ring([0, 0], [2, 2], [2, 0], [0, 2]), 'crossing'],
    ['a corner on another side', ring([0, 0], [4, 0], [4, 4], [2, 0], [0, 4]), 'crossing'],
    ['a spike', ring([0, 0], [4, 0], [6, 0], [4, 0.000000001], [4, 4]), 'crossing'],
    ['sides that run along each other', ring([0, 0], [4, 0], [4, 1], [3, 1], [3, 0], [1, 0], [1, 2], [0, 2]), 'crossing'],
    ['a corner twice', ring([0, 0], [4, 0], [4, 0], [4, 4]), 'no-length'],
    ['a line', ring([0, 0], [4, 0], [2, 0]), 'crossing'],
    ['a sliver', ring([0, 0], [0.003, 0], [0.003, 0.0001], [0, 0.0001]), 'no-area'],
  ])('%s', (_, places, kind) => {
    expect(findRingFault(places)?.kind).toBe(kind);
  });

  test('gives up when its effort is spent', () => {
    expect(findRingFault(ell, { left: 2 })?.kind).toBe('too-much');
  });

  test('agrees with an independent polygon library on random rings', () => {
    const places = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })), { minLength: 4, maxLength: 7, selector: ([x, y]) => `${x},${y}` });
    fc.assert(
      fc.property(places, (corners) => {
        const plain = ring(...corners);
        if (findRingFault(plain)) return;
        // The union of a sound ring with itself is that one ring, area unchanged.
        const [polygon, ...others] = polyclip.union([corners.map(([x, y]) => [x, y] as [number, number])]);
        expect(others).toEqual([]);
        expect(polygon).toHaveLength(1);
        expect(area_m2(ring(...((polygon?.[0] ?? []).slice(0, -1) as [number, number][])))).toBeCloseTo(area_m2(plain), 9);
      }),
    );
  });
});

describe('one ring within another', () => {
  test.each([
    ['well inside', rectangle(1, 1, planPoint(0.5, 0.5)), true],
    ['touching a side', rectangle(1, 1), true],
    ['touching within the L', rectangle(2, 2), true],
    ['in the notch', rectangle(1, 1, planPoint(2.5, 2.5)), false],
    ['across the notch', ring([0.5, 3.5], [3.5, 0.5], [3.6, 1.9], [1.9, 3.9]), false],
    ['reaching out', rectangle(5, 1), false],
    ['around it', rectangle(6, 6, planPoint(-1, -1)), false],
  ])('%s', (_, inner, isWithin) => {
    expect(findOutside(inner, ell) === undefined).toBe(isWithin);
    expect(findOutside([...inner].reverse(), [...ell].reverse()) === undefined).toBe(isWithin);
  });
});

describe('overlap', () => {
  test.each([
    ['apart', rectangle(1, 1, planPoint(9, 9)), false],
    ['sharing a side', rectangle(1, 4, planPoint(-1, 0)), false],
    ['sharing a corner', rectangle(1, 1, planPoint(4, 2)), false],
    ['filling the notch', rectangle(2, 2, planPoint(2, 2)), false],
    ['the same', ell, true],
    ['inside', rectangle(0.5, 0.5, planPoint(0.2, 0.2)), true],
    ['around', rectangle(6, 6, planPoint(-1, -1)), true],
    ['across', rectangle(6, 0.5, planPoint(-1, 1)), true],
  ])('%s', (_, other, isShared) => {
    expect(findOverlap(ell, other) !== undefined).toBe(isShared);
    expect(findOverlap(other, ell) !== undefined).toBe(isShared);
  });

  test('agrees with the area that an independent polygon library finds in common', () => {
    const box = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }));
    fc.assert(
      fc.property(box, ([x, y, width, depth]) => {
        const other = rectangle(width, depth, planPoint(x - 1, y - 1));
        const pairs = (places: readonly PlanPoint[]) => places.map((p) => [p.x, p.y] as [number, number]);
        const shared = polyclip.intersection([pairs(ell)], [pairs(other)]);
        expect(findOverlap(ell, other) !== undefined).toBe(shared.length > 0);
      }),
    );
  });
});
