import { SNAP_WORDS } from '../../tools/snap.ts';
import type { Snap } from '../../tools/tool.ts';
import { write } from '../lettering.ts';
import { type Pen, type Px, disc, line, ring, setLine } from '../pen.ts';

/** The place that a click would hit: a ring, with a dot where something was caught, and the word for it. */
export function drawSnap(pen: Pen, at: Px, kind: Snap['kind'], colour: string, paper: string): void {
  if (kind === 'free') return;
  const caught = kind !== 'grid';
  setLine(pen, { colour: paper, width: 4 });
  ring(pen, at, caught ? 7 : 3.5);
  setLine(pen, { colour, width: 1.75 });
  ring(pen, at, caught ? 7 : 3.5);
  if (!caught) return;
  disc(pen, at, 2, colour);
  for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const) {
    line(pen, { x: at.x + dx * 7, y: at.y + dy * 7 }, { x: at.x + dx * 10, y: at.y + dy * 10 });
  }
  write(pen, SNAP_WORDS[kind], { x: at.x + 14, y: at.y + 15 }, { colour, halo: paper });
}
