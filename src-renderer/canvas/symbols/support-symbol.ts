import type { Support } from '#shared/model/plan';
import { SUPPORT_NEAR_mm, type SupportLie, supportShape } from '#shared/sheets/support-shape';
import { type Pen, type Px, line, setLine } from '../pen.ts';

export interface SupportLook {
  readonly kind: Support['kind'];
  readonly lie: SupportLie;
  readonly colour: string;
  /** Width of the pipe's line [px]: the strokes stand out beyond it. */
  readonly pipe_px: number;
}

/** Size of a sheet's millimetre here [px], and how far strokes stand out beyond a pipe. */
const PX_PER_MM = 3.4;
const BEYOND_PIPE_px = 3;

/** A pipe support as it is printed: two strokes square to the pipe, broken where it only carries, closed by the bar of what holds it. */
export function drawSupport(pen: Pen, at: Px, { kind, lie, colour, pipe_px }: SupportLook): void {
  const { strokes, bar, isBroken } = supportShape(kind, lie);
  const scale = 'pipe_rad' in lie ? Math.max(PX_PER_MM, (pipe_px / 2 + BEYOND_PIPE_px) / SUPPORT_NEAR_mm) : PX_PER_MM;
  const drawPiece = ([ax = 0, ay = 0, bx = 0, by = 0]: readonly number[]): void => line(pen, { x: at.x + ax * scale, y: at.y - ay * scale }, { x: at.x + bx * scale, y: at.y - by * scale });
  setLine(pen, { colour, width: 1.5, dash: isBroken ? [2.5, 2] : [] });
  strokes.forEach(drawPiece);
  setLine(pen, { colour, width: 2.5 });
  if (bar) drawPiece(bar);
}

/** The same while it is small: one stroke across the pipe. */
export function drawSupportTick(pen: Pen, at: Px, lie: SupportLie, colour: string): void {
  const across_rad = 'pipe_rad' in lie ? lie.pipe_rad + Math.PI / 2 : lie.beside_rad;
  const reach = { x: Math.cos(across_rad) * 4, y: -Math.sin(across_rad) * 4 };
  setLine(pen, { colour, width: 1.5 });
  line(pen, { x: at.x - reach.x, y: at.y - reach.y }, { x: at.x + reach.x, y: at.y + reach.y });
}
