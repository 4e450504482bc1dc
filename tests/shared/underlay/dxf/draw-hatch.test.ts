import { describe, expect, test } from 'vitest';
import { ringArea } from '#shared/underlay/line-work';
import { type Pair, entity, line } from '../../../support/dxf-file.ts';
import { hasPiece, layerNamed, placesOf, readEntities } from '../../../support/underlay.ts';

const head = (isSolid: boolean, paths: number): Pair[] => [[8, 'H'], [100, 'AcDbHatch'], [10, 0], [20, 0], [30, 0], [210, 0], [220, 0], [230, 1], [2, isSolid ? 'SOLID' : 'ANSI31'], [70, isSolid ? 1 : 0], [71, 0], [91, paths]];
const tail: Pair[] = [[75, 0], [76, 1], [98, 1], [10, 77], [20, 77]];
const polygon = (corners: readonly (readonly [number, number])[], bulge = 0): Pair[] => [[92, 3], [72, bulge ? 1 : 0], [73, 1], [93, corners.length], ...corners.flatMap(([x, y]): Pair[] => [[10, x], [20, y], ...(bulge ? [[42, bulge] as const] : [])]), [97, 0]];
const outer = [[0, 0], [10, 0], [10, 8], [0, 8]] as const;
const inner = [[1, 1], [9, 1], [9, 7], [1, 7]] as const;

describe('hatches', () => {
  test('a solid one between two rings is filled between them, and seeds are no corners', () => {
    const layer = layerNamed(readEntities(entity('HATCH', ...head(true, 2), ...polygon(outer), ...polygon(inner), ...tail)), 'H');
    expect(layer.fills).toHaveLength(1);
    expect(Math.abs(ringArea(layer.fills[0] ?? []))).toBeCloseTo(80 - 48, 9);
    expect(layer.closed).toHaveLength(2);
    expect(layer.segments.every((value) => value <= 10)).toBe(true);
  });

  test('a patterned one is an outline, and says so', () => {
    const drawing = readEntities(entity('HATCH', ...head(false, 1), ...polygon(outer), ...tail));
    expect(drawing.layers[0]?.fills).toEqual([]);
    expect(hasPiece(drawing, 0, 8, 0, 0)).toBe(true);
    expect(drawing.warnings.join()).toMatch(/1 hatched area is shown by outline/);
  });

  test('bulges in the outline', () => {
    const drawing = readEntities(entity('HATCH', ...head(true, 1), ...polygon([[0, 0], [2, 0]], 1), ...tail));
    for (const [x, y] of placesOf(drawing)) expect(Math.hypot(x - 1, y)).toBeCloseTo(1, 9);
  });

  test('an outline of edges: lines, an arc each way round, an elliptic arc and a spline', () => {
    const edge = (...pairs: Pair[]) => pairs;
    const edges: Pair[] = [
      [92, 1], [93, 5],
      ...edge([72, 1], [10, 0], [20, 0], [11, 10], [21, 0]),
      // Counter-clockwise around 10,1 from 270° to 90°.
      ...edge([72, 2], [10, 10], [20, 1], [40, 1], [50, 270], [51, 450], [73, 1]),
      ...edge([72, 3], [10, 9], [20, 2], [11, 1], [21, 0], [40, 0.5], [50, 0], [51, 180], [73, 1]),
      ...edge([72, 4], [94, 1], [73, 0], [74, 0], [95, 4], [96, 2], [40, 0], [40, 0], [40, 1], [40, 1], [10, 8], [20, 2], [10, 1], [20, 2]),
      // Clockwise around 1,1 from 90° down … angles count clockwise: 270° to 450° is the left half.
      ...edge([72, 2], [10, 1], [20, 1], [40, 1], [50, 90], [51, 270], [73, 0]),
      [97, 1], [330, 'AB'],
    ];
    const drawing = readEntities(line(0, 0, 20, 0), entity('HATCH', ...head(true, 1), ...edges, ...tail));
    const places = placesOf({ layers: [layerNamed(drawing, 'H')] });
    expect(drawing.warnings).toEqual([]);
    expect(Math.max(...places.map(([x]) => x))).toBeCloseTo(11, 2);
    expect(Math.min(...places.map(([x]) => x))).toBeCloseTo(0, 2);
    expect(hasPiece(drawing, 8, 2, 1, 2)).toBe(true);
    expect(places.some(([x, y]) => Math.hypot(x - 9, y - 2.5) < 0.02)).toBe(true);
  });

  test('one whose outline breaks off is left out, and says so', () => {
    const drawing = readEntities(line(0, 0, 20, 0), entity('HATCH', ...head(true, 1), [92, 3], [72, 0], [73, 1], [93, 99_999], [10, 0], [20, 0]));
    expect(drawing.warnings).toEqual(['1 hatched area left out: the outline cannot be read.']);
  });
});
