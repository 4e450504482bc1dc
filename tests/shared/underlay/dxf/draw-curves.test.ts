import { describe, expect, test } from 'vitest';
import { sweepBetween_rad } from '#shared/underlay/dxf/draw-curves';
import { type Pair, entity } from '../../../support/dxf-file.ts';
import { piecesOf, placesOf, readEntities } from '../../../support/underlay.ts';

const flipped: Pair[] = [[210, 0], [220, 0], [230, -1]];
const bounds = (places: readonly (readonly [number, number])[]) => ({
  minX: Math.min(...places.map(([x]) => x)),
  maxX: Math.max(...places.map(([x]) => x)),
  minY: Math.min(...places.map(([, y]) => y)),
  maxY: Math.max(...places.map(([, y]) => y)),
});

describe('circles and arcs', () => {
  test('CIRCLE: every place at its radius, one closed ring', () => {
    const drawing = readEntities(entity('CIRCLE', [10, 5], [20, 6], [40, 3]));
    for (const [x, y] of placesOf(drawing)) expect(Math.hypot(x - 5, y - 6)).toBeCloseTo(3, 9);
    expect(drawing.layers[0]?.closed).toHaveLength(1);
  });

  test('ARC runs counter-clockwise from the first angle to the second, through 0° too', () => {
    const places = placesOf(readEntities(entity('ARC', [10, 0], [20, 0], [40, 2], [50, 270], [51, 90])));
    expect(bounds(places)).toEqual({ minX: expect.closeTo(0, 9), maxX: expect.closeTo(2, 3), minY: expect.closeTo(-2, 9), maxY: expect.closeTo(2, 9) });
    expect(places[0]?.[1]).toBeCloseTo(-2, 9);
  });

  test('ARC seen from below (extrusion 0,0,−1) has its x mirrored', () => {
    const places = placesOf(readEntities(entity('ARC', [10, 4], [20, 0], [40, 2], [50, 0], [51, 90], ...flipped)));
    expect(bounds(places)).toEqual({ minX: expect.closeTo(-6, 9), maxX: expect.closeTo(-4, 9), minY: expect.closeTo(0, 9), maxY: expect.closeTo(2, 9) });
  });

  test.each([
    [0, Math.PI / 2, Math.PI / 2],
    [Math.PI, 0, Math.PI],
    [1, 1, 2 * Math.PI],
    [0, 2 * Math.PI, 2 * Math.PI],
    [-1, 1, 2],
  ])('from %d to %d is a turn of %d', (from, to, turn) => expect(sweepBetween_rad(from, to)).toBeCloseTo(turn, 12));
});

describe('ellipses', () => {
  const ellipse = (...more: Pair[]) => entity('ELLIPSE', [10, 10], [20, 20], [30, 0], [11, 0], [21, 5], [31, 0], [40, 0.4], ...more);

  test('axes as the file says: major up, minor to the side', () => {
    const drawing = readEntities(ellipse([41, 0], [42, 2 * Math.PI]));
    expect(bounds(placesOf(drawing))).toEqual({ minX: expect.closeTo(8, 2), maxX: expect.closeTo(12, 2), minY: expect.closeTo(15, 2), maxY: expect.closeTo(25, 2) });
    for (const [x, y] of placesOf(drawing)) expect(((x - 10) / 2) ** 2 + ((y - 20) / 5) ** 2).toBeCloseTo(1, 9);
    expect(drawing.layers[0]?.closed).toHaveLength(1);
  });

  test('a quarter goes from the major axis toward the minor one, which lies counter-clockwise', () => {
    const places = placesOf(readEntities(ellipse([41, 0], [42, Math.PI / 2])));
    expect(places[0]).toEqual([expect.closeTo(10, 9), expect.closeTo(25, 9)]);
    expect(places.at(-1)).toEqual([expect.closeTo(8, 9), expect.closeTo(20, 9)]);
  });

  test('seen from below the minor axis lies clockwise', () => {
    const places = placesOf(readEntities(ellipse([41, 0], [42, Math.PI / 2], ...flipped)));
    expect(places.at(-1)).toEqual([expect.closeTo(12, 9), expect.closeTo(20, 9)]);
  });
});

describe('splines', () => {
  const control: Pair[] = [[10, 1], [20, 0], [30, 0], [10, 1], [20, 1], [30, 0], [10, 0], [20, 1], [30, 0]];
  const knots: Pair[] = [0, 0, 0, 1, 1, 1].map((knot): Pair => [40, knot]);

  test('a rational spline: the quarter circle of the textbook', () => {
    const places = placesOf(readEntities(entity('SPLINE', [70, 12], [71, 2], ...knots, [41, 1], [41, Math.SQRT1_2], [41, 1], ...control)));
    expect(places.length).toBeGreaterThan(8);
    for (const [x, y] of places) expect(Math.hypot(x, y)).toBeCloseTo(1, 9);
  });

  test('one that only tells the places it passes is drawn straight, and says so', () => {
    const drawing = readEntities(entity('SPLINE', [71, 3], [11, 0], [21, 0], [31, 0], [11, 5], [21, 5], [31, 0], [11, 9], [21, 0], [31, 0]));
    expect(piecesOf(drawing)).toEqual([[0, 0, 5, 5], [5, 5, 9, 0]]);
    expect(drawing.warnings.join()).toMatch(/straight between/);
  });

  test('one whose numbers do not fit is left out, and says so', () => {
    const drawing = readEntities(entity('CIRCLE', [10, 0], [20, 0], [40, 9]), entity('SPLINE', [71, 3], ...knots, ...control));
    expect(drawing.warnings.join()).toMatch(/1 curve left out/);
  });
});
