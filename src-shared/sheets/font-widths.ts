import { FONT_UNITS_PER_EM, FONT_WIDTHS } from './font-width-table.ts';
import type { FontName } from './sheet.ts';

/** Height of capitals over font size, the same in both shipped fonts. */
export const CAP_HEIGHT = 1493 / FONT_UNITS_PER_EM;
/** How far the tallest letter rises above and the deepest reaches below the baseline, over the height of capitals. */
export const RISE = 1.05;
export const DEPTH = 0.31;

/** Reads the packed table: runs of neighbouring code points, each a first code and the advance widths that follow. */
function unpack(packed: string): ReadonlyMap<number, number> {
  const widths = new Map<number, number>();
  for (const run of packed.split(';')) {
    const [first, list] = run.split(':');
    let code = Number.parseInt(first ?? '', 36);
    for (const item of (list ?? '').split(',')) {
      const [width, times] = item.split('*');
      for (let i = 0; i < Number.parseInt(times ?? '1', 36); i += 1) widths.set(code++, Number.parseInt(width ?? '', 36));
    }
  }
  return widths;
}

const tables = new Map<FontName, ReadonlyMap<number, number>>();
const widthsOf = (font: FontName): ReadonlyMap<number, number> => {
  const known = tables.get(font) ?? unpack(FONT_WIDTHS[font]);
  tables.set(font, known);
  return known;
};

/** Whether the shipped fonts can print a character. */
export const isPrintable = (character: string): boolean => widthsOf('plain').has(character.codePointAt(0) ?? -1);

/**
 * A text as it can be printed on one line: composed accents, no line breaks or control characters,
 * and □ for a character that the shipped font lacks, so that a gap is seen and not guessed.
 */
export const printable = (text: string): string => {
  const line = text.normalize('NFC').replace(/\s+/g, ' ').replace(/\p{C}/gu, '');
  return isAscii(line) ? line : [...line].map((character) => (isPrintable(character) ? character : '□')).join('');
};
// biome-ignore lint/suspicious/noControlCharactersInRegex: the range is all of ASCII
const isAscii = (text: string): boolean => /^[\x00-\x7f]*$/.test(text);

/** Width of one printed line [mm], from the advance widths of the shipped font without kerning. */
export function textWidth_mm(text: string, height_mm: number, font: FontName): number {
  const widths = widthsOf(font);
  const missing = widths.get(0x25a1) ?? FONT_UNITS_PER_EM;
  let units = 0;
  for (const character of text) units += widths.get(character.codePointAt(0) ?? 0) ?? missing;
  return (units / FONT_UNITS_PER_EM) * (height_mm / CAP_HEIGHT);
}
