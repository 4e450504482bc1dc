import { describe, expect, test } from 'vitest';
import { besideWalls, lengthAlong, nearestOnRing, wayAlong } from '#shared/geometry/along-ring';
import { type PlanPoint, planPoint } from '#shared/geometry/point';

/** An L: 6 by 4 with its north-east quarter cut out. */
const L = [planPoint(0, 0), planPoint(6, 0), planPoint(6, 2), planPoint(3, 2), planPoint(3, 4), planPoint(0, 4)];
const ring = (corners: readonly PlanPoint[], away: number) => besideWalls(corners, away) ?? { sides: [] };
const on = (corners: readonly PlanPoint[], away: number, x: number, y: number) => {
  const found = nearestOnRing(ring(corners, away), planPoint(x, y));
  if (!found) throw new Error('Nothing fits.');
  return found;
};
const round = (places: readonly PlanPoint[] | undefined) => places?.map(({ x, y }) => [Number(x.toFixed(6)), Number(y.toFixed(6))]);

describe('a line beside walls', () => {
  test('keeps its distance in inner and outer corners alike', () => {
    expect(round(ring(L, 0.5).sides.map(({ a }) => a))).toEqual([[0.5, 0.5], [5.5, 0.5], [5.5, 1.5], [2.5, 1.5], [2.5, 3.5], [0.5, 3.5]]);
  });
  test('passes over places on a straight wall', () => {
    expect(ring([planPoint(0, 0), planPoint(3, 0), planPoint(6, 0), planPoint(6, 4), planPoint(0, 4)], 0.5).sides).toHaveLength(4);
  });
  test('goes the shorter way round the corners', () => {
    expect(round(wayAlong(ring(L, 0.5), on(L, 0.5, 1, 0), on(L, 0.5, 6, 1)))).toEqual([[5.5, 0.5], [5.5, 1]]);
    expect(round(wayAlong(ring(L, 0.5), on(L, 0.5, 0, 1), on(L, 0.5, 1, 0)))).toEqual([[0.5, 0.5], [1, 0.5]]);
    expect(round(wayAlong(ring(L, 0.5), on(L, 0.5, 1, 0), on(L, 0.5, 4, 0)))).toEqual([[4, 0.5]]);
    expect(round(wayAlong(ring(L, 0.5), on(L, 0.5, 4, 0), on(L, 0.5, 1, 0)))).toEqual([[1, 0.5]]);
  });
  test('goes a typed length, round corners', () => {
    expect(round(lengthAlong(ring(L, 0.5), on(L, 0.5, 4, 0), on(L, 0.5, 6, 0.8), 2))).toEqual([[5.5, 0.5], [5.5, 1]]);
    expect(round(lengthAlong(ring(L, 0.5), on(L, 0.5, 2, 0), on(L, 0.5, 1, 0), 1))).toEqual([[1, 0.5]]);
    expect(lengthAlong(ring(L, 0.5), on(L, 0.5, 2, 0), on(L, 0.5, 1, 0), 1000)).toBeUndefined();
  });
  test('finds no way through where two walls stand closer than twice the distance', () => {
    const narrow = [planPoint(0, 0), planPoint(6, 0), planPoint(6, 4), planPoint(4, 4), planPoint(4, 8), planPoint(3.5, 8), planPoint(3.5, 4), planPoint(0, 4)];
    const inset = ring(narrow, 0.5);
    // Both sides of the niche and its end.
    expect(inset.sides.filter(({ fits }) => !fits)).toHaveLength(3);
    expect(wayAlong(inset, on(narrow, 0.5, 1, 4), on(narrow, 0.5, 5, 4))).toBeDefined();
    expect(besideWalls([planPoint(0, 0), planPoint(1, 0)], 0.5)).toBeUndefined();
  });
  test('a shaft is followed on its outer side', () => {
    const shaft = [planPoint(1, 1), planPoint(1, 2), planPoint(2, 2), planPoint(2, 1)];
    expect(round(ring(shaft, 0.5).sides.map(({ a }) => a))).toEqual([[0.5, 0.5], [0.5, 2.5], [2.5, 2.5], [2.5, 0.5]]);
  });
});
