import { describe, expect, test } from 'vitest';
import { wrapped } from '#shared/underlay/dxf/draw-texts';
import { guessTextWidth } from '#shared/underlay/line-work';
import { type Pair, entity, insert, line } from '../../../support/dxf-file.ts';
import { readEntities, readParts, textsOf } from '../../../support/underlay.ts';

const frame = line(0, 0, 100, 100, 'F');
const texts = (...entities: Pair[][]) => readEntities(frame, ...entities).layers.flatMap((layer) => layer.texts);

describe('single lines', () => {
  test('place, height, turn', () => {
    const [text] = texts(entity('TEXT', [10, 5], [20, 6], [40, 2.5], [1, 'ROOM %%c'], [50, 90]));
    expect(text).toMatchObject({ x: 5, y: 6, height: 2.5, text: 'ROOM ⌀' });
    expect(text?.rotation_rad).toBeCloseTo(Math.PI / 2);
  });

  test('a centred one begins where its writer worked out', () => {
    expect(texts(entity('TEXT', [10, 5], [20, 6], [11, 9], [21, 6], [40, 2], [72, 1], [1, 'ABC']))[0]).toMatchObject({ x: 5, y: 6 });
  });

  test('or, where the writer did not, about half its width before its middle', () => {
    const [text] = texts(entity('TEXT', [10, 0], [20, 0], [11, 50], [21, 6], [40, 2], [72, 1], [73, 2], [1, 'ABC']));
    expect(text?.x).toBeCloseTo(50 - guessTextWidth('ABC', 2) / 2);
    expect(text?.y).toBeCloseTo(5);
  });

  test('values of a symbol’s fields show, invisible ones do not', () => {
    const drawing = readParts({
      blocks: [{ name: 'TAG', entities: [line(0, 0, 1, 0), entity('ATTDEF', [10, 0], [20, 0], [40, 1], [1, 'default'], [2, 'NO'])] }],
      entities: [
        insert('TAG', 5, 5, 'T', [66, 1]),
        entity('ATTRIB', [8, 'T'], [10, 6], [20, 7], [40, 1], [1, 'D-12'], [2, 'NO'], [70, 0]),
        entity('ATTRIB', [8, 'T'], [10, 6], [20, 9], [40, 1], [1, 'secret'], [2, 'X'], [70, 1]),
        entity('SEQEND'),
        frame,
      ],
    });
    expect(textsOf(drawing)).toEqual(['D-12']);
  });
});

describe('paragraphs', () => {
  const paragraph = (...more: Pair[]) => entity('MTEXT', [10, 10], [20, 50], [40, 2], ...more);

  test('rows go down from the top by 5/3 of the height', () => {
    const rows = texts(paragraph([71, 1], [1, 'ONE\\PTWO']));
    expect(rows.map(({ text, x, y }) => [text, x, y])).toEqual([['ONE', 10, 48], ['TWO', 10, expect.closeTo(48 - (2 * 5) / 3)]]);
  });

  test('attached at the bottom right they end there', () => {
    const [one, two] = texts(paragraph([71, 9], [1, 'ONE\\PTWO']));
    expect(two?.y).toBeCloseTo(50);
    expect(one?.x).toBeCloseTo(10 - guessTextWidth('ONE', 2));
  });

  test('a long one comes in pieces', () => expect(texts(paragraph([3, 'LONG '], [3, 'TEXT '], [1, 'END']))[0]?.text).toBe('LONG TEXT END'));

  test('its direction is the last that the file gives', () => {
    expect(texts(paragraph([1, 'A'], [11, 0], [21, 1]))[0]?.rotation_rad).toBeCloseTo(Math.PI / 2);
    expect(texts(paragraph([1, 'A'], [11, 0], [21, 1], [50, 30]))[0]?.rotation_rad).toBeCloseTo(Math.PI / 6);
  });

  test('words wrap in their column', () => {
    expect(wrapped('AAAA BBBB CCCC', 1, 9)).toEqual(['AAAA BBBB', 'CCCC']);
    expect(wrapped('AAAA BBBB', 1, 0)).toEqual(['AAAA BBBB']);
  });
});
