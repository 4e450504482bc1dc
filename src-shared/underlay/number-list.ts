import type { Matrix } from './matrix.ts';

const FIRST_CHUNK = 64;
const LARGEST_CHUNK = 1 << 16;

/** A growing list of numbers in groups of four, kept in chunks so that growing never copies. */
export class NumberList {
  private readonly full: Float64Array[] = [];
  private open = new Float64Array(FIRST_CHUNK);
  private used = 0;
  private kept = 0;

  /** How many numbers it holds. */
  get length(): number {
    return this.kept + this.used;
  }

  /** Appends one group of four. */
  push(a: number, b: number, c: number, d: number): void {
    if (this.used === this.open.length) {
      this.full.push(this.open);
      this.kept += this.used;
      this.open = new Float64Array(Math.min(this.open.length * 2, LARGEST_CHUNK));
      this.used = 0;
    }
    const { open } = this;
    let at = this.used;
    open[at++] = a;
    open[at++] = b;
    open[at++] = c;
    open[at++] = d;
    this.used = at;
  }

  /** Appends the places (two to a group) of another list, carried through a transform. */
  pushTransformed(other: NumberList, [a, b, c, d, e, f]: Matrix): void {
    for (let index = 0; index <= other.full.length; index += 1) {
      const chunk = other.full[index] ?? other.open;
      const end = index < other.full.length ? chunk.length : other.used;
      for (let i = 0; i < end; i += 4) {
        const x1 = chunk[i] ?? 0;
        const y1 = chunk[i + 1] ?? 0;
        const x2 = chunk[i + 2] ?? 0;
        const y2 = chunk[i + 3] ?? 0;
        this.push(a * x1 + c * y1 + e, b * x1 + d * y1 + f, a * x2 + c * y2 + e, b * x2 + d * y2 + f);
      }
    }
  }

  /** The numbers in order, as views of whole groups; they must not be written to. */
  *chunks(): Generator<Float64Array> {
    yield* this.full;
    yield this.open.subarray(0, this.used);
  }

  /** Copies everything into `target` from index `at` on, and answers the index after it. */
  copyTo(target: Float64Array, at: number): number {
    let next = at;
    for (const chunk of this.chunks()) {
      target.set(chunk, next);
      next += chunk.length;
    }
    return next;
  }
}
