import { unpackPng } from '../../../support/png-pixels.ts';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { ringArea } from '#shared/underlay/line-work';
import { readPdf } from '../../../../src-main/services/underlay/pdf/read-pdf.ts';
import { pdfFile, pdfPage, stream } from '../../../support/pdf-file.ts';
import { pngFile } from '../../../support/picture-file.ts';
import { hasPiece, layerNamed, piecesOf, placesOf, problemIn, quiet, textsOf } from '../../../support/underlay.ts';

const read = (bytes: Uint8Array, page = 1) => readPdf(bytes, page, quiet);

/** A document written by the library pdfkit. */
const kitFile = (draw: (document: PDFKit.PDFDocument) => void, options: PDFKit.PDFDocumentOptions = {}): Promise<Uint8Array> =>
  new Promise((resolve) => {
    const document = new PDFDocument({ size: [400, 300], margin: 0, ...options });
    const parts: Buffer[] = [];
    document.on('data', (part: Buffer) => parts.push(part));
    document.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))));
    draw(document);
    document.end();
  });

describe('paths', () => {
  test('strokes with the transforms around them, in points from the lower left', async () => {
    const drawing = await read(pdfPage({ content: '10 20 m 50 20 l S q 2 0 0 2 100 10 cm 0 0 10 5 re s Q 0 0 m 0 99 l S' }));
    expect(drawing).toMatchObject({ kind: 'pdf', metresPerUnit: null, pageCount: 1, unitsText: 'page of 71 × 35 mm: paper units say nothing of the site' });
    expect(hasPiece(drawing, 10, 20, 50, 20)).toBe(true);
    expect(hasPiece(drawing, 100, 10, 120, 10)).toBe(true);
    expect(hasPiece(drawing, 120, 10, 120, 20)).toBe(true);
    expect(hasPiece(drawing, 0, 0, 0, 99)).toBe(true);
    expect(drawing.layers.map(({ name }) => name)).toEqual(['0']);
    expect(drawing.layers[0]?.closed).toHaveLength(1);
  });

  test('fills: dark ones with their holes, light ones not at all, clipped ones whole', async () => {
    const drawing = await read(pdfPage({ content: '0 g 0 0 40 40 re 10 10 20 20 re f* 0.9 g 100 0 50 50 re f 0 0 5 5 re W n 50 50 m 90 50 l S' }));
    expect(drawing.layers[0]?.fills.map((ring) => Math.abs(ringArea(ring)))).toEqual([1200]);
    expect(hasPiece(drawing, 50, 50, 90, 50)).toBe(true);
    expect(placesOf(drawing).every(([x]) => x <= 90)).toBe(true);
    expect(drawing.warnings.join()).toMatch(/Light and patterned/);
  });

  test('curves', async () => {
    // A quarter circle as everybody draws it, k = 0.5522847498: within 0.03 % of the radius.
    const drawing = await read(pdfPage({ content: '50 0 m 50 27.61423749 27.61423749 50 0 50 c S' }));
    for (const [x, y] of placesOf(drawing)) expect(Math.abs(Math.hypot(x, y) - 50)).toBeLessThan(0.03);
    expect(piecesOf(drawing).length).toBeGreaterThan(10);
  });

  test('forms in forms', async () => {
    const drawing = await read(
      pdfPage({
        content: 'q 1 0 0 1 20 0 cm /Fm1 Do Q',
        resources: '/XObject << /Fm1 5 0 R >>',
        more: [
          stream('/Fm2 Do', '/Type /XObject /Subtype /Form /BBox [0 0 99 99] /Matrix [2 0 0 2 0 0] /Resources << /XObject << /Fm2 6 0 R >> >>'),
          stream('0 0 m 10 0 l S', '/Type /XObject /Subtype /Form /BBox [0 0 99 99] /Group << /S /Transparency >>'),
        ],
      }),
    );
    expect(hasPiece(drawing, 20, 0, 40, 0)).toBe(true);
  });

  test('annotations are drawn where they are seen', async () => {
    const drawing = await read(
      pdfPage({
        content: '0 0 m 1 1 l S',
        page: '/MediaBox [0 0 200 100] /Annots [5 0 R]',
        more: ['<< /Type /Annot /Subtype /Stamp /Rect [50 20 70 30] /F 4 /AP << /N 6 0 R >> >>', stream('0 0 m 10 5 l S', '/Type /XObject /Subtype /Form /BBox [0 0 10 5]')],
      }),
    );
    expect(hasPiece(drawing, 50, 20, 70, 30, 1e-4)).toBe(true);
  });
});

describe('pages', () => {
  test.each([
    // The place 10,20 on a page of 200 × 100 as seen, turned clockwise by so much.
    [0, 10, 20],
    [90, 20, 190],
    [180, 190, 80],
    [270, 80, 10],
  ])('turned by %i°', async (turn, x, y) => {
    const drawing = await read(pdfPage({ content: '10 20 m 10 20.5 l S', page: `/MediaBox [0 0 200 100] /Rotate ${turn}` }));
    const [start] = placesOf(drawing);
    expect(start).toEqual([expect.closeTo(x, 4), expect.closeTo(y, 4)]);
  });

  test('a page cut to a window, and one in units of its own', async () => {
    expect(hasPiece(await read(pdfPage({ content: '60 50 m 70 50 l S', page: '/MediaBox [0 0 200 100] /CropBox [50 40 150 90]' })), 10, 10, 20, 10)).toBe(true);
    expect(hasPiece(await read(pdfPage({ content: '60 50 m 70 50 l S', page: '/MediaBox [0 0 200 100] /UserUnit 10' })), 600, 500, 700, 500)).toBe(true);
  });

  test('any page of several, and none beyond the last', async () => {
    const bytes = await kitFile((document) => {
      document.moveTo(0, 0).lineTo(10, 0).stroke();
      document.addPage().moveTo(0, 300).lineTo(70, 300).stroke();
    });
    const second = await read(bytes, 2);
    expect(second.pageCount).toBe(2);
    expect(hasPiece(second, 0, 0, 70, 0)).toBe(true);
    expect((await problemIn(read(bytes, 3))).what).toMatch(/only 2 pages/);
  });

  test('an empty page', async () => {
    const problem = await problemIn(read(pdfPage({ content: '' })));
    expect(problem.what).toMatch(/nothing that can be drawn/);
  });
});

describe('texts', () => {
  test('place, height of capitals, turn, colour of its own', async () => {
    const drawing = await read(pdfPage({ content: 'BT /F1 10 Tf 20 30 Td (Server room) Tj ET BT /F1 10 Tf 0 1 -1 0 100 10 Tm (UP) Tj ET' }));
    const texts = drawing.layers[0]?.texts ?? [];
    expect(texts).toMatchObject([
      { x: 20, y: 30, height: expect.closeTo(7), rotation_rad: 0, text: 'Server room' },
      { x: 100, y: 10, height: expect.closeTo(7), text: 'UP' },
    ]);
    expect(texts[1]?.rotation_rad).toBeCloseTo(Math.PI / 2);
  });

  test('letters set one by one are joined, words apart stay words, far ones apart', async () => {
    const letters = 'BT /F1 10 Tf 20 30 Td (R) Tj 7.22 0 Td (O) Tj 7.78 0 Td (O) Tj 7.78 0 Td (M) Tj 11.5 0 Td (12) Tj 90 0 Td (far) Tj ET';
    expect(textsOf(await read(pdfPage({ content: letters })))).toEqual(['ROOM 12', 'far']);
    expect(textsOf(await read(pdfPage({ content: 'BT /F1 10 Tf 20 30 Td [(RO) 20 (OM) -600 (12)] TJ ET' })))).toEqual(['ROOM 12']);
  });

  test('invisible text, as scanners put under pictures, is left out', async () => {
    const drawing = await read(pdfPage({ content: '0 0 m 9 9 l S BT 3 Tr /F1 10 Tf 20 30 Td (ocr) Tj ET' }));
    expect(textsOf(drawing)).toEqual([]);
  });

  test('an embedded typeface, written by pdfkit', async () => {
    const font = 'node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf';
    const drawing = await read(await kitFile((document) => void document.font(font).fontSize(20).text('Größe ≥ 3½', 40, 50)));
    expect(textsOf(drawing)).toEqual(['Größe ≥ 3½']);
  });
});

describe('layers', () => {
  test('shown and hidden ones by name, the rest on 0', async () => {
    const drawing = await read(
      pdfPage({
        content: '/OC /L1 BDC 0 0 m 10 0 l S EMC /OC /L2 BDC 0 5 m 10 5 l S EMC /Span BMC 0 9 m 10 9 l S EMC',
        resources: '/Properties << /L1 5 0 R /L2 6 0 R >>',
        catalogue: '/OCProperties << /OCGs [5 0 R 6 0 R] /D << /ON [5 0 R] /OFF [6 0 R] /Order [5 0 R 6 0 R] >> >>',
        more: ['<< /Type /OCG /Name (Walls) >>', '<< /Type /OCG /Name (Furniture) >>'],
      }),
    );
    expect(drawing.layers.map(({ name, visible }) => [name, visible])).toEqual([['Walls', true], ['Furniture', false], ['0', true]]);
    expect(hasPiece({ layers: [layerNamed(drawing, 'Furniture')] }, 0, 5, 10, 5)).toBe(true);
  });
});

describe('pictures', () => {
  test('a scan written by pdfkit', async () => {
    const drawing = await read(await kitFile((document) => void document.image(Buffer.from(pngFile(40, 20)), 100, 50, { width: 200 })));
    expect(drawing.images).toHaveLength(1);
    expect(drawing.images[0]).toMatchObject({ mime: 'image/png', width: 40, height: 20, matrix: [200, 0, 0, 100, 100, 150].map((value) => expect.closeTo(value, 3)) });
  });

  test('an inline picture: its pixels', async () => {
    const drawing = await read(pdfPage({ content: 'q 50 0 0 20 10 10 cm BI /W 2 /H 1 /CS /RGB /BPC 8 /F /AHx ID FF000000FF00> EI Q' }));
    expect(drawing.images[0]).toMatchObject({ width: 2, height: 1, matrix: [50, 0, 0, 20, 10, 10] });
    expect([...unpackPng(drawing.images[0]?.bytes).pixels]).toEqual([255, 0, 0, 255, 0, 255, 0, 255]);
  });

  test('a stencil, as one-bit scans are: 0 is ink in the fill colour', async () => {
    const mask = stream('\x55\xaa', '/Type /XObject /Subtype /Image /Width 8 /Height 2 /ImageMask true /BitsPerComponent 1');
    const drawing = await read(pdfPage({ content: '1 0 0 rg q 80 0 0 20 0 0 cm /Im1 Do Q', resources: '/XObject << /Im1 5 0 R >>', more: [mask] }));
    const png = unpackPng(drawing.images[0]?.bytes);
    expect([...png.pixels]).toEqual([0x55, 0xaa]);
    expect(png.palette.slice(0, 3)).toEqual([255, 0, 0]);
    expect(png.clear).toEqual([255, 0]);
  });
});

describe('documents that must not pass', () => {
  test('a password', async () => {
    const bytes = await kitFile((document) => void document.text('secret'), { userPassword: 'x', ownerPassword: 'y' });
    const problem = await problemIn(read(bytes));
    expect(problem.what).toMatch(/password/);
    expect(problem.remedy).toMatch(/print it to a new PDF/);
  });

  test('one that may be read but not changed needs none', async () => {
    const bytes = await kitFile((document) => void document.moveTo(0, 0).lineTo(9, 0).stroke(), { ownerPassword: 'y' });
    expect(piecesOf(await read(bytes))).toHaveLength(1);
  });

  test.each([
    ['only its first line', new TextEncoder().encode('%PDF-1.7\n')],
    ['a broken list of objects and no pages', new TextEncoder().encode('%PDF-1.7\nxref\n0 99\nnonsense\ntrailer\n<< /Root 7 0 R >>\nstartxref\n999999\n%%EOF')],
    ['pages that are their own parents', pdfFile(['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [2 0 R] /Count 1 >>'])],
  ])('%s', async (_, bytes) => {
    const problem = await problemIn(read(bytes));
    expect(problem.what).toMatch(/damaged|nothing|ends in the middle/);
    expect(problem.remedy).not.toBe('');
  });

  test('a broken list of objects alone is mended', async () => {
    const text = Buffer.from(pdfPage({ content: '0 0 m 9 0 l S' })).toString('latin1').replace(/startxref\n\d+/, 'startxref\n7');
    expect(piecesOf(await read(new Uint8Array(Buffer.from(text, 'latin1'))))).toHaveLength(1);
  });

  test('a document cut anywhere', async () => {
    const bytes = pdfPage({ content: '0 0 m 9 0 l S' });
    for (let length = 10; length < bytes.length - 6; length += 40) expect((await problemIn(read(bytes.subarray(0, length)))).what).toMatch(/ends in the middle/);
  });

  test('a page with a fault in it is painted as far as it goes, and says so', async () => {
    const drawing = await read(pdfPage({ content: '0 0 m 9 0 l S /Lost Do 5 5 m 9 9 l S' }));
    expect(hasPiece(drawing, 0, 0, 9, 0)).toBe(true);
    expect(drawing.warnings.join()).toMatch(/damaged in places/);
  });

  test('a flipped bit in packed steps is noticed, wherever it is', async () => {
    const bytes = await kitFile((document) => {
      for (let i = 0; i < 60; i += 1) document.moveTo(i * 3, 0).lineTo(i * 5, 200 + ((i * 37) % 90));
      document.stroke();
    });
    expect((await read(bytes)).warnings).toEqual([]);
    const data = Buffer.from(bytes).indexOf('stream\n') + 7;
    for (let at = data + 2; at < data + 60; at += 6) {
      const flipped = bytes.slice();
      flipped[at] = (flipped[at] ?? 0) ^ 16;
      const outcome = await read(flipped).then(
        ({ warnings }) => warnings.join(),
        (error: unknown) => String(error),
      );
      expect(outcome).toMatch(/damaged|larger than anything|nothing that can be drawn/);
    }
  });

  test('a form that paints itself', async () => {
    const form = stream('0 0 m 5 5 l S /Fm1 Do', '/Type /XObject /Subtype /Form /BBox [0 0 99 99] /Resources << /XObject << /Fm1 5 0 R >> >>');
    const drawing = await read(pdfPage({ content: '/Fm1 Do', resources: '/XObject << /Fm1 5 0 R >>', more: [form] }));
    expect(piecesOf(drawing).length).toBeLessThan(10);
  });

  test('what progress throws ends the reading', async () => {
    const stop = new Error('stop');
    await expect(
      readPdf(pdfPage({ content: '0 0 m 9 0 l S' }), 1, () => {
        throw stop;
      }),
    ).rejects.toBe(stop);
  });
});
