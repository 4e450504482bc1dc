import { crc32, deflateSync } from 'node:zlib';
import type { FloorDrawing } from './floor-drawing.ts';

/** Free border around the floor [px]. */
export const PNG_MARGIN_px = 96;

const chunk = (type: string, data: Buffer): Buffer => {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
};

/**
 * Paints a floor drawing as an 8-bit grey PNG, three pixels a line, words left out.
 * @param pixelsPerMetre pixels on the picture for a metre on the floor, > 0
 */
export function drawPng(drawing: FloorDrawing, pixelsPerMetre: number): Uint8Array {
  const width = Math.ceil(drawing.width_m * pixelsPerMetre) + 2 * PNG_MARGIN_px;
  const height = Math.ceil(drawing.depth_m * pixelsPerMetre) + 2 * PNG_MARGIN_px;
  const grey = Buffer.alloc(width * height, 255);
  const dot = (x: number, y: number): void => {
    for (let dy = -1; dy <= 1; dy += 1) {
      for (let dx = -1; dx <= 1; dx += 1) {
        const column = Math.round(x) + dx;
        const row = height - 1 - Math.round(y) + dy;
        if (column >= 0 && row >= 0 && column < width && row < height) grey[row * width + column] = 70;
      }
    }
  };
  for (const { places, closed } of Object.values(drawing.layers).flat()) {
    const ring = closed && places[0] ? [...places, places[0]] : places;
    for (let i = 1; i < ring.length; i += 1) {
      const [x0, y0] = ring[i - 1] ?? [0, 0];
      const [x1, y1] = ring[i] ?? [0, 0];
      const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) * pixelsPerMetre));
      for (let step = 0; step <= steps; step += 1) {
        const t = step / steps;
        dot(PNG_MARGIN_px + (x0 + (x1 - x0) * t) * pixelsPerMetre, PNG_MARGIN_px + (y0 + (y1 - y0) * t) * pixelsPerMetre);
      }
    }
  }
  const rows = Buffer.alloc((width + 1) * height);
  for (let row = 0; row < height; row += 1) grey.copy(rows, row * (width + 1) + 1, row * width, (row + 1) * width);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
