import { type Pen, type Px, line, ring, setLine } from '../pen.ts';

/** Radius of the ring [px]. */
const RISER_RING_px = 4.5;

/** A vertical pipe seen from above: a ring with a stroke upward where the agent rises, downward where it drops. */
export function drawUpright(pen: Pen, at: Px, goes: 'riser' | 'drop', colour: string, paper: string): void {
  const way = goes === 'riser' ? -1 : 1;
  setLine(pen, { colour, width: 1.75 });
  ring(pen, at, RISER_RING_px, paper);
  setLine(pen, { colour, width: 2, cap: 'round' });
  const tip = { x: at.x, y: at.y + way * (RISER_RING_px + 8) };
  line(pen, at, tip);
  line(pen, tip, { x: tip.x - 3.5, y: tip.y - way * 4 });
  line(pen, tip, { x: tip.x + 3.5, y: tip.y - way * 4 });
}
