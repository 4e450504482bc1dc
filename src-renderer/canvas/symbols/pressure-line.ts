import { type Pen, type Px, polyline, ring, setLine } from '../pen.ts';

/** A double line is read as two from this width on [px]. */
export const HIGH_PRESSURE_LEAST_px = 5.5;

/** High-pressure side: a heavy double line. */
export function drawHighPressureLine(pen: Pen, places: readonly Px[], warm: string, paper: string, width_px = 6): void {
  setLine(pen, { colour: warm, width: width_px, join: 'miter' });
  polyline(pen, places);
  setLine(pen, { colour: paper, width: Math.max(1.5, width_px - 4), join: 'miter' });
  polyline(pen, places);
}

/** High-pressure side that stands upright, seen from above: a double ring. */
export function drawHighPressureUpright(pen: Pen, at: Px, warm: string, paper: string, radius_px = 9): void {
  setLine(pen, { colour: warm, width: 1.75 });
  ring(pen, at, radius_px, paper);
  ring(pen, at, radius_px - 3);
}

/** Low-pressure side: a single line. */
export function drawLowPressureLine(pen: Pen, places: readonly Px[], cool: string, width_px: number): void {
  setLine(pen, { colour: cool, width: width_px, cap: 'round', join: 'round' });
  polyline(pen, places);
}
