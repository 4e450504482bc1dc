import { MOST_SEGMENTS, UnderlayProblem, type UnderlayText } from './drawing.ts';
import { type Matrix, determinant, transformed } from './matrix.ts';
import { NumberList } from './number-list.ts';

/** Most corners of a ring that can become an enclosure's outline. */
const MOST_CORNERS = 2000;
/** Longest text kept from a drawing; a longer one is cut. */
const LONGEST_TEXT = 2000;

/** What a ring, a text and its letters take in memory, counted in pieces of line. */
const RING_PIECES = 4;
const TEXT_PIECES = 4;
const LETTERS_PER_PIECE = 16;

/** Counts what a drawing holds, so that a small file cannot unfold into more than memory takes. */
export class Budget {
  private spent = 0;

  /** Takes note of more pieces. @throws {UnderlayProblem} when the drawing grows beyond `MOST_SEGMENTS` */
  spend(pieces: number): void {
    this.spent += pieces;
    if (this.spent > MOST_SEGMENTS) {
      throw new UnderlayProblem(
        `The drawing holds more than ${MOST_SEGMENTS / 1e6} million lines.`,
        '',
        'Export only the floor you need, without furniture, hatching and landscape, and import that.',
      );
    }
  }
}

/** Width of a text in a plain typeface [unit of the height]: a guess, good for placing, not for measuring. */
export const guessTextWidth = (text: string, height: number): number => 0.85 * height * text.length;

/** Lines, fills and texts of one layer in one colour, while a drawing is read. */
export class LineWork {
  /** Pieces that belong to no closed ring: they may still join to one. */
  readonly loose = new NumberList();
  /** Sides of closed rings. */
  readonly sides = new NumberList();
  readonly fills: Float64Array[] = [];
  readonly closed: Float64Array[] = [];
  readonly texts: UnderlayText[] = [];

  constructor(private readonly budget: Budget) {}

  get segmentCount(): number {
    return (this.loose.length + this.sides.length) / 4;
  }

  get isEmpty(): boolean {
    return this.segmentCount === 0 && this.fills.length === 0 && this.texts.length === 0;
  }

  /** Adds one straight piece; a piece of no length is dropped. */
  line(x1: number, y1: number, x2: number, y2: number): void {
    if (x1 === x2 && y1 === y2) return;
    this.budget.spend(1);
    this.loose.push(x1, y1, x2, y2);
  }

  /** Adds a run of straight pieces, x and y in turn. A closed one whose last place repeats the first is fine. */
  polyline(places: ArrayLike<number>, isClosed: boolean): void {
    const count = Math.floor(places.length / 2);
    this.budget.spend(count);
    const ring = isClosed ? ringOf(places) : undefined;
    const into = ring ? this.sides : this.loose;
    const end = isClosed ? count : count - 1;
    for (let i = 0; i < end; i += 1) {
      const next = (i + 1) % count;
      const x1 = places[2 * i] ?? 0;
      const y1 = places[2 * i + 1] ?? 0;
      const x2 = places[2 * next] ?? 0;
      const y2 = places[2 * next + 1] ?? 0;
      if (x1 !== x2 || y1 !== y2) into.push(x1, y1, x2, y2);
    }
    if (ring) this.closed.push(ring);
  }

  /** Adds an area that is filled; its ring is closed, with holes joined in by `fillRings`. */
  fill(ring: Float64Array): void {
    if (ring.length < 6) return;
    this.budget.spend(ring.length / 2);
    this.fills.push(ring);
  }

  /** Adds a text; an empty one is dropped. */
  text(x: number, y: number, height: number, rotation_rad: number, text: string): void {
    const kept = text.trim().slice(0, LONGEST_TEXT);
    if (kept === '' || !(height > 0)) return;
    this.budget.spend(TEXT_PIECES + Math.ceil(kept.length / LETTERS_PER_PIECE));
    this.texts.push({ x, y, height, rotation_rad, text: kept });
  }

  /** Adds everything of `other`, carried through a transform. */
  addTransformed(other: LineWork, m: Matrix): void {
    this.budget.spend(other.segmentCount);
    this.loose.pushTransformed(other.loose, m);
    this.sides.pushTransformed(other.sides, m);
    for (const ring of other.closed) {
      this.budget.spend(RING_PIECES);
      this.closed.push(transformed(m, ring));
    }
    for (const ring of other.fills) this.fill(transformed(m, ring));
    for (const text of other.texts) {
      const moved = transformedText(m, text);
      this.text(moved.x, moved.y, moved.height, moved.rotation_rad, moved.text);
    }
  }
}

/** The corners of a closed run without repeats, or undefined when they enclose nothing or are too many. */
export function ringOf(places: ArrayLike<number>): Float64Array | undefined {
  const ring: number[] = [];
  for (let i = 0; i + 1 < places.length; i += 2) {
    const x = places[i] ?? 0;
    const y = places[i + 1] ?? 0;
    if (ring.length === 0 || x !== ring[ring.length - 2] || y !== ring[ring.length - 1]) ring.push(x, y);
  }
  while (ring.length > 2 && ring[0] === ring[ring.length - 2] && ring[1] === ring[ring.length - 1]) ring.length -= 2;
  return ring.length >= 6 && ring.length <= 2 * MOST_CORNERS && ringArea(ring) !== 0 ? Float64Array.from(ring) : undefined;
}

/** Signed area of a ring given as x and y in turn, positive counter-clockwise. */
export function ringArea(ring: ArrayLike<number>): number {
  // From the first corner on, so that far-away coordinates do not eat the digits.
  const x0 = ring[0] ?? 0;
  const y0 = ring[1] ?? 0;
  let twice = 0;
  for (let i = 2; i + 3 < ring.length; i += 2) {
    twice += ((ring[i] ?? 0) - x0) * ((ring[i + 3] ?? 0) - y0) - ((ring[i + 2] ?? 0) - x0) * ((ring[i + 1] ?? 0) - y0);
  }
  return twice / 2;
}

/** A text carried through a transform, kept readable: a mirrored one covers the same place but reads forward. */
export function transformedText(m: Matrix, { x, y, height, rotation_rad, text }: UnderlayText): UnderlayText {
  const cos = Math.cos(rotation_rad);
  const sin = Math.sin(rotation_rad);
  const alongX = m[0] * cos + m[2] * sin;
  const alongY = m[1] * cos + m[3] * sin;
  const upX = -m[0] * sin + m[2] * cos;
  const upY = -m[1] * sin + m[3] * cos;
  const along = Math.hypot(alongX, alongY);
  const size = along > 0 ? (height * Math.abs(determinant(m))) / along : 0;
  const startX = m[0] * x + m[2] * y + m[4];
  const startY = m[1] * x + m[3] * y + m[5];
  const direction = Math.atan2(alongY, alongX);
  if (determinant(m) >= 0) return { x: startX, y: startY, height: size, rotation_rad: direction, text };
  if (Math.abs(direction) <= Math.PI / 2 + 1e-9) {
    return { x: startX + upX * height, y: startY + upY * height, height: size, rotation_rad: direction, text };
  }
  const width = guessTextWidth(text, height);
  return {
    x: startX + alongX * width,
    y: startY + alongY * width,
    height: size,
    rotation_rad: Math.atan2(-alongY, -alongX),
    text,
  };
}
