import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pipeBox, pipeToCeiling_m, pipeToPipe_m, pipeToSolid_m } from '#shared/derived/clash';
import { distanceToOutline_m, isInside, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, planPoint, polar } from '#shared/geometry/point';
import { segmentToPrism_m } from '#shared/geometry/prism';
import { place3 as p } from '../../support/plan-builder.ts';
import { anyPlacing, movedPlace } from './placed-plan.ts';

const pipe = (from: PlanPoint3, to: PlanPoint3, outside_m = 0.1) => ({ from, to, outside_m });
const block = { footprint: rectangle(2, 2, planPoint(1, 1)), bottom_m: 1, top_m: 2 };

describe('clearance of a pipe to a solid', () => {
  test.each([
    ['past its side', p(0, 0, 1.5), p(9, 0, 1.5), 0.95],
    ['over it', p(0, 2, 2.5), p(9, 2, 2.5), 0.45],
    ['under it', p(0, 2, 0.5), p(9, 2, 0.5), 0.45],
    ['upright beside it', p(4, 2, 0), p(4, 2, 9), 0.95],
    ['upright over it', p(2, 2, 2.3), p(2, 2, 9), 0.25],
    ['off its edge, aslant above', p(0, 4, 3), p(9, 4, 3), Math.SQRT2 - 0.05],
    ['off its corner', p(4, 4, 3), p(9, 9, 9), Math.sqrt(3) - 0.05],
    ['ending before it', p(-3, 2, 1.5), p(0, 2, 1.5), 0.95],
    ['touching it with its outside', p(0, 0.95, 1.5), p(9, 0.95, 1.5), 0],
    ['its outside reaching in', p(0, 0.97, 1.5), p(9, 0.97, 1.5), -0.02],
    ['its axis on its side', p(0, 1, 1.5), p(9, 1, 1.5), -0.05],
    ['through it', p(0, 2, 1.5), p(9, 2, 1.5), -0.05],
    ['wholly inside', p(1.5, 1.5, 1.2), p(2.5, 2.5, 1.8), -0.05],
    ['dropping through it', p(2, 2, 9), p(2, 2, 0), -0.05],
    ['a piece without length', p(2, 2, 2.5), p(2, 2, 2.5), 0.45],
  ])('%s', (_, from, to, clearance_m) => {
    expect(pipeToSolid_m(pipe(from, to), block)).toBeCloseTo(clearance_m, 9);
    expect(pipeToSolid_m(pipe(to, from), { ...block, footprint: block.footprint.toReversed() })).toBeCloseTo(clearance_m, 9);
  });

  test('in the bay of a solid shaped like a U', () => {
    const bay = [planPoint(0, 0), planPoint(4, 0), planPoint(4, 3), planPoint(3, 3), planPoint(3, 1), planPoint(1, 1), planPoint(1, 3), planPoint(0, 3)];
    expect(pipeToSolid_m(pipe(p(2, 2, 0), p(2, 2, 9)), { footprint: bay, bottom_m: 0, top_m: 3 })).toBeCloseTo(0.95, 9);
    expect(pipeToSolid_m(pipe(p(2, 2, 4), p(2, 9, 4)), { footprint: bay, bottom_m: 0, top_m: 3 })).toBeCloseTo(Math.SQRT2 - 0.05, 9);
  });

  const mm = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
  const place = fc.record({ x: mm(-4, 4), y: mm(-4, 4), z: mm(-4, 4) });
  const solid = fc
    .record({ arms: fc.array(mm(1, 3), { minLength: 3, maxLength: 7 }), bottom_m: mm(-3, 1), height_m: mm(0, 3) })
    .map(({ arms, bottom_m, height_m }) => ({
      footprint: arms.map((arm, i) => polar(planPoint(0, 0), (2 * Math.PI * i) / arms.length, arm)),
      bottom_m,
      top_m: bottom_m + height_m,
    }));

  /** Distance of one place to an upright solid. */
  const placeToSolid_m = (at: PlanPoint3, { footprint, bottom_m, top_m }: { footprint: readonly PlanPoint[]; bottom_m: number; top_m: number }): number => {
    const aside = isInside(at, footprint) ? 0 : distanceToOutline_m(at, footprint);
    return Math.hypot(aside, Math.max(bottom_m - at.z, 0, at.z - top_m));
  };

  /** Least of a function over 0 … 1: tried at many shares, then every dip among them that could be the deepest followed down. */
  function leastOf(far: (share: number) => number, steps: number, steepest: number): number {
    const tried = Array.from({ length: steps + 1 }, (_, i) => far(i / steps));
    let least = Math.min(...tried);
    const worth = least + steepest / steps;
    for (const [i, start] of tried.entries()) {
      if (start > worth || start > (tried[i - 1] ?? Infinity) || start > (tried[i + 1] ?? Infinity)) continue;
      let [share, best] = [i / steps, start];
      for (let step = 0.5 / steps; step > 1e-9; step /= 2) {
        for (const next of [share - step, share + step]) {
          const value = far(Math.max(0, Math.min(1, next)));
          if (value < best) [share, best] = [Math.max(0, Math.min(1, next)), value];
        }
      }
      least = Math.min(least, best);
    }
    return least;
  }
  const onWay = (from: PlanPoint3, to: PlanPoint3, share: number) => p(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share, from.z + (to.z - from.z) * share);
  const length_m = (from: PlanPoint3, to: PlanPoint3) => Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);

  test('is what a search along its axis gives, to a millionth of a metre', () => {
    fc.assert(
      fc.property(place, place, solid, (from, to, thing) => {
        const searched_m = leastOf((share) => placeToSolid_m(onWay(from, to, share), thing), 200, length_m(from, to));
        expect(Math.abs(pipeToSolid_m(pipe(from, to, 0), thing) - searched_m)).toBeLessThanOrEqual(1e-6);
      }),
      { numRuns: 2000 },
    );
  });

  test('the same for a solid with a hole cut out of it, such as a slab with a shaft', () => {
    fc.assert(
      fc.property(place, place, solid, (from, to, thing) => {
        const hole = thing.footprint.map(({ x, y }) => planPoint(0.4 * x, 0.4 * y));
        const far_m = (at: PlanPoint3): number => {
          const isOver = isInside(at, thing.footprint) && !isInside(at, hole);
          const aside = isOver ? 0 : Math.min(distanceToOutline_m(at, thing.footprint), distanceToOutline_m(at, hole));
          return Math.hypot(aside, Math.max(thing.bottom_m - at.z, 0, at.z - thing.top_m));
        };
        const searched_m = leastOf((share) => far_m(onWay(from, to, share)), 200, length_m(from, to));
        expect(Math.abs(segmentToPrism_m({ a: from, b: to }, { ...thing, holes: [hole] }) - searched_m)).toBeLessThanOrEqual(1e-6);
      }),
      { numRuns: 2000 },
    );
  });

  test('of two pipes is what a search along one gives, and the same from either', () => {
    /** From a place to the axis by the place's height over the line, with no use of the code under test. */
    const placeToAxis_m = (at: PlanPoint3, from: PlanPoint3, to: PlanPoint3): number => {
      const [u, w] = [[to.x - from.x, to.y - from.y, to.z - from.z] as const, [at.x - from.x, at.y - from.y, at.z - from.z] as const];
      const along = u[0] * w[0] + u[1] * w[1] + u[2] * w[2];
      const all = u[0] ** 2 + u[1] ** 2 + u[2] ** 2;
      if (along <= 0) return length_m(at, from);
      if (along >= all) return length_m(at, to);
      return Math.hypot(u[1] * w[2] - u[2] * w[1], u[2] * w[0] - u[0] * w[2], u[0] * w[1] - u[1] * w[0]) / Math.sqrt(all);
    };
    fc.assert(
      fc.property(place, place, place, place, (a, b, c, d) => {
        const searched_m = leastOf((share) => placeToAxis_m(onWay(a, b, share), c, d), 100, length_m(a, b));
        const found_m = pipeToPipe_m(pipe(a, b, 0), pipe(c, d, 0));
        expect(Math.abs(found_m - searched_m)).toBeLessThanOrEqual(1e-6);
        expect(pipeToPipe_m(pipe(d, c, 0), pipe(b, a, 0))).toBeCloseTo(found_m, 9);
      }),
      { numRuns: 2000 },
    );
  });

  test('does not change when everything is turned, shifted or mirrored', () => {
    fc.assert(
      fc.property(place, place, solid, anyPlacing, (from, to, thing, placing) => {
        const moved = { ...thing, footprint: thing.footprint.map((corner) => movedPlace(corner, placing)) };
        expect(pipeToSolid_m(pipe(movedPlace(from, placing), movedPlace(to, placing)), moved)).toBeCloseTo(pipeToSolid_m(pipe(from, to), thing), 7);
      }),
    );
  });
});

test('clearance of two pipes is between their outsides', () => {
  expect(pipeToPipe_m(pipe(p(0, 0, 0), p(4, 0, 0)), pipe(p(2, 1, 0), p(2, 5, 0), 0.2))).toBeCloseTo(0.85, 12);
  expect(pipeToPipe_m(pipe(p(0, 0, 0), p(4, 0, 0)), pipe(p(2, -1, 0), p(2, 5, 0), 0.2))).toBeCloseTo(-0.15, 12);
});

test('clearance to a ceiling counts from the outside of the pipe, and only within what is asked for', () => {
  const flat = { rings: [rectangle(4, 4)], at: p(0, 0, 3), east: 0, north: 0 };
  expect(pipeToCeiling_m(pipe(p(1, 1, 2.8), p(3, 3, 2.8)), [flat], 1)).toBeCloseTo(0.15, 12);
  expect(pipeToCeiling_m(pipe(p(1, 1, 2.8), p(3, 3, 2.8)), [flat], 0.1)).toBe(Infinity);
  expect(pipeToCeiling_m(pipe(p(1, 1, 2), p(3, 3, 4)), [flat], 0.1)).toBeCloseTo(-0.05, 12);
  expect(pipeToCeiling_m(pipe(p(1, 1, 2.8), p(3, 3, 2.8)), [flat, { ...flat, at: p(0, 0, 2.9) }], 1)).toBeCloseTo(0.05, 12);
  expect(pipeToCeiling_m(pipe(p(1, 1, 2.8), p(3, 3, 2.8)), [], 1)).toBe(Infinity);
});

test('the box around a pipe holds its outside and the margin', () => {
  expect(pipeBox(pipe(p(4, 1, 0), p(1, 2, 0), 0.5), 0.5)).toEqual({ minX: 0.25, minY: 0.25, maxX: 4.75, maxY: 2.75 });
});
