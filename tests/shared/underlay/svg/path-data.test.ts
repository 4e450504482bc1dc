import { describe, expect, test } from 'vitest';
import { IDENTITY } from '#shared/underlay/matrix';
import { pathRuns } from '#shared/underlay/svg/path-data';

const runs = (data: string, tolerance = 0.01) => pathRuns(data, IDENTITY, tolerance);
const places = (data: string) => runs(data).map((run) => run.places);

describe('path data', () => {
  test.each([
    ['M 1 2 L 3 4', [[1, 2, 3, 4]]],
    ['m1,2 2,2 l1-1', [[1, 2, 3, 4, 4, 3]]],
    ['M0 0H5V4h-5v-4', [[0, 0, 5, 0, 5, 4, 0, 4, 0, 0]]],
    ['M0 0 1 0 1 1z m5 5 1 0', [[0, 0, 1, 0, 1, 1], [5, 5, 6, 5]]],
    ['M.5.5L1e1-1E1', [[0.5, 0.5, 10, -10]]],
    ['M0 0L1 1M2 2L3 3', [[0, 0, 1, 1], [2, 2, 3, 3]]],
    ['M0 0 L 5 5 oops L 9 9', [[0, 0, 5, 5]]],
    ['L 5 5', []],
    ['', []],
  ])('%s', (data, expected) => expect(places(data)).toEqual(expected));

  test('only what is closed is closed, and drawing goes on from where it began', () => {
    expect(runs('M1 1 h4 v4 z l-1 -1')).toMatchObject([{ isClosed: true }, { isClosed: false, places: [1, 1, 0, 0] }]);
  });

  test('the arcs of the specification’s own picture (SVG 1.1 § 8.3.8): a quarter pie of radius 150', () => {
    const [pie] = runs('M300,200 h-150 a150,150 0 1,0 150,-150 z', 0.001);
    const arc = pie?.places.slice(4, -2) ?? [];
    for (let i = 0; i < arc.length; i += 2) expect(Math.hypot((arc[i] ?? 0) - 300, (arc[i + 1] ?? 0) - 200)).toBeCloseTo(150, 6);
    expect(pie?.places.slice(-2)).toEqual([300, 50]);
    // Large arc, drawn against the clock as seen: it passes the right-hand side.
    expect(Math.max(...arc.filter((_, i) => i % 2 === 0))).toBeCloseTo(450, 1);
  });

  test('flags of an arc may stand without separators; a radius too small grows until it reaches', () => {
    expect(places('M0 0a1 1 0 01 2 0')).toEqual(places('M0 0 A 1 1 0 0 1 2 0'));
    const [arc] = places('M0 0a.5.5 0 0 1 2 0');
    for (let i = 0; i < (arc?.length ?? 0); i += 2) expect(Math.hypot((arc?.[i] ?? 0) - 1, arc?.[i + 1] ?? 0)).toBeCloseTo(1, 6);
  });

  test('a quadratic is the cubic with its control place at two thirds', () => {
    const [cubic = []] = places('M0 0C3.3333333333333335 6 6.666666666666667 6 10 0');
    expect(places('M0 0Q5 9 10 0')).toEqual([cubic.map((value) => expect.closeTo(value, 12))]);
  });

  test('smooth commands mirror the last control place, but only after their own kind', () => {
    expect(places('M0 0C0 5 5 5 5 0S10 -5 10 0')).toEqual(places('M0 0C0 5 5 5 5 0C5 -5 10 -5 10 0'));
    expect(places('M0 0L5 0S10 5 10 0')).toEqual(places('M0 0L5 0C5 0 10 5 10 0'));
    expect(places('M0 0Q5 5 10 0T20 0')).toEqual(places('M0 0Q5 5 10 0Q15 -5 20 0'));
  });

  test('curves are flattened after the transform', () => {
    const [small] = pathRuns('M0 0C0 5 5 5 5 0', IDENTITY, 0.01);
    const [large] = pathRuns('M0 0C0 5 5 5 5 0', [100, 0, 0, 100, 0, 0], 0.01);
    expect(large?.places.length).toBeGreaterThan((small?.places.length ?? 0) * 5);
  });
});
