import type { Matrix } from '../matrix.ts';

/** Orientation of a photograph: how its stored rows are turned for viewing, 1 … 8, and where the file says so. */
export interface Orientation {
  readonly value: number;
  /** Offset of the 16-bit value inside the block. */
  readonly at: number;
  readonly isLittleEndian: boolean;
}

const ORIENTATION_TAG = 0x0112;
const SHORT = 3;
const ENTRY_bytes = 12;

/**
 * Finds the orientation in an Exif block (TIFF structure, Exif 2.3 § 4.6).
 * @param block from the byte order mark "II" or "MM" on
 * @returns undefined when there is none, or the block makes no sense
 */
export function findOrientation(block: Uint8Array): Orientation | undefined {
  const isLittleEndian = block[0] === 0x49 && block[1] === 0x49;
  if (!isLittleEndian && !(block[0] === 0x4d && block[1] === 0x4d)) return undefined;
  const view = new DataView(block.buffer, block.byteOffset, block.byteLength);
  if (block.length < 8 || view.getUint16(2, isLittleEndian) !== 42) return undefined;
  const directory = view.getUint32(4, isLittleEndian);
  if (directory + 2 > block.length) return undefined;
  const entries = view.getUint16(directory, isLittleEndian);
  for (let i = 0; i < entries; i += 1) {
    const at = directory + 2 + i * ENTRY_bytes;
    if (at + ENTRY_bytes > block.length) return undefined;
    if (view.getUint16(at, isLittleEndian) !== ORIENTATION_TAG || view.getUint16(at + 2, isLittleEndian) !== SHORT) continue;
    const value = view.getUint16(at + 8, isLittleEndian);
    return value >= 1 && value <= 8 ? { value, at: at + 8, isLittleEndian } : undefined;
  }
  return undefined;
}

/** Size as seen, in pixels, of a stored picture. */
export const seenSize = (width: number, height: number, orientation: number): { width: number; height: number } =>
  orientation >= 5 ? { width: height, height: width } : { width, height };

/**
 * Carries the stored picture's unit square (y up) to pixels as seen (y up).
 * @param width  stored pixels across
 * @param height stored pixels down
 */
export function orientationMatrix(width: number, height: number, orientation: number): Matrix {
  const seen = seenSize(width, height, orientation);
  const at = (u: number, v: number): [number, number] => {
    const x = u * width;
    const y = (1 - v) * height;
    // Exif 2.3, tag 274: where the stored first row and first column are as seen.
    const [right, down] = {
      1: [x, y],
      2: [width - x, y],
      3: [width - x, height - y],
      4: [x, height - y],
      5: [y, x],
      6: [height - y, x],
      7: [height - y, width - x],
      8: [y, width - x],
    }[orientation] ?? [x, y];
    return [right ?? 0, seen.height - (down ?? 0)];
  };
  const [e, f] = at(0, 0);
  const [ax, ay] = at(1, 0);
  const [cx, cy] = at(0, 1);
  return [ax - e, ay - f, cx - e, cy - f, e, f];
}
