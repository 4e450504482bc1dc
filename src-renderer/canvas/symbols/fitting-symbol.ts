import type { FittingKind } from '#shared/derived/derived';
import { type Pen, type Px, along, disc, line, trace, setLine } from '../pen.ts';

export interface FittingLook {
  readonly colour: string;
  readonly paper: string;
  /** Plan directions of its legs that can be seen from above [rad], the one toward the source first. */
  readonly legs_rad: readonly number[];
  /** Width of the pipe's line [px]. */
  readonly pipe_px: number;
}

/** A fitting that follows from the pipes' geometry: a short bar across every leg, where the pipe screws in. */
export function drawFitting(pen: Pen, at: Px, kind: FittingKind, { colour, paper, legs_rad, pipe_px }: FittingLook): void {
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
