import { type ReadProgress, type UnderlayImage, UnderlayProblem } from '../drawing.ts';
import { type Matrix, multiply } from '../matrix.ts';
import { readJpeg } from '../picture/read-jpeg.ts';
import { readPng } from '../picture/read-png.ts';
import { base64Bytes } from './base64.ts';
import { type ViewBox, fitViewBox } from './view-box.ts';

/**
 * A picture that lies in the file itself as a data address.
 * @param matrix carries user units to the drawing
 * @returns undefined for an address elsewhere, another kind of picture, or one that cannot be read
 */
export function dataPicture(address: string, into: ViewBox, aspect: string | undefined, matrix: Matrix, progress: ReadProgress): UnderlayImage | undefined {
  const [, kind, letters] = /^data:image\/(png|jpe?g)\s*;base64,([\s\S]*)$/i.exec(address.trim()) ?? [];
  const bytes = letters === undefined ? undefined : base64Bytes(letters);
  if (!kind || !bytes) return undefined;
  const drawing = readQuietly(() => (kind.toLowerCase() === 'png' ? readPng(bytes, progress) : readJpeg(bytes, progress)));
  const image = drawing?.images[0];
  if (!image) return undefined;
  // As read, the picture lies upright in pixels, y up; in user units it lies in its box, y down.
  const { maxX, maxY } = drawing.extents;
  const placed = multiply(fitViewBox({ x: 0, y: 0, width: maxX, height: maxY }, into, aspect), [1, 0, 0, -1, 0, maxY]);
  return { ...image, matrix: multiply(matrix, multiply(placed, image.matrix)) };
}

function readQuietly<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof UnderlayProblem) return undefined;
    throw error;
  }
}
