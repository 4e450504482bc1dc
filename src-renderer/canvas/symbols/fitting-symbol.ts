import type { FittingKind } from '#shared/derived/derived';
import type { FittingSign } from '#shared/isometric/fitting-sign';
import { fittingShape } from '#shared/sheets/fitting-shape';
import { type Pen, type Px, along, disc, line, polyline, trace, setLine } from '../pen.ts';

export interface FittingLook {
  readonly colour: string;
  readonly paper: string;
  /** Plan directions of its legs that can be seen from above [rad], the one toward the source first. */
  readonly legs_rad: readonly number[];
  /** Width of the pipe's line [px]. */
  readonly pipe_px: number;
  /** Its sign; ticks and wedge where it is left out. */
  readonly sign?: FittingSign;
}

/** Size of a sheet's millimetre here [px]. */
const PX_PER_MM = 3;
/** Signs that stand out from the pipe grow with it: the pipe's line on a sheet is so wide [mm]. */
const LINE_mm = 0.7;

/** Union, coupling, street elbow, and what closes an end: shapes of their own, as they are printed. */
function drawOwnSign(pen: Pen, at: Px, sign: FittingSign, { colour, paper, legs_rad, pipe_px }: FittingLook): void {
  const scale = Math.max(PX_PER_MM, (pipe_px / LINE_mm) * 0.55);
  for (const { places, isHeavy, fill } of fittingShape(sign, legs_rad)) {
    const ring = Array.from({ length: places.length / 2 }, (_, i): Px => ({ x: at.x + (places[2 * i] ?? 0) * scale, y: at.y - (places[2 * i + 1] ?? 0) * scale }));
    setLine(pen, { colour, width: isHeavy ? 3 : 1.75, join: 'round' });
    if (fill) {
      pen.beginPath();
      trace(pen, ring, true);
      pen.fillStyle = fill === 'paper' ? paper : colour;
      pen.fill();
      pen.stroke();
    } else polyline(pen, ring);
  }
}

/** A fitting that follows from the pipes' geometry: a short bar across every leg, where the pipe screws in. */
export function drawFitting(pen: Pen, at: Px, kind: FittingKind, look: FittingLook): void {
  const { colour, paper, legs_rad, pipe_px, sign = 'fitting' } = look;
  if (sign !== 'fitting' && sign !== 'reducer' && sign !== 'cap') {
    drawOwnSign(pen, at, sign, look);
    return;
  }
  const half = pipe_px / 2 + 3;
  const away = kind === 'coupling' || kind === 'cap' ? 0 : half + 2;
  const first = legs_rad[0];
  if (kind === 'reducer') {
    if (first === undefined) return;
    const side = first + Math.PI / 2;
    const wide = along(at, first, 6);
    const slim = along(at, first, -6);
    pen.beginPath();
    trace(pen, [along(wide, side, half), along(wide, side, -half), along(slim, side, -half / 2), along(slim, side, half / 2)], true);
    pen.fillStyle = paper;
    pen.fill();
    setLine(pen, { colour, width: 1.5, join: 'round' });
    pen.stroke();
    return;
  }
  setLine(pen, { colour, width: kind === 'cap' ? 3 : 2 });
  for (const leg_rad of legs_rad) {
    const foot = along(at, leg_rad, away);
    line(pen, along(foot, leg_rad + Math.PI / 2, half), along(foot, leg_rad + Math.PI / 2, -half));
  }
  if (kind === 'tee' || kind === 'cross') disc(pen, at, pipe_px / 2 + 1.5, colour);
  if (kind === 'odd-bend') {
    setLine(pen, { colour, width: 1.5 });
    pen.beginPath();
    trace(pen, [0, 1, 2, 3].map((turn) => along(at, (turn * Math.PI) / 2, half + 3)), true);
    pen.stroke();
  }
}
