import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { CAP_HEIGHT, DEPTH, RISE, isPrintable, printable, textWidth_mm } from '#shared/sheets/font-widths';
import { FONT_FILES, fontWidthSource, openFont } from '../../support/font-width-source.ts';

const TABLE = fileURLToPath(new URL('../../../src-shared/sheets/font-width-table.ts', import.meta.url));

describe('font widths', () => {
  test('the table is the one of the shipped fonts', async () => {
    await expect(fontWidthSource()).toMatchFileSnapshot(TABLE);
  });

  test('every sign that a sheet needs is in both fonts', () => {
    for (const name of ['plain', 'bold'] as const) {
      const known = new Set(openFont(name).characterSet);
      for (const sign of '≥≤½¼¾⅛⅜⅝⅞°Δ×±′″²³–—·…□') expect(known.has(sign.codePointAt(0) ?? 0), `${sign} in ${name}`).toBe(true);
    }
    expect(isPrintable('≥')).toBe(true);
  });

  test('figures are all of one width', () => {
    for (const font of ['plain', 'bold'] as const) {
      for (const figure of '123456789') expect(textWidth_mm(figure, 2.5, font)).toBe(textWidth_mm('0', 2.5, font));
    }
  });

  test('the height of capitals and the reach of letters are those of the fonts', () => {
    for (const name of ['plain', 'bold'] as const) {
      const font = openFont(name);
      const box = (letter: string) => font.glyphForCodePoint(letter.codePointAt(0) ?? 0).bbox;
      expect(box('H').maxY / font.unitsPerEm).toBe(CAP_HEIGHT);
      for (const letter of 'dlk|g()jpqy½¾⅞"\'') {
        expect(box(letter).maxY / box('H').maxY).toBeLessThanOrEqual(RISE);
        expect(-box(letter).minY / box('H').maxY, letter).toBeLessThanOrEqual(letter === '|' ? 0.4 : DEPTH);
      }
    }
  });

  test('widths agree with what pdfkit measures, kerning and ligatures left out', () => {
    const document = new PDFDocument({ font: FONT_FILES.plain });
    const features = { kern: false, liga: false, clig: false } as unknown as [];
    for (const font of ['plain', 'bold'] as const) {
      document.font(FONT_FILES[font]).fontSize(10 / CAP_HEIGHT);
      fc.assert(
        fc.property(fc.string({ unit: fc.constantFrom(...'AVTo fi0123/"\'-½≥°Δ×.,()éñßЖω') , minLength: 1 }), (text) => {
          expect(textWidth_mm(text, 10, font)).toBeCloseTo(document.widthOfString(text, { features }), 6);
        }),
        { numRuns: 200 },
      );
    }
  });

  test('a text is printable whatever it holds', () => {
    expect(printable('a\nb\tc\u0000\u202e d')).toBe('a b c d');
    expect(printable('図 1')).toBe('□ 1');
    expect(printable('e\u0301')).toBe('é');
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const character of printable(text)) expect(isPrintable(character)).toBe(true);
      }),
    );
  });
});
