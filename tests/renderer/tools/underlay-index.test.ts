import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance_m } from '#shared/geometry/point';
import { distanceToSegment_m } from '#shared/geometry/segment';
import { indexUnderlay } from '../../../src-renderer/tools/underlay-index.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { lineDrawing } from '../../support/line-drawing.ts';

const built = planBuilder().underlay();
const underlay = Object.values(built.plan.levels['level-0']?.underlays ?? {})[0];
if (!underlay) throw new Error('The builder made an underlay.');

describe('underlay index', () => {
  const drawing = lineDrawing([
    [0, 0, 1000, 0],
    [1000, 0, 1000, 500],
    [3000, 3000, 4000, 3000],
  ]);

  test('answers in plan places of a drawing that is scaled, turned and shifted', () => {
    const index = indexUnderlay(drawing, { ...underlay, metresPerUnit: 0.001, rotation_rad: Math.PI / 2, at: { x: 10, y: 20 } });
    const [nearest] = index.nearestSegments({ x: 10.01, y: 20.5 }, 0.05);
    expect(nearest?.a.x).toBeCloseTo(10, 12);
    expect(nearest?.b).toMatchObject({ x: expect.closeTo(10, 12), y: expect.closeTo(21, 12) });
    const end = index.endpointNear({ x: 10.02, y: 21.01 }, 0.05);
    expect(end && distance_m(end, { x: 10, y: 21 })).toBeLessThan(1e-12);
    expect(index.endpointNear({ x: 11, y: 25 }, 0.05)).toBeUndefined();
  });

  test('hidden layers offer nothing', () => {
    expect(indexUnderlay(drawing, { ...underlay, hiddenLayers: ['0'] }).nearestSegments({ x: 0, y: 0 }, 10)).toEqual([]);
  });

  test('answers the nearest pieces first, the same as looking at all of them', () => {
    const place = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(place, place, place, place), { minLength: 1, maxLength: 80 }), place, place, fc.double({ min: 0.1, max: 60, noNaN: true }), (list, x, y, reach_m) => {
        const at = { x, y };
        const index = indexUnderlay(lineDrawing(list), { ...underlay, rotation_rad: 0.3, metresPerUnit: 0.5, at: { x: 3, y: -2 } });
        const near = index.nearestSegments(at, reach_m, 5).map((segment) => distanceToSegment_m(at, segment));
        const all = index.nearestSegments(at, reach_m, 1000).map((segment) => distanceToSegment_m(at, segment));
        expect(near.length).toBe(Math.min(5, all.length));
        near.forEach((distance, i) => {
          expect(distance).toBeCloseTo(all[i] ?? Number.NaN, 9);
          expect(distance).toBeLessThanOrEqual(reach_m + 1e-9);
        });
      }),
    );
  });

  test('closed outlines around a place come smallest first', () => {
    const ring = (size: number) => [
      { x: 0, y: 0 },
      { x: size, y: 0 },
      { x: size, y: size },
      { x: 0, y: size },
    ];
    const index = indexUnderlay(lineDrawing([], { closed: [ring(10), ring(4)] }), underlay);
    expect(index.outlinesAround({ x: 1, y: 1 }).map((outline) => outline[1]?.x)).toEqual([4, 10]);
    expect(index.outlinesAround({ x: 6, y: 6 }).map((outline) => outline[1]?.x)).toEqual([10]);
    expect(index.outlinesAround({ x: 11, y: 6 })).toEqual([]);
  });
});
