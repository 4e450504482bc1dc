import type { UnderlayText } from '#shared/underlay/drawing';

/** A piece of text as painted, with where it ends, in drawing units. */
export interface PaintedText extends UnderlayText {
  readonly endX: number;
  readonly endY: number;
}

/** Joins pieces of text that follow each other on one line: many documents paint letter by letter. */
export class TextRuns {
  private open: PaintedText | undefined;

  constructor(private readonly put: (text: UnderlayText) => void) {}

  add(piece: PaintedText): void {
    const joined = this.open && joinedTexts(this.open, piece);
    if (!joined) this.flush();
    this.open = joined ?? piece;
  }

  /** Ends the line under way. */
  flush(): void {
    if (this.open) this.put(this.open);
    this.open = undefined;
  }
}

/** One text of two, or undefined when the second does not go on where the first ends. */
function joinedTexts(first: PaintedText, second: PaintedText): PaintedText | undefined {
  const { height } = first;
  if (Math.abs(second.height - height) > 0.1 * height) return undefined;
  const turn = Math.abs(second.rotation_rad - first.rotation_rad);
  if (Math.min(turn, 2 * Math.PI - turn) > 0.02) return undefined;
  const cos = Math.cos(first.rotation_rad);
  const sin = Math.sin(first.rotation_rad);
  const dx = second.x - first.endX;
  const dy = second.y - first.endY;
  const gap = dx * cos + dy * sin;
  const aside = Math.abs(dy * cos - dx * sin);
  if (aside > 0.15 * height || gap < -0.5 * height || gap > 1.2 * height) return undefined;
  const isWordEnd = gap > 0.3 * height && !/\s$/.test(first.text) && !/^\s/.test(second.text);
  return { ...first, text: `${first.text}${isWordEnd ? ' ' : ''}${second.text}`, endX: second.endX, endY: second.endY };
}
