import { type Pen, type Px, along, line, ring, setLine } from '../pen.ts';

/** Radius of a nozzle's ring [px]. */
export const NOZZLE_RING_px = 5;
/** How far its hole strokes reach from its middle [px]. */
export const NOZZLE_REACH_px = 14;

export interface NozzleLook {
  readonly colour: string;
  readonly paper: string;
  /** Directions in which its holes blow [rad], counter-clockwise from east. */
  readonly holes_rad: readonly number[];
  /** 1 on the board; larger in a legend. */
  readonly size?: number;
}

/** A nozzle seen from above: a small ring with one short stroke per hole, pointing where it blows. */
export function drawNozzle(pen: Pen, at: Px, { colour, paper, holes_rad, size = 1 }: NozzleLook): void {
  setLine(pen, { colour, width: 2.25 * size, cap: 'round' });
  for (const hole_rad of holes_rad) {
    line(pen, along(at, hole_rad, NOZZLE_RING_px * size), along(at, hole_rad, NOZZLE_REACH_px * size));
  }
  setLine(pen, { colour, width: 2 * size });
  ring(pen, at, NOZZLE_RING_px * size, paper);
}

/** A nozzle seen from the side: a short stem that ends in a ring half, with a stroke each way it blows. */
export function drawNozzleFromSide(pen: Pen, at: Px, { colour, paper, size = 1 }: Omit<NozzleLook, 'holes_rad'>): void {
  setLine(pen, { colour, width: 2 * size, cap: 'round' });
  line(pen, { x: at.x - 11 * size, y: at.y }, { x: at.x + 11 * size, y: at.y });
  line(pen, at, { x: at.x, y: at.y - 9 * size });
  setLine(pen, { colour, width: 2 * size });
  ring(pen, at, 4 * size, paper);
}
