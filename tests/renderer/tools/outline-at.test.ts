import { describe, expect, test } from 'vitest';
import { area_m2 } from '#shared/geometry/outline';
import { outlinesAround, plainOutline } from '../../../src-renderer/tools/outline-at.ts';
import { indexUnderlay } from '../../../src-renderer/tools/underlay-index.ts';
import { lineDrawing } from '../../support/line-drawing.ts';
import { planBuilder } from '../../support/plan-builder.ts';

const underlay = Object.values(planBuilder().underlay().plan.levels['level-0']?.underlays ?? {})[0];
if (!underlay) throw new Error('The builder made an underlay.');
type Line = readonly [number, number, number, number];

const ring = (x: number, y: number, w: number, h: number): Line[] => [
  [x, y, x + w, y],
  [x + w, y, x + w, y + h],
  [x + w, y + h, x, y + h],
  [x, y + h, x, y],
];
const around = (lines: readonly Line[], x: number, y: number, change: Partial<typeof underlay> = {}) =>
  outlinesAround([indexUnderlay(lineDrawing(lines), { ...underlay, ...change })], { x, y })[0];
const closed = (ring_m: number) => [
  { x: 0, y: 0 },
  { x: ring_m, y: 0 },
  { x: ring_m, y: ring_m },
  { x: 0, y: ring_m },
];

describe('outline around a place', () => {
  test('the smallest closed line of the file that is no symbol', () => {
    const index = indexUnderlay(lineDrawing([], { closed: [closed(20), closed(5), closed(0.4)] }), underlay);
    expect(outlinesAround([index], { x: 0.2, y: 0.2 }).map(area_m2)).toEqual([25, 400]);
    expect(outlinesAround([index], { x: 30, y: 0.2 })).toEqual([]);
  });

  test('a room of separate lines', () => {
    expect(area_m2(around(ring(0, 0, 6, 4), 2.3, 1.7) ?? [])).toBeCloseTo(24, 9);
  });

  test('one of two rooms that share a wall with a T at both ends', () => {
    const lines: Line[] = [...ring(0, 0, 10, 4), [6, 0, 6, 4]];
    expect(area_m2(around(lines, 2.3, 1.7) ?? [])).toBeCloseTo(24, 9);
    expect(area_m2(around(lines, 8.3, 1.7) ?? [])).toBeCloseTo(16, 9);
  });

  test('rooms between lines that cross', () => {
    const lines: Line[] = [[-1, 0, 9, 0], [-1, 3, 9, 3], [0, -1, 0, 9], [5, -1, 5, 9], [8, -1, 8, 9]];
    expect(area_m2(around(lines, 2.3, 1.7) ?? [])).toBeCloseTo(15, 9);
    expect(area_m2(around(lines, 6.3, 1.7) ?? [])).toBeCloseTo(9, 9);
  });

  test('past things that stand free, with stubs on the walls left out', () => {
    const lines: Line[] = [...ring(0, 0, 6, 4), ...ring(3, 1.5, 0.5, 0.5), [6, 2.5, 5, 2.5], [2, 4, 2, 3.5]];
    const room = around(lines, 2.3, 1.7);
    expect(area_m2(room ?? [])).toBeCloseTo(24, 9);
    expect(room).toHaveLength(4);
  });

  test('lines of one layer go before lines of several', () => {
    const beam = Float64Array.from([3, 0, 3, 4]);
    const walls = lineDrawing(ring(0, 0, 6, 4), { layers: [{ name: 'BEAMS', segments: beam }] });
    expect(outlinesAround([indexUnderlay(walls, underlay)], { x: 2.3, y: 1.7 }).map(area_m2)).toEqual([24]);
    const split = lineDrawing(ring(0, 0, 6, 4).slice(0, 3), { layers: [{ name: 'GLASS', segments: Float64Array.from([0, 4, 0, 0]) }] });
    expect(outlinesAround([indexUnderlay(split, underlay)], { x: 2.3, y: 1.7 }).map(area_m2)).toEqual([24]);
  });

  test('ends that miss each other by a millimetre meet', () => {
    const lines: Line[] = [[0, 0, 5.9995, 0], [6, 0.0005, 6, 4], [6, 4.0008, 0, 4], [0, 3.9993, 0, 0]];
    expect(area_m2(around(lines, 2.3, 1.7) ?? [])).toBeCloseTo(24, 1);
  });

  test('nothing where a line leads out, nothing of a hidden floor plan', () => {
    const open: Line[] = [[0, 0, 6, 0], [6, 0, 6, 4], [6, 4, 0, 4]];
    expect(around(open, 2.3, 1.7)).toBeUndefined();
    expect(around(ring(0, 0, 6, 4), 2.3, 1.7, { visible: false })).toBeUndefined();
  });

  test('a turned and scaled floor plan', () => {
    const lines = ring(0, 0, 6000, 4000);
    const room = around(lines, 100 - 1.7, 2.3, { metresPerUnit: 0.001, rotation_rad: Math.PI / 2, at: { x: 100, y: 0 } });
    expect(area_m2(room ?? [])).toBeCloseTo(24, 6);
  });
});

describe('plain outline', () => {
  test('takes out repeated places, straight ones and spurs', () => {
    const plain = plainOutline([
      { x: 0, y: 0 }, { x: 2, y: 0 }, { x: 2, y: 0 }, { x: 4, y: 0 }, { x: 4, y: 2 }, { x: 3, y: 2 }, { x: 4, y: 2 }, { x: 4, y: 4 }, { x: 0, y: 4 },
    ]);
    expect(plain).toEqual([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 4, y: 4 }, { x: 0, y: 4 }]);
  });
});
