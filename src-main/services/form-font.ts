import { CAP_HEIGHT } from '#shared/sheets/font-widths';
import { fontWithCmap } from './font-with-cmap.ts';

/** What pdfkit keeps of a font; it has no public way to a font that readers can type with. */
interface EmbeddedFont {
  readonly font: {
    readonly postscriptName: string;
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    readonly bbox: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
    createSubset(): { includeGlyph(id: number): number; encode(): Uint8Array };
    glyphForCodePoint(code: number): { readonly id: number; readonly advanceWidth: number };
  };
}

/** First and last code of a font of one byte a character. */
const FIRST = 32;
const LAST = 255;
/** Characters of WinAnsiEncoding from 128 to 159, 0 where it has none. Source: ISO 32000-1, annex D. */
const WINDOWS = [0x20ac, 0, 0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021, 0x02c6, 0x2030, 0x0160, 0x2039, 0x0152, 0, 0x017d, 0, 0, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014, 0x02dc, 0x2122, 0x0161, 0x203a, 0x0153, 0, 0x017e, 0x0178];
/** What stands for a code that the encoding leaves open. Source: as above, note 3. */
const BULLET = 0x2022;
const characterAt = (code: number): number => (code === 127 ? BULLET : code >= 128 && code < 160 ? WINDOWS[code - 128] || BULLET : code);

/** Bit of a font whose characters are those of the standard Latin set. ISO 32000-1, table 123. */
const NONSYMBOLIC = 32;

/**
 * Embeds a font for what a reader types into a form: all characters of WinAnsiEncoding in one byte each, which is what
 * every reader can write, whether it makes the look of a field itself or not.
 * @param file  font file
 * @returns the font's object
 */
export function formFont(document: PDFKit.PDFDocument, file: string): object {
  document.font(file);
  const { font } = (document as unknown as { readonly _font: EmbeddedFont })._font;
  const thousandths = (units: number): number => Math.round((units * 1000) / font.unitsPerEm);
  const subset = font.createSubset();
  const glyphs = new Map<number, number>();
  const widths: number[] = [];
  for (let code = FIRST; code <= LAST; code += 1) {
    const character = characterAt(code);
    const { id, advanceWidth } = font.glyphForCodePoint(character);
    glyphs.set(character, subset.includeGlyph(id));
    widths.push(thousandths(advanceWidth));
  }
  const ended = (data: Record<string, unknown>, content?: Buffer): object => {
    const object = document.ref(data) as unknown as { end(content?: Buffer): void };
    object.end(content);
    return object;
  };
  const name = `FORMAA+${font.postscriptName}`;
  const program = Buffer.from(fontWithCmap(subset.encode(), glyphs));
  const descriptor = ended({
    Type: 'FontDescriptor',
    FontName: name,
    Flags: NONSYMBOLIC,
    FontBBox: [font.bbox.minX, font.bbox.minY, font.bbox.maxX, font.bbox.maxY].map(thousandths),
    ItalicAngle: 0,
    Ascent: thousandths(font.ascent),
    Descent: thousandths(font.descent),
    CapHeight: Math.round(CAP_HEIGHT * 1000),
    StemV: 80,
    FontFile2: ended({ Length1: program.length }, program),
  });
  return ended({ Type: 'Font', Subtype: 'TrueType', BaseFont: name, FirstChar: FIRST, LastChar: LAST, Widths: widths, Encoding: 'WinAnsiEncoding', FontDescriptor: descriptor });
}
