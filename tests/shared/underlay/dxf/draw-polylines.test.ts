import { describe, expect, test } from 'vitest';
import { wideRings } from '#shared/underlay/dxf/paths';
import { type Pair, entity, ring } from '../../../support/dxf-file.ts';
import { hasPiece, layerNamed, piecesOf, placesOf, readEntities } from '../../../support/underlay.ts';

const vertex = (x: number, y: number, ...more: Pair[]) => entity('VERTEX', [8, '0'], [10, x], [20, y], [30, 0], ...more);
const end = entity('SEQEND');

describe('polylines', () => {
  test('a closed light polyline is a ring', () => {
    const drawing = readEntities(ring([[0, 0], [4, 0], [4, 3], [0, 3]], 'R'));
    expect([...(layerNamed(drawing, 'R').closed[0] ?? [])]).toEqual([0, 0, 4, 0, 4, 3, 0, 3]);
    expect(hasPiece(drawing, 0, 3, 0, 0)).toBe(true);
  });

  test('an open one is not', () => {
    const drawing = readEntities(entity('LWPOLYLINE', [70, 0], [10, 0], [20, 0], [10, 4], [20, 0], [10, 4], [20, 3]));
    expect(drawing.layers[0]?.closed).toEqual([]);
    expect(piecesOf(drawing)).toHaveLength(2);
  });

  test('a bulge belongs to the piece that leaves its corner', () => {
    const drawing = readEntities(entity('LWPOLYLINE', [70, 1], [10, 0], [20, 0], [42, 1], [10, 2], [20, 0], [10, 2], [20, 5], [10, 0], [20, 5]));
    const below = placesOf(drawing).filter(([, y]) => y < -1e-9);
    expect(below.length).toBeGreaterThan(10);
    for (const [x, y] of below) expect(Math.hypot(x - 1, y)).toBeCloseTo(1, 9);
    expect(hasPiece(drawing, 2, 5, 0, 5)).toBe(true);
  });

  test('seen from below, x is mirrored', () => {
    const drawing = readEntities(ring([[1, 0], [4, 0], [4, 3]], '0', [210, 0], [220, 0], [230, -1]));
    expect(hasPiece(drawing, -1, 0, -4, 0)).toBe(true);
    expect(hasPiece(drawing, -4, 0, -4, 3)).toBe(true);
  });

  test('on a plane that stands upright it is seen from its edge, at its elevation', () => {
    // Normal along world y: by the arbitrary axis rule the plane's x is world −x, its y world z.
    const drawing = readEntities(ring([[1, 0], [4, 0], [4, 3]], '0', [38, 7], [210, 0], [220, 1], [230, 0]));
    expect(placesOf(drawing).every(([, y]) => Math.abs(y - 7) < 1e-9)).toBe(true);
    expect(Math.min(...placesOf(drawing).map(([x]) => x))).toBeCloseTo(-4, 9);
  });

  test('old polylines: corners follow as records; frame places of a smoothed one are left out', () => {
    const drawing = readEntities(
      entity('POLYLINE', [8, 'P'], [66, 1], [70, 1]), vertex(0, 0), vertex(4, 0), vertex(99, 99, [70, 16]), vertex(4, 3, [42, 0]), end,
      entity('LINE', [8, 'L'], [10, 0], [20, 0], [11, 1], [21, 1]),
    );
    expect([...(layerNamed(drawing, 'P').closed[0] ?? [])]).toEqual([0, 0, 4, 0, 4, 3]);
    expect(layerNamed(drawing, 'L').segments).toHaveLength(4);
  });

  test('a mesh is left out, and says so', () => {
    const drawing = readEntities(entity('LINE', [10, 0], [20, 0], [11, 9], [21, 9]), entity('POLYLINE', [70, 64]), vertex(0, 0, [70, 192]), vertex(1, 0, [70, 192]), end);
    expect(piecesOf(drawing)).toHaveLength(1);
    expect(drawing.warnings.join()).toMatch(/1 surface mesh left out/);
  });
});

describe('wide polylines show both faces', () => {
  test('a straight wall', () => {
    const drawing = readEntities(entity('LWPOLYLINE', [43, 0.2], [70, 0], [10, 0], [20, 0], [10, 10], [20, 0]));
    expect(hasPiece(drawing, 0, 0.1, 10, 0.1)).toBe(true);
    expect(hasPiece(drawing, 0, -0.1, 10, -0.1)).toBe(true);
    expect(drawing.layers[0]?.fills).toHaveLength(1);
  });

  test('a room of such walls keeps its inside free and its corners square', () => {
    const drawing = readEntities(ring([[0, 0], [10, 0], [10, 8], [0, 8]], '0', [43, 0.2]));
    expect(hasPiece(drawing, 0.1, 0.1, 9.9, 0.1)).toBe(true);
    expect(hasPiece(drawing, -0.1, -0.1, 10.1, -0.1)).toBe(true);
    expect(drawing.layers[0]?.fills).toHaveLength(1);
    expect(drawing.layers[0]?.closed).toHaveLength(2);
  });

  test('widths that change from corner to corner', () => {
    const [face] = wideRings([0, 0, 10, 0], [1, 0.5], false);
    expect([...(face ?? [])]).toEqual([0, 1, 10, 0.5, 10, -0.5, 0, -1]);
  });

  test('a hairpin does not shoot off to infinity', () => {
    const [face] = wideRings([0, 0, 10, 0, 0, 0.001], [0.1, 0.1, 0.1], false);
    for (const value of face ?? []) expect(Math.abs(value)).toBeLessThan(11);
  });
});
