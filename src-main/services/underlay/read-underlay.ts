import { LARGEST_UNDERLAY_bytes, type ReadProgress, type UnderlayDrawing, UnderlayProblem } from '#shared/underlay/drawing';
import { readDxf } from '#shared/underlay/dxf/read-dxf';
import { readJpeg } from '#shared/underlay/picture/read-jpeg';
import { readPng } from '#shared/underlay/picture/read-png';
import { sniffKind } from '#shared/underlay/sniff-kind';
import { readSvg } from '#shared/underlay/svg/read-svg';
import { decodeText } from './decode-text.ts';

/**
 * Reads a floor plan of any kind that is read, told by its content.
 * @param page     page of a PDF, from 1; other kinds have one
 * @param progress called often; what it throws ends the reading
 * @throws {UnderlayProblem} with what is wrong, where, and what to do
 */
export async function readUnderlay(
  given: Uint8Array,
  { name, page }: { readonly name: string; readonly page: number },
  progress: ReadProgress,
): Promise<UnderlayDrawing> {
  // A Buffer's own `slice` shares its bytes: readers rely on that of a plain array, which copies.
  const bytes = new Uint8Array(given.buffer, given.byteOffset, given.byteLength);
  if (bytes.length > LARGEST_UNDERLAY_bytes) {
    throw new UnderlayProblem(`The file is larger than ${LARGEST_UNDERLAY_bytes / 1024 / 1024} MB.`, name, 'Export only the floor you need, and import that.');
  }
  const kind = sniffKind(bytes, name);
  switch (kind) {
    case 'dxf':
      return readDxf(bytes, decodeText, progress);
    case 'svg':
      return readSvg(bytes, decodeText, progress);
    case 'png':
      return readPng(bytes, progress);
    case 'jpeg':
      return readJpeg(bytes, progress);
    case 'pdf': {
      // The PDF library is large: it is loaded only when a PDF comes.
      const { readPdf } = await import('./pdf/read-pdf.ts');
      return readPdf(bytes, page, progress);
    }
  }
}
