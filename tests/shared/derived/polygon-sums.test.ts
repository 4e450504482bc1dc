import fc from 'fast-check';
import { difference, intersection, union } from 'polyclip-ts';
import { describe, expect, test } from 'vitest';
import { type Region, differenceOf, fillOf, intersectionOf, partsOf } from '#shared/derived/polygon-sums';
import { momentsOf } from '#shared/geometry/moments';
import { type Outline, distanceToOutline_m, isCounterClockwise, isInside, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint, polar } from '#shared/geometry/point';

const areaOf = (region: Region): number => momentsOf(region).area_m2;
const at = (x: number, y: number, width = 2, depth = 2) => rectangle(width, depth, planPoint(x, y));

describe('polygon sums', () => {
  test('of a square less a larger one with a hole: what the hole leaves', () => {
    const frame = differenceOf([at(-1, -1, 4, 4)], [[at(0.5, 0.5, 1, 1)]]);
    expect(areaOf(differenceOf([at(0, 0)], [frame]))).toBeCloseTo(1, 9);
  });

  test('of two squares that overlap in a quarter', () => {
    expect(areaOf(intersectionOf([at(0, 0)], [at(1, 1)]))).toBeCloseTo(1, 9);
    expect(areaOf(differenceOf([at(0, 0)], [[at(1, 1)]]))).toBeCloseTo(3, 9);
  });

  test('of squares that share a side leave no seam', () => {
    expect(intersectionOf([at(0, 0)], [at(2, 0)])).toEqual([]);
    expect(differenceOf([at(0, 0, 4, 2)], [[at(0, 0)], [at(2, 0)]])).toEqual([]);
  });

  test('with nothing', () => {
    expect(fillOf([])).toEqual([]);
    expect(differenceOf([], [[at(0, 0)]])).toEqual([]);
    expect(differenceOf([[]], [[at(0, 0)]])).toEqual([]);
    expect(differenceOf([at(0, 0)], [])).toHaveLength(1);
    expect(intersectionOf([], [at(0, 0)])).toEqual([]);
    expect(intersectionOf([at(0, 0)], [[]])).toEqual([]);
    expect(partsOf([])).toEqual([]);
  });

  test('fill rings of either winding, those that overlap and those that cross themselves', () => {
    const ground = [at(-5, -5, 20, 20)];
    const area = (rings: readonly Outline[]) => areaOf(intersectionOf(ground, fillOf(rings)));
    expect(area([at(0, 0).toReversed()])).toBeCloseTo(4, 9);
    expect(area([at(0, 0).toReversed(), at(1, 1)])).toBeCloseTo(7, 9);
    expect(area([[planPoint(0, 0), planPoint(2, 2), planPoint(2, 0), planPoint(0, 2)]])).toBeCloseTo(2, 5);
  });

  test('parts come apart with their holes, islands in holes as parts of their own', () => {
    const region = differenceOf([at(0, 0, 10, 10), at(20, 0)], [[at(2, 2, 6, 6)]]);
    const parts = partsOf([...region, at(4, 4)]);
    expect(parts.map(areaOf).sort((a, b) => a - b)).toEqual([4, 4, 64]);
    const ring = parts.find((part) => part.length === 2);
    expect(ring?.map(isCounterClockwise)).toEqual([true, false]);
  });

  test.each([
    ['a spike along a level line', [planPoint(3, 0), planPoint(5, 0), planPoint(6, 0), planPoint(1, 0), planPoint(4, 4), planPoint(2, 6)]],
    ['doubled corners', [planPoint(0, 0), planPoint(0, 0), planPoint(4, 0), planPoint(4, 0), planPoint(4, 4), planPoint(0, 0)]],
    ['corners along straight sides', [planPoint(0, 0), planPoint(1, 0), planPoint(4, 0), planPoint(4, 2), planPoint(4, 4), planPoint(2, 2)]],
    ['an upright spike', [planPoint(0, 0), planPoint(4, 0), planPoint(4, 4), planPoint(4, 9), planPoint(4, 4), planPoint(0, 4)]],
  ])('come to an end for a ring with %s', (_, ring) => {
    const ground = [at(-5, -5, 20, 20)];
    const inside = areaOf(intersectionOf(ground, fillOf([ring])));
    expect(inside).toBeGreaterThan(0);
    expect(areaOf(differenceOf(ground, [fillOf([ring])]))).toBeCloseTo(400 - inside, 5);
  });

  test('leave nothing of a ring that is but a line', () => {
    expect(differenceOf([[planPoint(0, 0), planPoint(4, 4), planPoint(2, 2)]], [])).toEqual([]);
  });
});

const whole = (min: number, max: number) => fc.integer({ min, max });
/** Convex and concave rings whose corners lie on a coarse grid, so that sides and corners coincide often. */
const square = fc.record({ x: whole(0, 10), y: whole(0, 10), w: whole(1, 6), d: whole(1, 6) }).map(({ x, y, w, d }) => at(x, y, w, d));
const wedge = fc
  .record({ x: whole(0, 10), y: whole(0, 10), turn: whole(0, 7), size: whole(1, 6) })
  .map(({ x, y, turn, size }) => [0, 3, 4, 5].map((step, i) => (i === 0 ? planPoint(x, y) : polar(planPoint(x, y), ((turn + step) * Math.PI) / 4, size))));
const star = fc
  .record({ x: whole(0, 10), y: whole(0, 10), arms: fc.array(whole(1, 5), { minLength: 4, maxLength: 8 }) })
  .map(({ x, y, arms }) => arms.map((arm, i) => polar(planPoint(x, y), (2 * Math.PI * i) / arms.length, arm)));
const ring = fc.oneof(square, wedge, star).map((outline) => (isCounterClockwise(outline) ? outline : outline.toReversed()));

test('differences hold exactly the places of the first that are in none of the others', () => {
  const isIn = (p: PlanPoint, rings: readonly Outline[]): boolean => rings.filter((outline) => isInside(p, outline)).length % 2 === 1;
  fc.assert(
    fc.property(ring, fc.array(ring, { maxLength: 8 }), fc.array(fc.record({ x: whole(0, 14_000), y: whole(0, 14_000) }), { minLength: 30, maxLength: 30 }), (first, others, picks) => {
      const left = differenceOf([first], others.map((outline) => [outline]));
      for (const { x, y } of picks) {
        const p = planPoint(x / 1000 - 1, y / 1000 - 1);
        if ([first, ...others].some((outline) => distanceToOutline_m(p, outline) < 1e-5)) continue;
        expect(isIn(p, left)).toBe(isInside(p, first) && !others.some((outline) => isInside(p, outline)));
      }
    }),
    { numRuns: 400 },
  );
});

/** What the other library answers; it gives up on some rings whose corners coincide, and then there is nothing to compare. */
function answerOf<T>(ask: () => T): T | undefined {
  try {
    return ask();
  } catch {
    return undefined;
  }
}

test('areas agree with another polygon library', () => {
  type Polygon = [number, number][][];
  const theirs = (outline: Outline): Polygon => [outline.map((p): [number, number] => [Math.round(p.x * 1e6) / 1e6, Math.round(p.y * 1e6) / 1e6])];
  const area = (polygons: readonly Polygon[]): number => polygons.flat().reduce((sum, each) => sum + momentsOf([each.slice(0, -1).map(([x, y]) => planPoint(x, y))]).area_m2, 0);
  fc.assert(
    fc.property(ring, fc.array(ring, { minLength: 1, maxLength: 6 }), (first, others) => {
      const answers = answerOf(() => {
        const all = union(theirs(others[0] ?? []), ...others.slice(1).map(theirs));
        return { left: area(difference(theirs(first), all)), shared: area(intersection(theirs(first), all)) };
      });
      fc.pre(answers !== undefined);
      expect(areaOf(differenceOf([first], others.map((outline) => [outline])))).toBeCloseTo(answers.left, 3);
      expect(areaOf(intersectionOf([first], fillOf(others)))).toBeCloseTo(answers.shared, 3);
    }),
    { numRuns: 100 },
  );
});
