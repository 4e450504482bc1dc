import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arcPieces, pushArc, pushBulge, pushCubic } from '#shared/underlay/flatten';
import { pushSpline, isSoundSpline } from '#shared/underlay/rational-spline';

const pairs = (run: readonly number[]): [number, number][] => Array.from({ length: run.length / 2 }, (_, i) => [run[2 * i] ?? 0, run[2 * i + 1] ?? 0]);

describe('arcs', () => {
  test('chords stay within the tolerance: sagitta = r·(1 − cos(step / 2))', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1000, noNaN: true }), fc.double({ min: 0.1, max: 2 * Math.PI, noNaN: true }), (radius, sweep) => {
        const tolerance = 0.001;
        const sagitta = radius * (1 - Math.cos(sweep / arcPieces(radius, sweep, tolerance) / 2));
        const finest = radius * (1 - Math.cos(Math.PI / 360));
        expect(sagitta).toBeLessThanOrEqual(Math.max(tolerance, finest) * 1.000001);
      }),
    );
  });

  test('a tiny circle takes few pieces, one of unknown size many', () => {
    expect(arcPieces(0.01, 2 * Math.PI, 0.01)).toBe(12);
    expect(arcPieces(1, 2 * Math.PI, 0)).toBe(96);
  });

  test('both ends are in the run, and every place is on the circle', () => {
    const run: number[] = [];
    pushArc(run, [2, 0, 0, 2, 10, 20], 0, Math.PI / 2, 5);
    expect(run).toHaveLength(12);
    expect(pairs(run)[0]).toEqual([12, 20]);
    expect(pairs(run)[5]?.[1]).toBeCloseTo(22, 12);
    for (const [x, y] of pairs(run)) expect(Math.hypot(x - 10, y - 20)).toBeCloseTo(2, 12);
  });
});

describe('bulges', () => {
  test('bulge 1 is half a turn counter-clockwise: from 0,0 to 2,0 it passes below, through 1,−1', () => {
    const run: number[] = [];
    pushBulge(run, 0, 0, 2, 0, 1, 0.0001);
    expect(pairs(run).every(([x, y]) => Math.abs(Math.hypot(x - 1, y) - 1) < 1e-12)).toBe(true);
    expect(Math.min(...pairs(run).map(([, y]) => y))).toBeCloseTo(-1, 3);
    expect(pairs(run).at(-1)).toEqual([2, 0]);
  });

  test('a negative bulge lies on the other side', () => {
    const run: number[] = [];
    pushBulge(run, 0, 0, 2, 0, -1, 0.0001);
    expect(Math.max(...pairs(run).map(([, y]) => y))).toBeCloseTo(1, 3);
  });

  test('height over chord is bulge · chord / 2, its definition', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 5, noNaN: true }), (bulge) => {
        const run: number[] = [];
        pushBulge(run, 0, 0, 10, 0, bulge, 1e-5);
        expect(-Math.min(...pairs(run).map(([, y]) => y))).toBeCloseTo((bulge * 10) / 2, 1);
      }),
    );
  });

  test('no bulge is one straight piece', () => {
    const run: number[] = [];
    pushBulge(run, 0, 0, 2, 3, 0, 0.1);
    expect(run).toEqual([2, 3]);
  });
});

describe('cubic curves', () => {
  test('stay within the tolerance of the curve (Wang’s bound)', () => {
    const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: 8, maxLength: 8 }), (c) => {
        const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = c;
        const run = [x0, y0];
        pushCubic(run, x0, y0, x1, y1, x2, y2, x3, y3, 0.1);
        const places = pairs(run);
        const at = (t: number): [number, number] => {
          const s = 1 - t;
          const mix = (p: number, q: number, r: number, w: number): number => s * s * s * p + 3 * s * s * t * q + 3 * s * t * t * r + t * t * t * w;
          return [mix(x0, x1, x2, x3), mix(y0, y1, y2, y3)];
        };
        for (let i = 0; i + 1 < places.length; i += 1) {
          const [ax, ay] = places[i] ?? [0, 0];
          const [bx, by] = places[i + 1] ?? [0, 0];
          const [mx, my] = at((i + 0.5) / (places.length - 1));
          expect(Math.hypot((ax + bx) / 2 - mx, (ay + by) / 2 - my)).toBeLessThan(0.1001);
        }
      }),
    );
  });
});

describe('rational splines', () => {
  // Quarter circle as a rational quadratic, weights 1, √2/2, 1: The NURBS Book (Piegl, Tiller), § 7.3.
  const quarter = { degree: 2, knots: [0, 0, 0, 1, 1, 1], places: [1, 0, 1, 1, 0, 1], weights: [1, Math.SQRT1_2, 1] };

  test('the quarter circle of the textbook is a quarter circle', () => {
    const run: number[] = [];
    pushSpline(run, quarter, 1e-4);
    expect(run.length).toBeGreaterThan(20);
    for (const [x, y] of pairs(run)) expect(Math.hypot(x, y)).toBeCloseTo(1, 12);
    expect(pairs(run)[0]).toEqual([1, 0]);
    expect(pairs(run).at(-1)).toEqual([0, 1]);
  });

  test('degree 1 is the run of its places', () => {
    const run: number[] = [];
    pushSpline(run, { degree: 1, knots: [0, 0, 1, 2, 2], places: [0, 0, 4, 1, 9, 0], weights: undefined }, 0.1);
    expect(run).toEqual([0, 0, 4, 1, 9, 0]);
  });

  test('a curve that doubles back on a line reaches its far end', () => {
    const run: number[] = [];
    pushSpline(run, { degree: 3, knots: [0, 0, 0, 0, 1, 2, 3, 3, 3, 3], places: [0, 0, 0, 0, 0, 230.628, 0, 0, 0, 0, 0, 0], weights: undefined }, 0.01);
    // Summit of the third basis function, by the Cox–de Boor recurrence on a fine grid.
    expect(Math.max(...pairs(run).map(([, y]) => y))).toBeCloseTo(137.567, 2);
  });

  test('numbers that do not fit together are told', () => {
    expect(isSoundSpline(quarter)).toBe(true);
    expect(isSoundSpline({ ...quarter, knots: [0, 0, 0, 1, 1] })).toBe(false);
    expect(isSoundSpline({ ...quarter, knots: [0, 0, 2, 1, 1, 1] })).toBe(false);
    expect(isSoundSpline({ ...quarter, weights: [1] })).toBe(false);
    expect(isSoundSpline({ ...quarter, degree: 0 })).toBe(false);
  });
});
