import { describe, expect, test } from 'vitest';
import { type Pair, entity, insert, line, ring } from '../../../support/dxf-file.ts';
import { hasPiece, layerNamed, piecesOf, placesOf, readParts, textsOf } from '../../../support/underlay.ts';

const arm = { name: 'ARM', base: [1, 0] as const, entities: [line(1, 0, 3, 0)] };
const read = (...inserts: Pair[][]) => readParts({ blocks: [arm], entities: inserts });

describe('placed symbols', () => {
  test('the base place is put down, then the symbol is stretched and turned', () => {
    expect(hasPiece(read(insert('ARM', 10, 20, '0', [41, 2], [50, 90])), 10, 20, 10, 24)).toBe(true);
    expect(hasPiece(read(insert('arm', 10, 20)), 10, 20, 12, 20)).toBe(true);
  });

  test('mirrored by a negative scale', () => expect(hasPiece(read(insert('ARM', 10, 20, '0', [41, -1])), 10, 20, 8, 20)).toBe(true));

  test('mirrored by being seen from below: place and turn are mirrored with it', () => {
    // In its own plane it points from 10,20 to 10,22 + turned 30°; the plan shows x negated.
    const drawing = read(insert('ARM', 10, 20, '0', [50, 30], [210, 0], [220, 0], [230, -1]));
    expect(hasPiece(drawing, -10, 20, -10 - 2 * Math.cos(Math.PI / 6), 21, 1e-9)).toBe(true);
  });

  test('repeated in a grid that turns with it', () => {
    const drawing = read(insert('ARM', 0, 0, '0', [50, 90], [70, 3], [71, 2], [44, 10], [45, 100]));
    expect(piecesOf(drawing)).toHaveLength(6);
    expect(hasPiece(drawing, 0, 20, 0, 22)).toBe(true);
    expect(hasPiece(drawing, -100, 10, -100, 12)).toBe(true);
  });

  test('symbols in symbols', () => {
    const drawing = readParts({
      blocks: [{ name: 'OUTER', entities: [insert('ARM', 5, 0, '0', [50, 90])] }, arm],
      entities: [insert('OUTER', 100, 0, '0', [41, 2], [42, 2])],
    });
    expect(hasPiece(drawing, 110, 0, 110, 4)).toBe(true);
  });

  test('rings, fills and texts are carried too', () => {
    const drawing = readParts({
      blocks: [{ name: 'B', entities: [ring([[0, 0], [2, 0], [2, 2]]), entity('SOLID', [10, 0], [20, 0], [11, 1], [21, 0], [12, 0], [22, 1], [13, 1], [23, 1]), entity('TEXT', [10, 0], [20, 0], [40, 1], [1, 'X'])] }],
      entities: [insert('B', 10, 10, 'L', [41, 3], [42, 3])],
    });
    const layer = layerNamed(drawing, 'L');
    expect([...(layer.closed[0] ?? [])]).toEqual([10, 10, 16, 10, 16, 16]);
    expect([...(layer.fills[0] ?? [])]).toEqual([10, 10, 13, 10, 13, 13, 10, 13]);
    expect(layer.texts[0]).toMatchObject({ x: 10, y: 10, height: 3, text: 'X' });
  });
});

describe('layers and colours inside symbols', () => {
  const layers = [{ name: 'Doors', colour: 3 }, { name: 'Glass', colour: 4 }, { name: 'Frozen', flags: 1 }, { name: 'Off', colour: -2 }];
  const block = {
    name: 'D',
    entities: [line(0, 0, 1, 0), line(0, 0, 2, 0, 'Glass'), line(0, 0, 3, 0, '0', [62, 0]), line(0, 0, 4, 0, '0', [62, 1])],
  };
  const place = (...pairs: Pair[][]) => readParts({ layers, blocks: [block], entities: pairs });

  test('layer 0 takes the layer of the insertion; others stay', () => {
    const drawing = place(insert('D', 0, 0, 'Doors', [62, 5]));
    expect(layerNamed(drawing, 'Doors').segments).toHaveLength(12);
    expect(layerNamed(drawing, 'Glass')).toMatchObject({ colour: '#00ffff' });
  });

  test('“by block” takes the colour of the insertion, “by layer” that of the layer it ends on', () => {
    const byBlock = readParts({ layers, blocks: [{ name: 'D', entities: [line(0, 0, 1, 0, '0', [62, 0])] }], entities: [insert('D', 0, 0, 'Doors', [62, 5])] });
    expect(layerNamed(byBlock, 'Doors').colour).toBe('#0000ff');
    const byLayer = readParts({ layers, blocks: [{ name: 'D', entities: [line(0, 0, 1, 0)] }], entities: [insert('D', 0, 0, 'Doors', [62, 5])] });
    expect(layerNamed(byLayer, 'Doors').colour).toBe('#00ff00');
  });

  test('placed on a frozen layer the whole symbol is hidden; on one switched off only what takes its layer', () => {
    const frozen = place(insert('D', 0, 0, 'Frozen'), line(0, 0, 9, 9, 'Doors'));
    expect(frozen.layers.filter(({ visible }) => visible).map(({ name }) => name)).toEqual(['Doors']);
    expect(layerNamed(frozen, 'Frozen').segments).toHaveLength(16);
    const off = place(insert('D', 0, 0, 'Off'));
    expect(off.layers.map(({ name, visible }) => [name, visible])).toEqual([['Glass', true], ['Off', false]]);
  });

  test('true colours count before numbered ones', () => {
    const drawing = readParts({ layers: [{ name: 'T', trueColour: 0x123456 }], entities: [line(0, 0, 1, 1, 'T'), line(0, 0, 2, 1, 'U', [62, 1], [420, 0xabcdef])] });
    expect(layerNamed(drawing, 'T').colour).toBe('#123456');
    expect(layerNamed(drawing, 'U').colour).toBe('#abcdef');
  });

  test('layer names are one whatever their case', () => {
    expect(readParts({ layers: [{ name: 'Walls' }], entities: [line(0, 0, 1, 1, 'WALLS')] }).layers.map(({ name }) => name)).toEqual(['Walls']);
  });
});

describe('dimensions and tables are drawn by their own blocks', () => {
  test('a dimension', () => {
    const drawing = readParts({
      blocks: [{ name: '*D1', entities: [line(0, 0, 5, 0), entity('MTEXT', [10, 2], [20, 0], [40, 1], [1, '5.00'])] }],
      entities: [entity('DIMENSION', [8, 'Dims'], [2, '*D1'], [10, 99], [20, 99]), entity('DIMENSION', [8, 'Dims'], [10, 0], [20, 0])],
    });
    expect(placesOf(drawing)).toEqual([[0, 0], [5, 0]]);
    expect(textsOf(drawing)).toEqual(['5.00']);
    expect(drawing.warnings).toEqual(['1 dimension has no drawn lines in the file and cannot be shown.']);
  });

  test('a table at its corner', () => {
    const drawing = readParts({ blocks: [{ name: '*T1', entities: [line(0, 0, 5, 0)] }], entities: [entity('ACAD_TABLE', [8, '0'], [2, '*T1'], [10, 10], [20, 20], [11, 0], [21, 1])] });
    expect(hasPiece(drawing, 10, 20, 10, 25)).toBe(true);
  });

  test('another drawing that is only referred to is told', () => {
    const drawing = readParts({ blocks: [{ name: 'shell', flags: 4, entities: [] }], entities: [insert('shell', 0, 0), line(0, 0, 1, 1)] });
    expect(drawing.warnings.join()).toMatch(/1 other drawing is only referred to/);
  });
});
