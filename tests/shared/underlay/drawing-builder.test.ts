import { describe, expect, test } from 'vitest';
import { DrawingBuilder } from '#shared/underlay/drawing-builder';
import { problemOf, quiet } from '../../support/underlay.ts';

const facts = { metresPerUnit: null, unitsText: '', pageCount: 1 };

describe('drawing builder', () => {
  test('a layer takes the colour that most of its lines have', () => {
    const builder = new DrawingBuilder('svg');
    builder.workOn('A', '#ff0000').line(0, 0, 1, 0);
    builder.workOn('A', '#00ff00').polyline([0, 0, 5, 5, 9, 0], false);
    const { layers } = builder.finish(facts, quiet);
    expect(layers).toMatchObject([{ name: 'A', colour: '#00ff00', visible: true }]);
    expect(layers[0]?.segments).toHaveLength(12);
  });

  test('extents come from what the file shows', () => {
    const builder = new DrawingBuilder('dxf');
    builder.declareLayer('junk', false);
    builder.workOn('junk', '#000000').line(0, 0, 99_999, 99_999);
    builder.workOn('walls', '#000000').line(1, 2, 11, 7);
    const { extents, layers } = builder.finish(facts, quiet);
    expect(extents).toEqual({ minX: 1, minY: 2, maxX: 11, maxY: 7 });
    expect(layers.map(({ name, visible }) => [name, visible])).toEqual([
      ['junk', false],
      ['walls', true],
    ]);
  });

  test('a drawing in survey coordinates moves to the origin by a whole shift, and says so', () => {
    const builder = new DrawingBuilder('dxf');
    const work = builder.workOn('0', '#000000');
    work.polyline([2_612_345.5, 1_201_010, 2_612_365.5, 1_201_010, 2_612_365.5, 1_201_020], true);
    work.text(2_612_350, 1_201_015, 1, 0, 'Room');
    const drawing = builder.finish(facts, quiet);
    expect(drawing.extents).toEqual({ minX: 45.5, minY: 10, maxX: 65.5, maxY: 20 });
    expect(drawing.layers[0]?.texts[0]).toMatchObject({ x: 50, y: 15 });
    expect([...(drawing.layers[0]?.closed[0] ?? [])]).toEqual([45.5, 10, 65.5, 10, 65.5, 20]);
    expect(drawing.warnings.join()).toMatch(/2612300, 1201000/);
  });

  test('rings of letters and symbols are no rooms, and four lines that close are one', () => {
    const builder = new DrawingBuilder('dxf');
    const work = builder.workOn('0', '#000000');
    work.polyline([0, 0, 0.01, 0, 0.01, 0.01], true);
    work.line(0, 0, 50, 0);
    work.line(50, 0, 50, 20);
    work.line(50, 20, 0, 20);
    work.line(0, 20, 0, 0);
    const { layers } = builder.finish(facts, quiet);
    expect(layers[0]?.closed.map((ring) => [...ring])).toEqual([[0, 0, 50, 0, 50, 20, 0, 20]]);
  });

  test('an empty drawing is refused', () => {
    expect(problemOf(() => new DrawingBuilder('pdf').finish({ ...facts, pageCount: 3 }, quiet)).remedy).toMatch(/another page/);
  });

  test('numbers beyond any plan are refused', () => {
    const builder = new DrawingBuilder('dxf');
    builder.workOn('0', '#000000').line(0, 0, 1e20, 0);
    expect(problemOf(() => builder.finish(facts, quiet)).what).toMatch(/larger than anything/);
  });
});
