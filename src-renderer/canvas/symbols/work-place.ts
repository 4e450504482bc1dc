import { type Pen, type Px, polyline, ring, setLine } from '../pen.ts';

/** Largest seat [px]. */
const SEAT_px = 7;

/** A place where somebody works: a dashed outline with a seat, a ring and its back. */
export function drawWorkPlace(pen: Pen, outline: readonly Px[], colour: string): void {
  setLine(pen, { colour, width: 1.5, dash: [4, 3] });
  polyline(pen, outline, true);
  const xs = outline.map((p) => p.x);
  const ys = outline.map((p) => p.y);
  const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  const radius = Math.min(SEAT_px, (Math.max(...xs) - Math.min(...xs)) / 5, (Math.max(...ys) - Math.min(...ys)) / 5);
  if (radius < 1.5) return;
  setLine(pen, { colour, width: 1.5 });
  ring(pen, middle, radius);
  pen.beginPath();
  pen.arc(middle.x, middle.y, radius * 1.6, 0.25 * Math.PI, 0.75 * Math.PI);
  pen.stroke();
}
