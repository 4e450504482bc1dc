import { inflateSync } from 'node:zlib';

const SIGNATURE_bytes = 8;
/** Samples in a pixel by colour type of a PNG. */
const SAMPLES: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
/** More than the largest picture that the importer lets in can hold; beyond it the file is a trap. */
const MOST_BYTES = 2 ** 31 - 1;

/**
 * Whether a PNG's pixels can be unpacked. The printer's library unpacks some later, where a fault could not be caught.
 * Only what the file's head promises is unpacked, so that a small file cannot fill the memory.
 */
export function isSoundPng(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const packed: Uint8Array[] = [];
  let promised = 0;
  for (let at = SIGNATURE_bytes; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (type === 'IHDR' && length === 13) {
      const rowBits = view.getUint32(at + 8) * (SAMPLES[bytes[at + 17] ?? -1] ?? 0) * (bytes[at + 16] ?? 0);
      const rows = view.getUint32(at + 12);
      // An interlaced picture has up to seven times as many, shorter rows, each with a byte of its own.
      promised = rows * (Math.ceil(rowBits / 8) + 1) + 16 * rows + 64;
    } else if (type === 'IDAT') packed.push(body);
    else if (type === 'IEND') break;
    at += 12 + length;
  }
  if (promised === 0 || promised > MOST_BYTES || packed.length === 0) return false;
  try {
    inflateSync(Buffer.concat(packed), { maxOutputLength: promised });
    return true;
  } catch {
    return false;
  }
}
