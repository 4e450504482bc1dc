import type { ReadProgress, UnderlayDrawing } from '../drawing.ts';
import { findOrientation } from './exif-orientation.ts';
import { checkPictureSize, checkUnpackedSize, cutPicture, damagedPicture, pictureDrawing } from './picture-drawing.ts';

const SIGNATURE_bytes = 8;
const INCH_m = 0.0254;

/** Table of the CRC-32 that PNG chunks carry (PNG specification, annex D). */
const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let crc = byte;
  for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? 0xedb88320 ^ (crc >>> 1) : crc >>> 1;
  return crc >>> 0;
});

/** CRC-32 of bytes as PNG computes it. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (let i = 0; i < bytes.length; i += 1) crc = (CRC_TABLE[(crc ^ (bytes[i] ?? 0)) & 255] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

/** Samples in a pixel by colour type. */
const SAMPLES: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
/** Colour types whose pixels may be see-through by themselves. */
const SEE_THROUGH = [4, 6];

/** Bit depths that each colour type allows. */
const DEPTHS: Readonly<Record<number, readonly number[]>> = { 0: [1, 2, 4, 8, 16], 2: [8, 16], 3: [1, 2, 4, 8], 4: [8, 16], 6: [8, 16] };

/**
 * Reads a PNG floor plan: checks every chunk, takes size, paper resolution and orientation from the head,
 * and keeps the file as the picture.
 * @throws {UnderlayProblem} the file is cut, damaged or too large
 */
export function readPng(bytes: Uint8Array, progress: ReadProgress): UnderlayDrawing {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let width = 0;
  let height = 0;
  let orientation = 1;
  let perInch: number | undefined;
  let hasPixels = false;
  let isPlain = true;
  let bitsPerPixel = 0;
  /** Whole chunks but the orientation, which the drawing's matrix takes over. */
  const kept: Uint8Array[] = [bytes.subarray(0, SIGNATURE_bytes)];
  for (let at = SIGNATURE_bytes; ; ) {
    progress(at / bytes.length, 'Checking the picture');
    if (at + 12 > bytes.length) throw cutPicture();
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > bytes.length) throw cutPicture();
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (crc32(bytes.subarray(at + 4, end - 4)) !== view.getUint32(end - 4)) throw damagedPicture(`part ${type.replace(/[^A-Za-z]/g, '?')} at byte ${at}`);
    const body = at + 8;
    if (width === 0 && (type !== 'IHDR' || length !== 13)) throw damagedPicture('its head is missing');
    if (type === 'IHDR') {
      width = view.getUint32(body);
      height = view.getUint32(body + 4);
      checkPictureSize(width, height);
      const [depth = 0, colours = -1] = [bytes[body + 8], bytes[body + 9]];
      if (!DEPTHS[colours]?.includes(depth)) throw damagedPicture('its colours');
      bitsPerPixel = depth * (SAMPLES[colours] ?? 0);
      isPlain = !SEE_THROUGH.includes(colours) && bytes[body + 12] === 0;
    } else if (type === 'IDAT') hasPixels = true;
    else if (type === 'tRNS') isPlain = false;
    else if (type === 'pHYs' && length === 9 && bytes[body + 8] === 1) perInch = view.getUint32(body) * INCH_m;
    else if (type === 'eXIf') orientation = findOrientation(bytes.subarray(body, body + length))?.value ?? 1;
    if (type !== 'eXIf') kept.push(bytes.subarray(at, end));
    if (type === 'IEND') break;
    at = end;
  }
  if (!hasPixels) throw damagedPicture('it has no pixels');
  checkUnpackedSize((width * height * bitsPerPixel) / 8, isPlain);
  return pictureDrawing('png', { mime: 'image/png', width, height, orientation, perInch }, joined(kept), progress);
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
