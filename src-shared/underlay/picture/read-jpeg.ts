import { type ReadProgress, type UnderlayDrawing, UnderlayProblem } from '../drawing.ts';
import { findOrientation } from './exif-orientation.ts';
import { checkPictureSize, cutPicture, damagedPicture, pictureDrawing } from './picture-drawing.ts';

const APP0 = 0xe0;
const APP1 = 0xe1;
const START_OF_SCAN = 0xda;
const END_OF_IMAGE = 0xd9;
/** Frame heads of the ways of packing that every viewer unpacks: baseline, extended, progressive. */
const COMMON_FRAMES = [0xc0, 0xc1, 0xc2];
/** Other codes in this range that are not frame heads: tables and the arithmetic condition. */
const NOT_FRAMES = [0xc4, 0xc8, 0xcc];

const standsAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);

/** Index of the marker that ends packed pixels: a stuffed FF 00 and restart marks belong to them. */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at + 1 < bytes.length) {
    at = bytes.indexOf(0xff, at);
    if (at < 0 || at + 1 >= bytes.length) break;
    const next = bytes[at + 1] ?? 0;
    if (next !== 0 && next !== 0xff && !standsAlone(next)) return at;
    at += next === 0xff ? 1 : 2;
  }
  throw cutPicture();
}

const PER_CM = 2;

/**
 * Reads a JPEG floor plan: walks its markers to the end mark, takes size, paper resolution and orientation,
 * and keeps the file as the picture, with the orientation taken over by the drawing's matrix.
 * @throws {UnderlayProblem} the file is cut, damaged, packed in an uncommon way, or too large
 */
export function readJpeg(bytes: Uint8Array, progress: ReadProgress): UnderlayDrawing {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let width = 0;
  let height = 0;
  let perInch: number | undefined;
  let orientation = 1;
  let hasScan = false;
  const kept = bytes.slice();
  let at = 2;
  for (;;) {
    progress(at / bytes.length, 'Checking the picture');
    if (at + 2 > bytes.length) throw cutPicture();
    const marker = bytes[at + 1] ?? 0;
    if (bytes[at] !== 0xff) throw damagedPicture(`byte ${at}`);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === END_OF_IMAGE) break;
    if (standsAlone(marker)) {
      at += 2;
      continue;
    }
    if (at + 4 > bytes.length) throw cutPicture();
    const body = at + 4;
    const end = at + 2 + view.getUint16(at + 2);
    if (end > bytes.length) throw cutPicture();
    if (end < body) throw damagedPicture(`byte ${at}`);
    const isFrame = marker >= 0xc0 && marker <= 0xcf && !NOT_FRAMES.includes(marker);
    if (isFrame && !COMMON_FRAMES.includes(marker)) {
      throw new UnderlayProblem('The picture is packed in an uncommon way (lossless or arithmetic JPEG).', '', 'Save it as PNG, and import that.');
    }
    if (isFrame) {
      if (end < body + 6) throw damagedPicture(`byte ${at}`);
      height = view.getUint16(body + 1);
      width = view.getUint16(body + 3);
      checkPictureSize(width, height);
    } else if (marker === APP0 && ascii(bytes, body, 5) === 'JFIF\0' && end >= body + 12) {
      const unit = bytes[body + 7];
      const density = view.getUint16(body + 8);
      if ((unit === 1 || unit === PER_CM) && density > 1) perInch = unit === PER_CM ? density * 2.54 : density;
    } else if (marker === APP1 && ascii(bytes, body, 6) === 'Exif\0\0') {
      const found = findOrientation(bytes.subarray(body + 6, end));
      if (found) {
        orientation = found.value;
        new DataView(kept.buffer).setUint16(body + 6 + found.at, 1, found.isLittleEndian);
      }
    }
    at = end;
    if (marker === START_OF_SCAN) {
      hasScan = true;
      at = endOfScan(bytes, end);
    }
  }
  if (!hasScan || width === 0) throw damagedPicture('it has no pixels');
  return pictureDrawing('jpeg', { mime: 'image/jpeg', width, height, orientation, perInch }, kept, progress);
}

const ascii = (bytes: Uint8Array, at: number, length: number): string => String.fromCharCode(...bytes.subarray(at, at + length));
