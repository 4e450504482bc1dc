import type { TextMark } from '#shared/sheets/marks';
import type { Mark } from '#shared/sheets/sheet';
import { textBoxOf, turnedBoxesOverlap } from '#shared/sheets/text-box';

/** Pairs of texts that run into each other; ones that say the same in the same place count too. */
export function textOverlaps(marks: readonly Mark[]): string[] {
  const texts = marks.filter((mark): mark is TextMark => mark.kind === 'text');
  const boxes = texts.map(textBoxOf);
  return texts.flatMap((mark, i) => texts.slice(i + 1).flatMap((other, k) => {
    const [a, b] = [boxes[i], boxes[i + 1 + k]];
    return a && b && turnedBoxesOverlap(a, b) ? [`“${mark.text}” and “${other.text}”`] : [];
  }));
}
