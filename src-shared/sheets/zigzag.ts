import type { Box } from '../geometry/outline.ts';

/**
 * Zigzag rows across a box, counted from an anchor so that they stay with the drawing.
 * @param tooth  height of a tooth, which is as long as it is high
 * @param pitch  distance between rows
 * A box lower than a row still holds one, at its middle.
 */
export function* zigzagRows(box: Box, anchor: { readonly x: number; readonly y: number }, tooth: number, pitch: number): Generator<{ x: number; y: number }[]> {
  const { minX, maxX, minY, maxY } = box;
  const first = Math.ceil((minY + tooth / 2 - anchor.y) / pitch);
  const last = Math.floor((maxY - tooth / 2 - anchor.y) / pitch);
  const rows = last >= first ? Array.from({ length: last - first + 1 }, (_, i) => anchor.y + (first + i) * pitch) : [(minY + maxY) / 2];
  const start = Math.floor((minX - anchor.x) / tooth);
  const end = Math.ceil((maxX - anchor.x) / tooth);
  for (const y of rows) yield Array.from({ length: end - start + 1 }, (_, i) => ({ x: anchor.x + (start + i) * tooth, y: y + ((start + i) % 2 === 0 ? -tooth / 2 : tooth / 2) }));
}
