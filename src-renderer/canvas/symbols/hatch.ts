import { type Pen, type Px, pieces, trace, setLine } from '../pen.ts';

export interface HatchLook {
  readonly colour: string;
  readonly spacing_px: number;
  readonly width?: number;
  readonly dash?: readonly number[];
  /** Direction of the lines on the screen [rad], y down. */
  readonly slant_rad?: number;
}

/**
 * Fills closed rings with slanted lines. The lines are counted from `anchor`, so that they stay with the drawing
 * when the board moves.
 */
export function hatchRings(pen: Pen, rings: readonly (readonly Px[])[], anchor: Px, within: { width: number; height: number }, look: HatchLook): void {
  const all = rings.flat();
  const minX = Math.max(-20, Math.min(...all.map((p) => p.x)));
  const maxX = Math.min(within.width + 20, Math.max(...all.map((p) => p.x)));
  const minY = Math.max(-20, Math.min(...all.map((p) => p.y)));
  const maxY = Math.min(within.height + 20, Math.max(...all.map((p) => p.y)));
  if (!(minX < maxX && minY < maxY)) return;
  pen.save();
  pen.beginPath();
  for (const places of rings) trace(pen, places, true);
  pen.clip('evenodd');
  setLine(pen, { colour: look.colour, width: look.width ?? 1, dash: look.dash ?? [] });
  pieces(pen, hatchLines({ minX, minY, maxX, maxY }, anchor, look.spacing_px, look.slant_rad ?? -Math.PI / 4));
  pen.restore();
}

/** Parallel lines across a box, one of them through the anchor. */
export function* hatchLines(
  { minX, minY, maxX, maxY }: { minX: number; minY: number; maxX: number; maxY: number },
  anchor: Px,
  spacing_px: number,
  slant_rad: number,
): Generator<[Px, Px]> {
  const dx = Math.cos(slant_rad);
  const dy = Math.sin(slant_rad);
  const across = (x: number, y: number): number => (x - anchor.x) * -dy + (y - anchor.y) * dx;
  const offsets = [across(minX, minY), across(maxX, minY), across(maxX, maxY), across(minX, maxY)];
  const reach = Math.hypot(maxX - minX, maxY - minY);
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const midAlong = (middle.x - anchor.x) * dx + (middle.y - anchor.y) * dy;
  for (let k = Math.ceil(Math.min(...offsets) / spacing_px); k * spacing_px <= Math.max(...offsets); k += 1) {
    const x = anchor.x - dy * k * spacing_px + dx * midAlong;
    const y = anchor.y + dx * k * spacing_px + dy * midAlong;
    yield [
      { x: x - dx * reach, y: y - dy * reach },
      { x: x + dx * reach, y: y + dy * reach },
    ];
  }
}
