import { type Pen, type Px, trace } from '../pen.ts';

const STEP_px = 8;
/** Order in which the places of a 4 × 4 block get their dot (ordered dither). */
const THRESHOLDS: readonly number[] = [0, 8, 2, 10, 12, 4, 14, 6, 3, 11, 1, 9, 15, 7, 13, 5];

/**
 * Places of dots over a box, denser toward the worst place. They are counted from `anchor`, so that they stay with
 * the drawing.
 * @param reach_px distance from the worst place at which dots are sparsest
 */
export function* dotPlaces(
  box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number },
  anchor: Px,
  worst: Px,
  reach_px: number,
): Generator<Px> {
  const first = (from: number, origin: number): number => Math.ceil((from - origin) / STEP_px);
  for (let i = first(box.minX, anchor.x); anchor.x + i * STEP_px <= box.maxX; i += 1) {
    for (let j = first(box.minY, anchor.y); anchor.y + j * STEP_px <= box.maxY; j += 1) {
      const x = anchor.x + i * STEP_px;
      const y = anchor.y + j * STEP_px;
      const near = 1 - Math.min(1, Math.hypot(x - worst.x, y - worst.y) / Math.max(1, reach_px));
      const threshold = THRESHOLDS[(((i % 4) + 4) % 4) * 4 + (((j % 4) + 4) % 4)] ?? 0;
      if (threshold < 3 + near * 13) yield { x, y };
    }
  }
}

/** Floor that no nozzle covers: dots, denser toward the worst place. */
export function drawUncovered(
  pen: Pen,
  rings: readonly (readonly Px[])[],
  { anchor, worst, colour, width, height }: { anchor: Px; worst: Px; colour: string; width: number; height: number },
): void {
  const all = rings.flat();
  const box = {
    minX: Math.max(0, Math.min(...all.map((p) => p.x))),
    minY: Math.max(0, Math.min(...all.map((p) => p.y))),
    maxX: Math.min(width, Math.max(...all.map((p) => p.x))),
    maxY: Math.min(height, Math.max(...all.map((p) => p.y))),
  };
  if (!(box.minX < box.maxX && box.minY < box.maxY)) return;
  const reach = Math.max(...all.map((p) => Math.hypot(p.x - worst.x, p.y - worst.y)));
  pen.save();
  pen.beginPath();
  for (const places of rings) trace(pen, places, true);
  pen.clip('evenodd');
  pen.fillStyle = colour;
  for (const p of dotPlaces(box, anchor, worst, reach)) pen.fillRect(p.x - 1.1, p.y - 1.1, 2.2, 2.2);
  pen.restore();
}
