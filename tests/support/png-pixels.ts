import { inflateSync } from 'node:zlib';

/** The pixel bytes of a PNG whose rows are plain or differences to the row above, with its palette. */
export function unpackPng(bytes: Uint8Array | undefined): { pixels: Uint8Array; palette: number[]; clear: number[] } {
  if (!bytes) throw new Error('no picture');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found = new Map<string, Uint8Array>();
  for (let at = 8; at < bytes.length; at += 12 + view.getUint32(at)) {
    found.set(String.fromCharCode(...bytes.subarray(at + 4, at + 8)), bytes.subarray(at + 8, at + 8 + view.getUint32(at)));
  }
  const head = found.get('IHDR');
  const body = found.get('IDAT');
  if (!head || !body) throw new Error('no pixels');
  const width = new DataView(head.buffer, head.byteOffset).getUint32(0);
  const channels = { 0: 1, 2: 3, 3: 1, 6: 4 }[head[9] ?? 0] ?? 1;
  const rowBytes = Math.ceil((width * channels * (head[8] ?? 8)) / 8);
  const rows = inflateSync(body);
  const pixels = new Uint8Array((rows.length / (rowBytes + 1)) * rowBytes);
  for (let row = 0; row * (rowBytes + 1) < rows.length; row += 1) {
    const isDifference = rows[row * (rowBytes + 1)] === 2;
    for (let i = 0; i < rowBytes; i += 1) {
      const above = isDifference && row > 0 ? (pixels[(row - 1) * rowBytes + i] ?? 0) : 0;
      pixels[row * rowBytes + i] = (rows[row * (rowBytes + 1) + 1 + i] ?? 0) + above;
    }
  }
  return { pixels, palette: [...(found.get('PLTE') ?? [])], clear: [...(found.get('tRNS') ?? [])] };
}
