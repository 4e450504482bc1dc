import { write } from '../lettering.ts';
import { type Pen, type Px, line, setLine } from '../pen.ts';

/** Where the text of a note begins, from the place it is about [px]. */
const NOTE_SHIFT: Px = { x: 14, y: -14 };
/** Widest line of a note [px]. */
export const NOTE_WIDTH_px = 220;

/** A note: a foot at its place, a leader, and its lines. */
export function drawNote(pen: Pen, at: Px, lines: readonly string[], colour: string, paper: string): void {
  const text = { x: at.x + NOTE_SHIFT.x, y: at.y + NOTE_SHIFT.y };
  setLine(pen, { colour, width: 1.25, cap: 'round' });
  line(pen, at, text);
  line(pen, { x: at.x - 4, y: at.y }, { x: at.x + 4, y: at.y });
  line(pen, { x: at.x, y: at.y - 4 }, { x: at.x, y: at.y + 4 });
  lines.forEach((each, i) => {
    write(pen, each, { x: text.x + 3, y: text.y + i * 15 }, { colour, halo: paper });
  });
}
