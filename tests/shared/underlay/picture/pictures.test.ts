import { describe, expect, test } from 'vitest';
import { findOrientation, orientationMatrix } from '#shared/underlay/picture/exif-orientation';
import { readJpeg } from '#shared/underlay/picture/read-jpeg';
import { crc32, readPng } from '#shared/underlay/picture/read-png';
import { transformed } from '#shared/underlay/matrix';
import { exifBlock, jpegFile, pngChunk, pngFile } from '../../../support/picture-file.ts';
import { problemOf, quiet } from '../../../support/underlay.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('PNG', () => {
  test('the check sum of the end chunk is the one printed in every PNG', () => {
    // PNG specification: the bytes of IEND, AE 42 60 82; and the CRC-32 check value of "123456789".
    expect(crc32(bytesOf('IEND'))).toBe(0xae426082);
    expect(crc32(bytesOf('123456789'))).toBe(0xcbf43926);
  });

  test('a pixel is a unit, y up from the lower left; paper resolution is told and means nothing', () => {
    const bytes = pngFile(300, 200, pngChunk('pHYs', [0, 0, 0x2e, 0x23, 0, 0, 0x2e, 0x23, 1]));
    const drawing = readPng(bytes, quiet);
    expect(drawing).toMatchObject({ kind: 'png', metresPerUnit: null, extents: { minX: 0, minY: 0, maxX: 300, maxY: 200 }, pageCount: 1 });
    expect(drawing.unitsText).toBe('pixels (300 × 200, 300 per inch of paper, which says nothing of the site)');
    expect(drawing.images[0]).toMatchObject({ mime: 'image/png', width: 300, height: 200, matrix: [300, 0, 0, 200, 0, 0] });
    expect(drawing.images[0]?.bytes).toEqual(bytes);
  });

  test('an orientation goes into the matrix and out of the file', () => {
    const drawing = readPng(pngFile(30, 20, pngChunk('eXIf', exifBlock(6))), quiet);
    expect(drawing.extents).toEqual({ minX: 0, minY: 0, maxX: 20, maxY: 30 });
    expect(drawing.images[0]?.bytes).toEqual(pngFile(30, 20));
  });

  test('cut anywhere it is refused', () => {
    const bytes = pngFile(30, 20);
    for (let length = 8; length < bytes.length; length += 1) expect(problemOf(() => readPng(bytes.subarray(0, length), quiet)).what).toMatch(/ends in the middle|damaged/);
  });

  test('a flipped bit is noticed', () => {
    const bytes = pngFile(30, 20);
    bytes[50] = (bytes[50] ?? 0) ^ 4;
    expect(problemOf(() => readPng(bytes, quiet)).what).toMatch(/damaged/);
  });

  test('a few bytes that unpack into more than a computer holds are refused by their head alone', () => {
    const problem = problemOf(() => readPng(pngFile(60_000, 60_000, [], new Uint8Array(10)), quiet));
    expect(problem.what).toMatch(/60000 × 60000/);
    expect(problem.remedy).toMatch(/200 dots per inch/);
    expect(problemOf(() => readPng(pngFile(0, 5, [], new Uint8Array(1)), quiet)).what).toMatch(/damaged/);
  });
});

describe('a PNG that would unpack into more than printing can hold', () => {
  /** A PNG whose head says what it likes; its pixels are not looked at. */
  const claiming = (colours: number, depth: number, isInterlaced: boolean, more: readonly number[] = []) => {
    const file = pngFile(9000, 9000, more, new Uint8Array(10));
    const head = [...file.slice(16, 24), depth, colours, 0, 0, isInterlaced ? 1 : 0];
    return Uint8Array.from([...file.slice(0, 8), ...pngChunk('IHDR', head), ...file.slice(33)]);
  };
  test.each([
    ['8 bits, plain', claiming(2, 8, false), true],
    ['16 bits, plain', claiming(2, 16, false), false],
    ['see-through', claiming(6, 8, false), false],
    ['see-through by a chunk', claiming(2, 8, false, pngChunk('tRNS', [0, 0, 0, 0, 0, 0])), false],
    ['interlaced', claiming(2, 8, true), false],
    ['grey, interlaced', claiming(0, 8, true), true],
  ])('%s', (_, bytes, isTaken) => {
    if (isTaken) expect(readPng(bytes, quiet).extents.maxX).toBe(9000);
    else expect(problemOf(() => readPng(bytes, quiet))).toMatchObject({ what: expect.stringContaining('can be printed'), remedy: expect.stringContaining('smaller') });
  });
});

describe('JPEG', () => {
  test('size, resolution, pixels up', () => {
    const drawing = readJpeg(jpegFile(640, 480, { perInch: 200 }), quiet);
    expect(drawing).toMatchObject({ kind: 'jpeg', metresPerUnit: null, extents: { minX: 0, minY: 0, maxX: 640, maxY: 480 } });
    expect(drawing.unitsText).toMatch(/200 per inch/);
    expect(drawing.images[0]?.mime).toBe('image/jpeg');
  });

  test('a photograph on its side: the matrix turns it, and the file no longer asks viewers to', () => {
    const drawing = readJpeg(jpegFile(640, 480, { orientation: 6 }), quiet);
    expect(drawing.extents).toEqual({ minX: 0, minY: 0, maxX: 480, maxY: 640 });
    expect(drawing.images[0]).toMatchObject({ width: 640, height: 480 });
    expect(drawing.images[0]?.bytes).toEqual(jpegFile(640, 480, { orientation: 1 }));
  });

  test('progressive is read, lossless is not', () => {
    expect(readJpeg(jpegFile(8, 8, { frame: 0xc2 }), quiet).extents.maxX).toBe(8);
    expect(problemOf(() => readJpeg(jpegFile(8, 8, { frame: 0xc3 }), quiet)).remedy).toMatch(/PNG/);
  });

  test('cut anywhere it is refused', () => {
    const bytes = jpegFile(640, 480, { orientation: 3, perInch: 72 });
    for (let length = 3; length < bytes.length; length += 1) expect(problemOf(() => readJpeg(bytes.subarray(0, length), quiet)).what).toMatch(/ends in the middle|damaged/);
  });

  test('too large is refused by its head', () => {
    expect(problemOf(() => readJpeg(jpegFile(65_000, 65_000), quiet)).what).toMatch(/65000/);
  });
});

describe('orientation, by the table of Exif 2.3 (tag 274): where the stored first row and column are seen', () => {
  // Corner of the first stored pixel as seen: x from the left, y from the bottom, of a stored 30 × 20 picture.
  test.each([
    [1, 0, 20, 30, 20],
    [2, 30, 20, 30, 20],
    [3, 30, 0, 30, 20],
    [4, 0, 0, 30, 20],
    [5, 0, 30, 20, 30],
    [6, 20, 30, 20, 30],
    [7, 20, 0, 20, 30],
    [8, 0, 0, 20, 30],
  ])('%i', (orientation, x, y, width, height) => {
    const matrix = orientationMatrix(30, 20, orientation);
    expect([...transformed(matrix, [0, 1])]).toEqual([x, y]);
    const corners = [...transformed(matrix, [0, 0, 1, 0, 1, 1, 0, 1])];
    expect(Math.max(...corners.filter((_, i) => i % 2 === 0))).toBe(width);
    expect(Math.max(...corners.filter((_, i) => i % 2 === 1))).toBe(height);
    expect(Math.min(...corners)).toBe(0);
  });

  test('first rows that are seen as columns, and the ways they run', () => {
    // 6: first row at the right, first column at the top: the row runs downward.
    expect([...transformed(orientationMatrix(30, 20, 6), [0, 1, 1, 1])]).toEqual([20, 30, 20, 0]);
    // 8: first row at the left, first column at the bottom: the row runs upward.
    expect([...transformed(orientationMatrix(30, 20, 8), [0, 1, 1, 1])]).toEqual([0, 0, 0, 30]);
  });

  test('blocks of both byte orders; nonsense is none', () => {
    expect(findOrientation(Uint8Array.from(exifBlock(8)))).toMatchObject({ value: 8, at: 18, isLittleEndian: true });
    const big = Uint8Array.from([0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 3, 0, 0]);
    expect(findOrientation(big)).toMatchObject({ value: 3, isLittleEndian: false });
    for (const bad of [[], [1, 2, 3], exifBlock(9), exifBlock(6).slice(0, 12)]) expect(findOrientation(Uint8Array.from(bad))).toBeUndefined();
  });
});
