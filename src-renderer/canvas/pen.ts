/** What everything here draws with: pixels, x right, y down. */
export type Pen = CanvasRenderingContext2D;
/** A place on the screen [px]. */
export interface Px {
  readonly x: number;
  readonly y: number;
}

/** A painter keeps few pieces in one path: long paths are slow to stroke. */
const PIECES_PER_STROKE = 16;

export interface LineStyle {
  readonly colour: string;
  readonly width: number;
  readonly dash?: readonly number[];
  readonly cap?: CanvasLineCap;
  readonly join?: CanvasLineJoin;
}

/** Sets how lines are drawn from here on. */
export function setLine(pen: Pen, { colour, width, dash = [], cap = 'butt', join = 'miter' }: LineStyle): void {
  pen.strokeStyle = colour;
  pen.lineWidth = width;
  pen.setLineDash([...dash]);
  pen.lineCap = cap;
  pen.lineJoin = join;
}

/** Draws one straight line. */
export function line(pen: Pen, a: Px, b: Px): void {
  pen.beginPath();
  pen.moveTo(a.x, a.y);
  pen.lineTo(b.x, b.y);
  pen.stroke();
}

/** Draws many separate straight pieces with the line set before, few to a path. */
export function pieces(pen: Pen, all: Iterable<readonly [Px, Px]>): void {
  let count = 0;
  pen.beginPath();
  for (const [a, b] of all) {
    pen.moveTo(a.x, a.y);
    pen.lineTo(b.x, b.y);
    count += 1;
    if (count % PIECES_PER_STROKE === 0) {
      pen.stroke();
      pen.beginPath();
    }
  }
  if (count % PIECES_PER_STROKE !== 0) pen.stroke();
}

/** Adds a run of places to the current path. */
export function trace(pen: Pen, places: readonly Px[], closed: boolean): void {
  places.forEach((p, i) => {
    if (i === 0) pen.moveTo(p.x, p.y);
    else pen.lineTo(p.x, p.y);
  });
  if (closed) pen.closePath();
}

/** Draws an open or closed run of places with the line set before. */
export function polyline(pen: Pen, places: readonly Px[], closed = false): void {
  if (places.length < 2) return;
  pen.beginPath();
  trace(pen, places, closed);
  pen.stroke();
}

/** Fills a closed run of places. */
export function fillRing(pen: Pen, places: readonly Px[], colour: string): void {
  if (places.length < 3) return;
  pen.fillStyle = colour;
  pen.beginPath();
  trace(pen, places, true);
  pen.fill();
}

/** Draws a circle with the line set before; filled first when a colour is given. */
export function ring(pen: Pen, at: Px, radius: number, fill?: string): void {
  pen.beginPath();
  pen.arc(at.x, at.y, radius, 0, 2 * Math.PI);
  if (fill) {
    pen.fillStyle = fill;
    pen.fill();
  }
  pen.stroke();
}

/** Fills a disc. */
export function disc(pen: Pen, at: Px, radius: number, colour: string): void {
  pen.beginPath();
  pen.arc(at.x, at.y, radius, 0, 2 * Math.PI);
  pen.fillStyle = colour;
  pen.fill();
}

/** Screen place at a distance in a plan direction: counter-clockwise from east, y flipped. */
export const along = (from: Px, angle_rad: number, length_px: number): Px => ({
  x: from.x + Math.cos(angle_rad) * length_px,
  y: from.y - Math.sin(angle_rad) * length_px,
});

/** Place between two places, `share` 0 at the first and 1 at the second. */
export const between = (a: Px, b: Px, share: number): Px => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });

/** Distance on the screen [px]. */
export const gap_px = (a: Px, b: Px): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Direction on the screen from one place to another, as a plan direction [rad]. */
export const heading_rad = (a: Px, b: Px): number => Math.atan2(a.y - b.y, b.x - a.x);

/** Runs a drawing and puts the pen back as it was. */
export function aside(pen: Pen, draw: () => void): void {
  pen.save();
  draw();
  pen.restore();
}
