import { describe, expect, test } from 'vitest';
import { entity, insert, line } from '../../../support/dxf-file.ts';
import { hasPiece, layerNamed, piecesOf, readEntities } from '../../../support/underlay.ts';

const far = line(0, 0, 1000, 1000);

describe('straight things', () => {
  test('LINE', () => {
    const drawing = readEntities(line(1, 2, 3, 4.5, 'Walls', [62, 1]));
    expect(piecesOf(drawing)).toEqual([[1, 2, 3, 4.5]]);
    expect(layerNamed(drawing, 'Walls').colour).toBe('#ff0000');
  });

  test('SOLID: the last two corners stand crosswise in the file', () => {
    const solid = entity('SOLID', [8, 'S'], [10, 0], [20, 0], [11, 10], [21, 0], [12, 0], [22, 5], [13, 10], [23, 5]);
    const layer = layerNamed(readEntities(solid), 'S');
    expect([...(layer.fills[0] ?? [])]).toEqual([0, 0, 10, 0, 10, 5, 0, 5]);
    expect(hasPiece({ layers: [layer] }, 10, 5, 0, 5)).toBe(true);
    expect(hasPiece({ layers: [layer] }, 0, 0, 10, 5)).toBe(false);
  });

  test('SOLID of three corners', () => {
    const [layer] = readEntities(entity('TRACE', [10, 0], [20, 0], [11, 10], [21, 0], [12, 0], [22, 5], [13, 0], [23, 5])).layers;
    expect(layer?.closed.map((ring) => ring.length)).toEqual([6]);
  });

  test('3DFACE with hidden edges', () => {
    const face = entity('3DFACE', [10, 0], [20, 0], [30, 9], [11, 4], [21, 0], [12, 4], [22, 4], [13, 0], [23, 4], [70, 1 | 4]);
    expect(piecesOf(readEntities(face))).toEqual([
      [4, 0, 4, 4],
      [0, 4, 0, 0],
    ]);
  });

  test('LEADER', () => {
    expect(piecesOf(readEntities(entity('LEADER', [8, '0'], [76, 3], [10, 0], [20, 0], [30, 0], [10, 5], [20, 5], [30, 0], [10, 9], [20, 5], [30, 0])))).toEqual([
      [0, 0, 5, 5],
      [5, 5, 9, 5],
    ]);
  });

  test('MLINE: both faces of a wall, mitred', () => {
    const vertex = (x: number, y: number, mx: number, my: number): [number, number][] => [
      [11, x], [21, y], [31, 0], [12, 1], [22, 0], [32, 0], [13, mx], [23, my], [33, 0],
      [74, 2], [41, 0.1], [41, 0], [75, 0], [74, 2], [41, -0.1], [41, 0], [75, 0],
    ];
    const drawing = readEntities(entity('MLINE', [8, 'W'], [70, 1], [71, 1], [72, 3], [73, 2], [10, 0], [20, 0], ...vertex(0, 0, 0, 1), ...vertex(10, 0, -1, 1), ...vertex(10, 8, -1, 0)));
    expect(hasPiece(drawing, 0, 0.1, 9.9, 0.1)).toBe(true);
    expect(hasPiece(drawing, 0, -0.1, 10.1, -0.1)).toBe(true);
    expect(hasPiece(drawing, 10.1, -0.1, 10.1, 8)).toBe(true);
    expect(piecesOf(drawing)).toHaveLength(4);
  });

  test('what lies on paper, is hidden, or is not read is left out, with a word about it', () => {
    const drawing = readEntities(
      far,
      line(0, 0, 5, 5, 'P', [67, 1]),
      line(0, 0, 6, 6, 'H', [60, 1]),
      entity('WIPEOUT', [8, '0']),
      entity('IMAGE', [8, '0']),
      entity('XLINE', [8, '0'], [10, 0], [20, 0]),
      entity('POINT', [8, '0'], [10, 0], [20, 0]),
      insert('nowhere', 0, 0),
    );
    expect(piecesOf(drawing)).toHaveLength(1);
    expect(drawing.warnings).toEqual([
      '1 thing on paper layouts left out: only the model is read.',
      '1 picture or attached page lies in other files and cannot be shown.',
      '1 endless construction line left out.',
      '1 symbol is placed whose lines are not in the file.',
      'Kinds of things that are not read: 1 × WIPEOUT.',
    ]);
  });
});
