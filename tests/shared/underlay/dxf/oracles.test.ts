/// <reference path="../../../support/dxf-library.d.ts" />
import { Helper } from 'dxf';
import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Pair, dxfText, entity, insert, line } from '../../../support/dxf-file.ts';
import { layerNamed, placesOf, piecesOf, readParts, textsOf } from '../../../support/underlay.ts';

// Our reader against two general-purpose libraries that read the same format, on generated files.

const at = fc.double({ min: -500, max: 500, noNaN: true }).map((value) => Math.round(value * 1000) / 1000);
const size = fc.double({ min: 0.5, max: 200, noNaN: true }).map((value) => Math.round(value * 1000) / 1000);
const angle_deg = fc.integer({ min: 0, max: 359 });
const layer = fc.constantFrom('Walls', 'Doors', '0');

const lines = fc.tuple(at, at, at, at, layer).map(([a, b, c, d, on]) => line(a, b, c, d, on));
const circles = fc.tuple(at, at, size, layer).map(([x, y, r, on]) => entity('CIRCLE', [8, on], [10, x], [20, y], [30, 0], [40, r]));
const arcs = fc
  .tuple(at, at, size, angle_deg, fc.integer({ min: 5, max: 355 }), layer)
  .map(([x, y, r, from, turn, on]) => entity('ARC', [8, on], [10, x], [20, y], [30, 0], [40, r], [50, from], [51, (from + turn) % 360]));
const ellipses = fc
  .tuple(at, at, size, size, fc.double({ min: 0.1, max: 1, noNaN: true }), fc.integer({ min: 1, max: 5 }), layer)
  .map(([x, y, mx, my, ratio, turn, on]) => entity('ELLIPSE', [8, on], [10, x], [20, y], [30, 0], [11, mx], [21, my], [31, 0], [40, ratio], [41, 0], [42, turn]));
const polylines = fc
  .tuple(fc.array(fc.tuple(at, at, fc.constantFrom(0, 0, 0.5, -0.3, 1)), { minLength: 2, maxLength: 8 }), fc.boolean(), layer)
  .map(([corners, isClosed, on]) =>
    entity('LWPOLYLINE', [8, on], [90, corners.length], [70, isClosed ? 1 : 0], ...corners.flatMap(([x, y, bulge]): Pair[] => [[10, x], [20, y], [42, bulge]])),
  );
const splines = fc.tuple(fc.array(fc.tuple(at, at), { minLength: 4, maxLength: 8 }), layer).map(([places, on]) => {
  const inner = Array.from({ length: places.length - 4 }, (_, i) => i + 1);
  const knots = [0, 0, 0, 0, ...inner, ...Array<number>(4).fill(inner.length + 1)];
  return entity('SPLINE', [8, on], [70, 8], [71, 3], [72, knots.length], [73, places.length], ...knots.map((knot): Pair => [40, knot]), ...places.flatMap(([x, y]): Pair[] => [[10, x], [20, y], [30, 0]]));
});
const flat = fc.oneof(lines, circles, arcs, ellipses, polylines, splines);
const placing = fc
  .tuple(at, at, layer, fc.constantFrom(1, 2, 0.5, -1), fc.constantFrom(1, 2, -1), angle_deg, fc.constantFrom(1, -1), fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 2 }))
  .map(([x, y, on, sx, sy, turn, up, columns, rows]): ((block: string) => Pair[]) => (block) =>
    insert(block, x, y, on, [41, sx], [42, sy], [50, turn], [70, columns], [71, rows], [44, 30], [45, 70], [210, 0], [220, 0], [230, up]),
  );

type Place = readonly [number, number];
const distance = ([x, y]: Place, [ax = 0, ay = 0, bx = 0, by = 0]: readonly number[]): number => {
  const dx = bx - ax;
  const dy = by - ay;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
};
const farthest = (places: readonly Place[], pieces: readonly (readonly number[])[]): number =>
  Math.max(0, ...places.map((place) => Math.min(...pieces.map((piece) => distance(place, piece)))));

function bothWays(parts: Parameters<typeof dxfText>[0]): void {
  const ours = readParts(parts);
  const theirs = new Helper(dxfText(parts)).toPolylines().polylines
    .map(({ vertices }) => vertices)
    // Things of no size are dropped by our reader.
    .filter((vertices) => vertices.some(([x, y]) => x !== vertices[0]?.[0] || y !== vertices[0]?.[1]));
  const theirPieces = theirs.flatMap((vertices) => vertices.slice(1).map((to, i) => [...(vertices[i] ?? to), ...to]));
  // Both flatten: the library by 5° (0.1 % of the radius) or by 25 pieces a span, ours finer; sizes go to some hundreds, doubled by scales.
  const slack = 3;
  // Ours may have moved a whole drawing to its origin; these lie near it.
  expect(farthest(placesOf(ours), theirPieces)).toBeLessThan(slack);
  expect(farthest(theirs.flat(), piecesOf(ours))).toBeLessThan(slack);
}

describe('the library dxf draws the same curves', () => {
  test('in model space', () => {
    fc.assert(fc.property(fc.array(flat, { minLength: 1, maxLength: 5 }), (entities) => bothWays({ entities: [line(-1, -1, 1, 1), ...entities] })), { numRuns: 120 });
  });

  test('in placed, stretched, turned, mirrored and repeated symbols', () => {
    fc.assert(
      fc.property(fc.array(flat, { minLength: 1, maxLength: 3 }), at, at, placing, placing, (entities, bx, by, inner, outer) => {
        bothWays({
          blocks: [
            { name: 'LEAF', base: [bx, by], entities },
            { name: 'TREE', entities: [inner('LEAF'), line(0, 0, 5, 5)] },
          ],
          entities: [line(-1, -1, 1, 1), outer('TREE')],
        });
      }),
      { numRuns: 25 },
    );
  });
});

describe('the library dxf-parser finds the same numbers', () => {
  test('lines to the last digit, layers, texts and closed polylines', () => {
    const exact = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(exact, exact, exact, exact), { minLength: 1, maxLength: 20 }), fc.stringMatching(/^[A-Z]{1,12}$/), (rows, word) => {
        const parts = {
          layers: [{ name: 'Walls', colour: 3 }],
          entities: [
            ...rows.map(([a, b, c, d]) => line(a, b, c, d, 'Walls')),
            entity('TEXT', [8, 'T'], [10, 1], [20, 2], [30, 0], [40, 2.5], [1, word]),
            entity('LWPOLYLINE', [8, 'R'], [90, 3], [70, 1], [10, 0], [20, 0], [10, 5e6], [20, 0], [10, 5e6], [20, 5e6]),
          ],
        };
        const ours = readParts(parts);
        const theirs = new DxfParser().parseSync(dxfText(parts));
        const found = (theirs?.entities ?? []) as unknown as { type: string; layer: string; text?: string; shape?: boolean; vertices?: { x: number; y: number }[] }[];
        const theirLines = found.filter(({ type }) => type === 'LINE').map(({ vertices }) => (vertices ?? []).flatMap(({ x, y }) => [x, y]));
        const kept = theirLines.filter(([a, b, c, d]) => a !== c || b !== d);
        expect(piecesOf({ layers: kept.length > 0 ? [layerNamed(ours, 'Walls')] : [] })).toEqual(kept);
        expect(textsOf(ours)).toEqual(found.filter(({ type }) => type === 'TEXT').map(({ text }) => text));
        expect(ours.layers.map(({ name }) => name)).toEqual(expect.arrayContaining([...new Set(found.map(({ layer: on }) => on))].filter((on) => on !== 'Walls' || kept.length > 0)));
        const polyline = found.find(({ type }) => type === 'LWPOLYLINE');
        expect(polyline?.shape).toBe(true);
        expect([...(layerNamed(ours, 'R').closed[0] ?? [])]).toEqual(polyline?.vertices?.flatMap(({ x, y }) => [x, y]));
      }),
      { numRuns: 60 },
    );
  });
});
