import { type Pen, type Px, setLine } from '../pen.ts';

/** A place of a selected thing that can be dragged: a small square. */
export function drawHandle(pen: Pen, at: Px, colour: string, paper: string): void {
  pen.fillStyle = paper;
  pen.fillRect(at.x - 3.5, at.y - 3.5, 7, 7);
  setLine(pen, { colour, width: 1.5 });
  pen.strokeRect(at.x - 3.5, at.y - 3.5, 7, 7);
}
