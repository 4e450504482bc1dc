import { type UnderlayKind, UnderlayProblem } from './drawing.ts';

/** Bytes looked at: a drawing's mark stands at its very start, a PDF's within the first kilobyte. */
const LOOKED_AT = 4096;

const asText = (bytes: Uint8Array): string => String.fromCharCode(...bytes.subarray(0, LOOKED_AT));

const SAVE_AS_DXF = 'Save it as ASCII DXF (any version from R12 to 2018) or print it to PDF, and import that.';
const SAVE_AS_PICTURE = 'Save it as PNG or JPEG, and import that.';

const begins =
  (...marks: string[]) =>
  (start: string): boolean =>
    marks.some((mark) => start.startsWith(mark));
const fits =
  (shape: RegExp) =>
  (start: string): boolean =>
    shape.test(start);

/** Files that people do have floor plans in, but that are not read, by how they begin. */
const NOT_READ: readonly { readonly is: (start: string) => boolean; readonly what: string; readonly remedy: string }[] = [
  { is: fits(/^AC10\d\d/), what: 'This is a DWG drawing, which is not read.', remedy: SAVE_AS_DXF },
  { is: (start) => start.slice(0, 24).includes('Binary DXF\r\n\x1a\0'), what: 'This is a binary DXF file; only the ASCII form is read.', remedy: SAVE_AS_DXF },
  { is: fits(/^\(?(DWF|W2D)/), what: 'This is a DWF drawing, which is not read.', remedy: SAVE_AS_DXF },
  { is: fits(/^\s*ISO-10303-21/), what: 'This is a building model (STEP or IFC), which is not read.', remedy: 'Export the floor from it as DXF, PDF or SVG, and import that.' },
  { is: begins('II*\0', 'MM\0*'), what: 'This is a TIFF picture, which is not read.', remedy: SAVE_AS_PICTURE },
  { is: fits(/^[\s\S]{4}ftyp(heic|heix|hevc|mif1|msf1|heim|heis)/), what: 'This is an HEIC picture, as phones take them, which is not read.', remedy: SAVE_AS_PICTURE },
  { is: fits(/^[\s\S]{4}ftyp/), what: 'This is a film or an AVIF picture, which is not read.', remedy: SAVE_AS_PICTURE },
  { is: begins('GIF8'), what: 'This is a GIF picture, which is not read.', remedy: SAVE_AS_PICTURE },
  { is: fits(/^RIFF[\s\S]{4}WEBP/), what: 'This is a WebP picture, which is not read.', remedy: SAVE_AS_PICTURE },
  { is: (start) => start.startsWith('BM') && start.slice(6, 10) === '\0\0\0\0', what: 'This is a BMP picture, which is not read.', remedy: SAVE_AS_PICTURE },
  { is: begins('8BPS'), what: 'This is a layered picture (PSD), which is not read.', remedy: SAVE_AS_PICTURE },
  { is: begins('%!PS', '\xc5\xd0\xd3\xc6'), what: 'This is a PostScript file, which is not read.', remedy: 'Convert it to PDF, and import that.' },
  { is: begins('PK\x03\x04', 'PK\x05\x06'), what: 'This is a ZIP archive or an office document.', remedy: 'Unpack it and import the floor plan inside; a plan made with this program is opened, not imported.' },
  { is: begins('\x1f\x8b'), what: 'This file is compressed (gzip).', remedy: 'Unpack it, and import what is inside.' },
  { is: begins('7z\xbc\xaf', 'Rar!'), what: 'This is a packed archive.', remedy: 'Unpack it, and import the floor plan inside.' },
  { is: begins('\xd0\xcf\x11\xe0'), what: 'This is an office or building model document, which is not read.', remedy: 'Export the floor plan from it as DXF, PDF or SVG, and import that.' },
  { is: fits(/^\s*(<!doctype html|<html)/i), what: 'This is a web page, not a floor plan: a download may have gone wrong.', remedy: 'Download the floor plan again.' },
];

const isDxf = (start: string): boolean => /^(\xef\xbb\xbf)?\s*(999[ \t]*\r?\n[^\n]*\n\s*)*0[ \t]*(\r\n|\n|\r)\s*SECTION/.test(start);

function isSvg(bytes: Uint8Array, start: string): boolean {
  // Text in two bytes a letter has zeros in between.
  const isWide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const text = isWide ? start.replaceAll('\0', '') : start;
  return /^[^<]{0,4}\s*</.test(text) && /<([a-z]+:)?svg[\s>]/.test(text);
}

/**
 * What kind of floor plan a file is, by its content, never by its name.
 * @param name file name, for the message only
 * @throws {UnderlayProblem} when it is none that is read, with what to do instead
 */
export function sniffKind(bytes: Uint8Array, name: string): UnderlayKind {
  if (bytes.length === 0) throw new UnderlayProblem('The file is empty.', name, 'Choose another file, or copy it again from where it came.');
  const start = asText(bytes);
  if (start.startsWith('\x89PNG\r\n\x1a\n')) return 'png';
  if (start.startsWith('\xff\xd8\xff')) return 'jpeg';
  if (isDxf(start)) return 'dxf';
  for (const { is, what, remedy } of NOT_READ) if (is(start)) throw new UnderlayProblem(what, name, remedy);
  if (start.slice(0, 1024).includes('%PDF-')) return 'pdf';
  if (isSvg(bytes, start)) return 'svg';
  throw new UnderlayProblem(
    'This is not a floor plan that can be read.',
    name,
    'Import a DXF (ASCII), PDF, SVG, PNG or JPEG file.',
  );
}
