import { type TextStyle, textWidth_px, writeAlong } from '../lettering.ts';
import { type Pen, type Px, along, gap_px, heading_rad, line, setLine } from '../pen.ts';

export interface DimensionLook {
  readonly colour: string;
  readonly paper: string;
  /** Distance of the line from the measured places, left of a → b positive [px]. */
  readonly offset_px: number;
  readonly size?: number;
}

/** A dimension: two extension lines, the line between with slanted ends, and its figure. */
export function drawDimension(pen: Pen, a: Px, b: Px, text: string, { colour, paper, offset_px, size = 12 }: DimensionLook): void {
  const length = gap_px(a, b);
  if (length < 2) return;
  const heading = heading_rad(a, b);
  const left = heading + Math.PI / 2;
  const start = along(a, left, offset_px);
  const end = along(b, left, offset_px);
  const way = Math.sign(offset_px);
  setLine(pen, { colour, width: 1 });
  if (Math.abs(offset_px) > 6) {
    line(pen, along(a, left, 3 * way), along(start, left, 5 * way));
    line(pen, along(b, left, 3 * way), along(end, left, 5 * way));
  }
  line(pen, along(start, heading, -4), along(end, heading, 4));
  setLine(pen, { colour, width: 2 });
  for (const tip of [start, end]) line(pen, along(tip, heading + Math.PI / 4, 5), along(tip, heading + Math.PI / 4, -5));

  const style: TextStyle = { colour, halo: paper, size, align: 'center' };
  const width = textWidth_px(pen, text, style);
  const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
  const above = headingUp_rad(heading);
  if (width + 10 <= length) writeAlong(pen, text, along(middle, above, size * 0.75), heading, style);
  else writeAlong(pen, text, along(along(end, heading, width / 2 + 9), above, 0), heading, style);
}

/** The direction square to a heading that points up the screen, or left where the heading is upright [rad]. */
function headingUp_rad(heading: number): number {
  const up = heading + Math.PI / 2;
  const rise = Math.sin(up);
  if (rise > 1e-6) return up;
  if (rise < -1e-6) return up + Math.PI;
  return Math.PI;
}
