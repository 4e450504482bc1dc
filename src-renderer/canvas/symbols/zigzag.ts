import { zigzagRows } from '#shared/sheets/zigzag';
import { type Pen, type Px, polyline, setLine, trace } from '../pen.ts';

/** Height of a tooth and distance of the rows [px]. */
const TOOTH_px = 5;
const ROW_px = 13;

/** Fills a ring with zigzag rows, the sign of a part that carries voltage. */
export function zigzagRing(pen: Pen, ring: readonly Px[], anchor: Px, within: { width: number; height: number }, colour: string): void {
  const xs = ring.map((p) => p.x);
  const ys = ring.map((p) => p.y);
  const box = { minX: Math.max(-20, Math.min(...xs)), maxX: Math.min(within.width + 20, Math.max(...xs)), minY: Math.max(-20, Math.min(...ys)), maxY: Math.min(within.height + 20, Math.max(...ys)) };
  if (!(box.minX < box.maxX && box.minY < box.maxY)) return;
  pen.save();
  pen.beginPath();
  trace(pen, ring, true);
  pen.clip();
  setLine(pen, { colour, width: 1.25 });
  for (const row of zigzagRows(box, anchor, TOOTH_px, ROW_px)) polyline(pen, row);
  pen.restore();
}
