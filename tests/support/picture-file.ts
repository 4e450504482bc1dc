import { deflateSync } from 'node:zlib';
import { crc32 } from '#shared/underlay/picture/read-png';

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));
const u16 = (value: number): number[] => [(value >> 8) & 255, value & 255];
const u32 = (value: number): number[] => [(value >>> 24) & 255, (value >> 16) & 255, (value >> 8) & 255, value & 255];

/** One chunk of a PNG, its check sum included. */
export const pngChunk = (type: string, body: readonly number[] | Uint8Array): number[] => {
  const inner = [...ascii(type), ...body];
  return [...u32(body.length), ...inner, ...u32(crc32(Uint8Array.from(inner)))];
};

/** A grey PNG; `more` stands between head and pixels. */
export function pngFile(width: number, height: number, more: readonly number[] = [], pixels?: Uint8Array): Uint8Array {
  const head = [...u32(width), ...u32(height), 8, 0, 0, 0, 0];
  const rows = pixels ?? new Uint8Array((width + 1) * height);
  return Uint8Array.from([0x89, ...ascii('PNG\r\n'), 0x1a, 0x0a, ...pngChunk('IHDR', head), ...more, ...pngChunk('IDAT', deflateSync(rows)), ...pngChunk('IEND', [])]);
}

/** An Exif block (little endian) that holds an orientation. */
export const exifBlock = (orientation: number): number[] => [
  ...ascii('II'), 42, 0, 8, 0, 0, 0, 1, 0, 0x12, 0x01, 3, 0, 1, 0, 0, 0, orientation, 0, 0, 0, 0, 0, 0, 0,
];

const segment = (marker: number, body: readonly number[]): number[] => [0xff, marker, ...u16(body.length + 2), ...body];

/** The markers of a JPEG with a few bytes of pixels: enough for a reader that does not unpack them. */
export function jpegFile(width: number, height: number, options: { readonly orientation?: number; readonly perInch?: number; readonly frame?: number } = {}): Uint8Array {
  const { orientation, perInch, frame = 0xc0 } = options;
  return Uint8Array.from([
    0xff, 0xd8,
    ...(perInch === undefined ? [] : segment(0xe0, [...ascii('JFIF'), 0, 1, 2, 1, ...u16(perInch), ...u16(perInch), 0, 0])),
    ...(orientation === undefined ? [] : segment(0xe1, [...ascii('Exif'), 0, 0, ...exifBlock(orientation)])),
    ...segment(frame, [8, ...u16(height), ...u16(width), 1, 1, 0x11, 0]),
    ...segment(0xda, [1, 1, 0, 0, 63, 0]),
    0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56,
    0xff, 0xd9,
  ]);
}
