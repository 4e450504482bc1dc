import { deflateSync } from 'node:zlib';
import { ImageKind } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { crc32 } from '#shared/underlay/picture/read-png';

/** A picture as the PDF library unpacks it. */
export interface UnpackedPicture {
  readonly width: number;
  readonly height: number;
  /** One of the library's `ImageKind`. */
  readonly kind: number;
  readonly data: Uint8Array | Uint8ClampedArray;
}

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
const GREY = 0;
const COLOUR = 2;
const PALETTE = 3;
const COLOUR_AND_ALPHA = 6;

function chunk(type: string, body: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(body.length + 12);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, body.length);
  for (let i = 0; i < 4; i += 1) bytes[4 + i] = type.charCodeAt(i);
  bytes.set(body, 8);
  view.setUint32(body.length + 8, crc32(bytes.subarray(4, body.length + 8)));
  return bytes;
}

/** Packs rows of pixels as a PNG. */
function png(width: number, height: number, depth: number, colourType: number, rowBytes: number, data: ArrayLike<number>, more: readonly Uint8Array[] = []): Uint8Array {
  const rows = new Uint8Array((rowBytes + 1) * height);
  // Each row as the difference to the one above it (filter 2): plans have long upright edges.
  for (let row = 0; row < height; row += 1) {
    const to = row * (rowBytes + 1);
    const from = row * rowBytes;
    rows[to] = 2;
    for (let i = 0; i < rowBytes; i += 1) rows[to + 1 + i] = (data[from + i] ?? 0) - (row > 0 ? (data[from - rowBytes + i] ?? 0) : 0);
  }
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  head[8] = depth;
  head[9] = colourType;
  return Buffer.concat([SIGNATURE, chunk('IHDR', head), ...more, chunk('IDAT', deflateSync(rows, { level: 3 })), chunk('IEND', new Uint8Array(0))]);
}

/** A picture as PNG, or undefined when its kind is unknown or data are missing. */
export function pictureAsPng({ width, height, kind, data }: UnpackedPicture): Uint8Array | undefined {
  const packed = (width + 7) >> 3;
  if (kind === ImageKind.GRAYSCALE_1BPP && data.length >= packed * height) return png(width, height, 1, GREY, packed, data);
  if (kind === ImageKind.RGB_24BPP && data.length >= width * height * 3) return png(width, height, 8, COLOUR, width * 3, data);
  if (kind === ImageKind.RGBA_32BPP && data.length >= width * height * 4) return png(width, height, 8, COLOUR_AND_ALPHA, width * 4, data);
  return undefined;
}

/** A stencil as PNG: one bit a pixel, 0 is ink of the given colour (`#rrggbb`), 1 is clear. */
export function stencilAsPng(width: number, height: number, data: Uint8Array, colour: string): Uint8Array | undefined {
  const packed = (width + 7) >> 3;
  if (data.length < packed * height) return undefined;
  const ink = Number.parseInt(colour.slice(1), 16);
  const palette = Uint8Array.of((ink >> 16) & 255, (ink >> 8) & 255, ink & 255, 255, 255, 255);
  return png(width, height, 1, PALETTE, packed, data, [chunk('PLTE', palette), chunk('tRNS', Uint8Array.of(255, 0))]);
}
