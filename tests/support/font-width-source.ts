import { fileURLToPath } from 'node:url';
import PDFDocument from 'pdfkit';

/** Files of the shipped fonts. */
export const FONT_FILES = {
  plain: fileURLToPath(new URL('../../resources/fonts/DejaVuSansCondensed.ttf', import.meta.url)),
  bold: fileURLToPath(new URL('../../resources/fonts/DejaVuSansCondensed-Bold.ttf', import.meta.url)),
} as const;

/** What the printer's own library knows of an opened font file. */
export interface OpenedFont {
  readonly unitsPerEm: number;
  readonly characterSet: readonly number[];
  glyphForCodePoint(code: number): { readonly advanceWidth: number; readonly bbox: { readonly minY: number; readonly maxY: number } };
}

/** A shipped font, opened through pdfkit, which keeps its reader to itself. */
export function openFont(name: keyof typeof FONT_FILES): OpenedFont {
  const document = new PDFDocument({ font: FONT_FILES[name] });
  return (document as unknown as { _font: { font: OpenedFont } })._font.font;
}

const pack = (name: keyof typeof FONT_FILES): string => {
  const font = openFont(name);
  const codes = [...new Set(font.characterSet)].sort((a, b) => a - b);
  const runs: { first: number; items: { width: number; times: number }[]; next: number }[] = [];
  for (const code of codes) {
    const width = font.glyphForCodePoint(code).advanceWidth;
    let run = runs.at(-1);
    if (!run || run.next !== code) {
      run = { first: code, items: [], next: code };
      runs.push(run);
    }
    run.next = code + 1;
    const last = run.items.at(-1);
    if (last?.width === width) last.times += 1;
    else run.items.push({ width, times: 1 });
  }
  const item = ({ width, times }: { width: number; times: number }) => width.toString(36) + (times > 1 ? `*${times.toString(36)}` : '');
  return runs.map(({ first, items }) => `${first.toString(36)}:${items.map(item).join(',')}`).join(';');
};

/** What `src-shared/sheets/font-width-table.ts` must hold for the shipped fonts. */
export const fontWidthSource = (): string => `import type { FontName } from './sheet.ts';

/** Size of the em square that the widths below count in. */
export const FONT_UNITS_PER_EM = ${openFont('plain').unitsPerEm};

/**
 * Advance widths of the shipped fonts, made from the files in resources/fonts by tests/support/font-width-source.ts;
 * the test of font-widths.ts rewrites this file when run with \`--update\`.
 * Runs of code points split by ";": first code ":" widths split by ",", "*" times; all in base 36.
 */
export const FONT_WIDTHS: Readonly<Record<FontName, string>> = {
  plain: '${pack('plain')}',
  bold: '${pack('bold')}',
};
`;
