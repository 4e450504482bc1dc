import { PDFArray, PDFDict, PDFName, PDFNumber, PDFRef } from '@cantoo/pdf-lib';
import { type ArchiveFile, type Audit, arrayAt, contentOf, dictAt, nameAt, numberAt, streamAt } from './archive-file.ts';
import { contentsOf } from './page-content.ts';
import { type TrueType, trueType } from './true-type.ts';

/** A width in the dictionary may differ so much from the one in the font program [thousandths]. */
const WIDTH_OFF = 1;
const LATIN_1 = [...Array.from({ length: 95 }, (_, i) => 32 + i), ...Array.from({ length: 96 }, (_, i) => 160 + i)];

/** Every font that something is written with, or that a reader may write with. */
function fontsOf(file: ArchiveFile): ReadonlySet<PDFDict> {
  const form = dictAt(file.document.catalog, 'AcroForm');
  const listed = [...file.document.getPages().map(({ node }) => node.Resources()), ...file.streams.map(({ dict }) => dictAt(dict, 'Resources')), dictAt(form, 'DR')].map((resources) => dictAt(resources, 'Font'));
  return new Set(listed.flatMap((fonts) => [...(fonts?.entries() ?? [])].map(([, font]) => (font instanceof PDFRef ? file.document.context.lookup(font) : font)).filter((font) => font instanceof PDFDict)));
}

/** Widths by glyph of `W`, ISO 32000-1, 9.7.4.3. */
function widthsOf(font: PDFDict): Map<number, number> {
  const widths = new Map<number, number>();
  const items = arrayAt(font, 'W');
  for (let i = 0; i < items.length; ) {
    const first = items[i] instanceof PDFNumber ? Number(String(items[i])) : Number.NaN;
    const next = items[i + 1];
    if (next instanceof PDFArray) {
      for (const [k, width] of next.asArray().entries()) widths.set(first + k, Number(String(width)));
      i += 2;
    } else {
      for (let glyph = first; glyph <= Number(String(next)); glyph += 1) widths.set(glyph, Number(String(items[i + 2])));
      i += 3;
    }
  }
  return widths;
}

/** The program of a font, embedded as TrueType; a fault in words without one. */
function programOf(font: PDFDict, name: string): TrueType | string {
  const stream = streamAt(dictAt(font, 'FontDescriptor'), 'FontFile2');
  if (!stream) return `6.2.11.4.1: the font ${name} is not embedded`;
  try {
    return trueType(contentOf(stream));
  } catch {
    return `6.2.11.2: the font program of ${name} cannot be read`;
  }
}

function auditSimple(font: PDFDict, name: string): string[] {
  const program = programOf(font, name);
  if (typeof program === 'string') return [program];
  const faults: string[] = [];
  const isSymbolic = ((numberAt(dictAt(font, 'FontDescriptor'), 'Flags') ?? 0) & 4) !== 0;
  const encoding = nameAt(font, 'Encoding');
  if (!isSymbolic && encoding !== 'WinAnsiEncoding' && encoding !== 'MacRomanEncoding') faults.push(`6.2.11.6: ${name} does not say which character a code means`);
  if (isSymbolic && !program.hasSymbolList) faults.push(`6.2.11.6: ${name} is a font of symbols without their list`);
  const [first, widths] = [numberAt(font, 'FirstChar'), arrayAt(font, 'Widths').map((width) => Number(String(width)))];
  if (first === undefined || numberAt(font, 'LastChar') !== first + widths.length - 1) faults.push(`6.2.11.2: ${name} has no width for each of its codes`);
  // Codes up to 126 and from 160 on are the characters of their number.
  for (const code of isSymbolic ? [] : LATIN_1) {
    const glyph = program.glyphOf(code);
    if (glyph === undefined || (glyph === 0 && ![0xad].includes(code))) faults.push(`6.2.11.4.1: ${name} has no glyph for character ${code}`);
    else if (Math.abs((widths[code - (first ?? 0)] ?? Number.NaN) - program.advance(glyph)) <= WIDTH_OFF) continue;
    else faults.push(`6.2.11.5: the width of character ${code} of ${name} is not that of its glyph`);
  }
  return faults;
}

function auditComposite(font: PDFDict, name: string): string[] {
  const faults: string[] = [];
  const [below] = arrayAt(font, 'DescendantFonts');
  if (!(below instanceof PDFDict)) return [`6.2.11.3: ${name} leads to no font`];
  const program = programOf(below, name);
  if (typeof program === 'string') return [program];
  if (nameAt(font, 'Encoding') !== 'Identity-H' && nameAt(font, 'Encoding') !== 'Identity-V') faults.push(`6.2.11.3.3: ${name} has a list of codes that is not embedded`);
  if (nameAt(below, 'CIDToGIDMap') !== 'Identity' && !streamAt(below, 'CIDToGIDMap')) faults.push(`6.2.11.3.2: ${name} does not say which glyph a code means`);
  if (!streamAt(font, 'ToUnicode')) faults.push(`6.2.11.7 (asked for by level U only): ${name} does not say which character a code means, so that no text is found`);
  for (const [glyph, width] of widthsOf(below)) if (glyph < program.glyphCount && Math.abs(width - program.advance(glyph)) > WIDTH_OFF) faults.push(`6.2.11.5: the width of glyph ${glyph} of ${name} is not that of its program`);
  return faults;
}

/** Codes of two bytes that are written in each composite font, by the font. */
function auditWritten(file: ArchiveFile): string[] {
  const faults = new Set<string>();
  for (const { where, resources, tokens } of contentsOf(file)) {
    const fonts = dictAt(resources, 'Font');
    let font: PDFDict | undefined;
    let glyphs = 0;
    tokens.forEach((token, i) => {
      if (token === 'Tf') {
        const name = tokens[i - 2]?.slice(1) ?? '';
        font = dictAt(fonts, name);
        if (!font) faults.add(`6.2.2: ${where} writes with a font ${name} that it does not name`);
        const [below] = font ? arrayAt(font, 'DescendantFonts') : [];
        const program = below instanceof PDFDict ? programOf(below, name) : '';
        glyphs = typeof program === 'string' ? 0 : program.glyphCount;
      } else if (/^<[\da-f]*>$/i.test(token) && glyphs > 0) {
        for (const [code] of token.matchAll(/[\da-f]{4}/gi)) {
          const glyph = Number.parseInt(code, 16);
          if (glyph === 0 || glyph >= glyphs) faults.add(`6.2.11.8: ${where} writes a character that its font does not have`);
        }
      }
    });
  }
  return [...faults];
}

/** Fonts: embedded, with widths that are true and codes that mean something, and no character that is missing (6.2.11). */
export const auditFonts: Audit = (file) => [
  ...[...fontsOf(file)].flatMap((font) => {
    const name = nameAt(font, 'BaseFont') ?? 'without a name';
    return font.get(PDFName.of('DescendantFonts')) ? auditComposite(font, name) : auditSimple(font, name);
  }),
  ...auditWritten(file),
];
