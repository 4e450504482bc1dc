import { describe, expect, test } from 'vitest';
import { readDxf } from '#shared/underlay/dxf/read-dxf';
import { dxfBytes, dxfText, entity, insert, line, ring } from '../../../support/dxf-file.ts';
import { decode, layerNamed, piecesOf, problemOf, quiet, readEntities, readParts, textsOf } from '../../../support/underlay.ts';

const room = ring([[0, 0], [8000, 0], [8000, 5000], [0, 5000]], 'Walls');
const readText = (text: string) => readDxf(new Uint8Array(Buffer.from(text, 'latin1')), decode, quiet);

describe('a whole file', () => {
  test('units, extents, layers, rings', () => {
    const drawing = readParts({
      header: [['$INSUNITS', [70, 4]], ['$EXTMIN', [10, 0], [20, 0]], ['$EXTMAX', [10, 8000], [20, 5000]]],
      layers: [{ name: 'Walls', colour: 5 }, { name: 'Empty' }],
      entities: [room, entity('TEXT', [8, 'Notes'], [10, 100], [20, 100], [40, 250], [1, 'Server room'])],
    });
    expect(drawing).toMatchObject({
      kind: 'dxf',
      metresPerUnit: 0.001,
      unitsText: 'millimetres ($INSUNITS 4)',
      unitsDoubt: null,
      extents: { minX: 0, minY: 0, maxX: 8000, maxY: 5000 },
      pageCount: 1,
      warnings: [],
    });
    expect(drawing.layers.map(({ name, colour, visible }) => [name, colour, visible])).toEqual([
      ['Walls', '#0000ff', true],
      ['Notes', '#000000', true],
    ]);
  });

  test('an inch plan that claims millimetres is doubtful', () => {
    const drawing = readParts({ header: [['$INSUNITS', [70, 4]]], entities: [ring([[0, 0], [700, 0], [700, 400], [0, 400]])] });
    expect(drawing.metresPerUnit).toBe(0.001);
    expect(drawing.unitsDoubt).toMatch(/read as inches it would be 18 m/);
  });

  test('a bare file of lines has no units and no layer table', () => {
    const drawing = readText('0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nA\n10\n1\n20\n2\n11\n3\n21\n4\n0\nENDSEC\n0\nEOF\n');
    expect(drawing.metresPerUnit).toBeNull();
    expect(piecesOf(drawing)).toEqual([[1, 2, 3, 4]]);
  });

  test('text in the code page of the file, layer names too', () => {
    const parts = { header: [['$DWGCODEPAGE', [3, 'ANSI_1252']] as const], entities: [line(0, 0, 9, 9, 'Türen'), entity('TEXT', [8, 'Türen'], [10, 0], [20, 0], [40, 1], [1, 'Küche'])] };
    const drawing = readParts(parts);
    expect(drawing.layers[0]?.name).toBe('Türen');
    expect(textsOf(drawing)).toEqual(['Küche']);
    const utf8 = dxfText(parts).replace('AC1015', 'AC1021');
    expect(textsOf(readDxf(new TextEncoder().encode(utf8), decode, quiet))).toEqual(['Küche']);
  });

  test('four lines that close are a ring', () => {
    const drawing = readEntities(line(0, 0, 8, 0), line(8, 5, 8, 0), line(0, 5, 8, 5), line(0, 5, 0, 0));
    expect(drawing.layers[0]?.closed).toHaveLength(1);
  });

  test('sections that are not read are passed over, blank lines after the end too', () => {
    const text = dxfText({ entities: [room] }).replace('  0\r\nEOF', '  0\r\nSECTION\r\n  2\r\nTHUMBNAILIMAGE\r\n 90\r\n 3\r\n310\r\nFFEE\r\n  0\r\nENDSEC\r\n  0\r\nEOF');
    expect(piecesOf(readText(`${text}\r\n\r\n`))).toHaveLength(4);
  });

  test('progress is told, and what it throws ends the reading', () => {
    const bytes = dxfBytes({ entities: Array.from({ length: 5000 }, (_, i) => line(0, 0, i, 1)) });
    const heard: number[] = [];
    readDxf(bytes, decode, (done) => void heard.push(done));
    expect(heard.length).toBeGreaterThan(2);
    expect(heard.every((done) => done >= 0 && done <= 1)).toBe(true);
    const stop = new Error('stop');
    expect(() => readDxf(bytes, decode, () => {
      throw stop;
    })).toThrow(stop);
  });
});

describe('files that must not pass', () => {
  const cut = dxfText({ entities: [room, line(1, 1, 2, 2)] });

  test('a file without its end mark', () => {
    const problem = problemOf(() => readParts({ entities: [room], isCut: true }));
    expect(problem.what).toMatch(/ends in the middle/);
    expect(problem.where).toMatch(/^line \d+$/);
    expect(problem.remedy).toMatch(/again/);
  });

  test('a file cut anywhere', () => {
    // Beyond the end mark's own letters a cut loses nothing but the last line end.
    for (let length = 1; length < cut.length - 5; length += 7) {
      const problem = problemOf(() => readText(cut.slice(0, length)));
      expect(problem.remedy).not.toBe('');
    }
  });

  test('a file without a drawing', () => {
    expect(problemOf(() => readText('0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n')).what).toMatch(/no drawing/);
    expect(problemOf(() => readParts({})).what).toMatch(/nothing that can be drawn/);
  });

  test.each(['NaN', 'inf', '1e400', '1.#INF', 'abc', '1e30'])('a coordinate of %s', (value) => {
    const problem = problemOf(() => readEntities(line(0, 0, 5, 5), entity('LINE', [8, '0'], [10, value], [20, 0], [11, 1], [21, 1])));
    expect(problem.what).toMatch(/damaged/);
    expect(problem.where).toMatch(/LINE/);
  });

  test('a symbol that contains itself, at once or over a detour', () => {
    const own = { blocks: [{ name: 'A', entities: [insert('A', 1, 1), line(0, 0, 1, 1)] }], entities: [insert('A', 0, 0)] };
    expect(problemOf(() => readParts(own)).what).toMatch(/contains itself/);
    const detour = { blocks: [{ name: 'A', entities: [insert('B', 1, 1)] }, { name: 'B', entities: [insert('A', 1, 1)] }], entities: [insert('A', 0, 0)] };
    expect(problemOf(() => readParts(detour)).where).toMatch(/block “A”/);
  });

  test('50 000 symbols, each inside the next', () => {
    const blocks = Array.from({ length: 50_000 }, (_, i) => ({ name: `B${i}`, entities: i === 49_999 ? [line(0, 0, 1, 1)] : [insert(`B${i + 1}`, 1, 1)] }));
    expect(problemOf(() => readParts({ blocks, entities: [insert('B0', 0, 0)] })).what).toMatch(/deep/);
  });

  test('symbols that double at every step', () => {
    const blocks = Array.from({ length: 50 }, (_, i) => ({ name: `B${i}`, entities: i === 49 ? [line(0, 0, 1, 1)] : [insert(`B${i + 1}`, 0, 0), insert(`B${i + 1}`, 1, 0)] }));
    expect(problemOf(() => readParts({ blocks, entities: [insert('B0', 0, 0)] })).what).toMatch(/million symbols/);
  });

  test('a symbol repeated a thousand million times', () => {
    const blocks = [{ name: 'B', entities: [ring([[0, 0], [1, 0], [1, 1], [0, 1]])] }];
    const problem = problemOf(() => readParts({ blocks, entities: [insert('B', 0, 0, '0', [70, 32_767], [71, 32_767], [44, 1], [45, 1])] }));
    expect(problem.what).toMatch(/million/);
  });

  test('a count of a thousand million corners where there are three', () => {
    const drawing = readEntities(line(0, 0, 9, 9), entity('LWPOLYLINE', [8, 'P'], [90, 1_000_000_000], [70, 1], [10, 0], [20, 0], [10, 4], [20, 0], [10, 4], [20, 4]));
    expect(layerNamed(drawing, 'P').segments).toHaveLength(12);
  });

  test('a spline of monstrous degree', () => {
    const drawing = readEntities(line(0, 0, 9, 9), entity('SPLINE', [71, 1e9], [10, 0], [20, 0], [10, 1], [20, 1]));
    expect(drawing.warnings.join()).toMatch(/1 curve left out/);
  });
});
