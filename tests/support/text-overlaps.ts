import type { TextMark } from '#shared/sheets/marks';
import type { Mark } from '#shared/sheets/sheet';
import { boxAround, cornersOf, textBoxOf, turnedBoxesOverlap } from '#shared/sheets/text-box';

/** Pairs of texts that run into each other; ones that say the same in the same place count too. Only those whose upright boxes meet are looked at closely. */
export function textOverlaps(marks: readonly Mark[]): string[] {
  const texts = marks
    .filter((mark): mark is TextMark => mark.kind === 'text')
    .map((mark) => {
      const turned = textBoxOf(mark);
      return { mark, turned, upright: boxAround(cornersOf(turned)) };
    })
    .sort((a, b) => a.upright.left - b.upright.left);
  const found: string[] = [];
  texts.forEach(({ mark, turned, upright }, i) => {
    for (let k = i + 1; k < texts.length; k += 1) {
      const other = texts[k];
      if (!other || other.upright.left >= upright.right) break;
      if (other.upright.top >= upright.bottom || other.upright.bottom <= upright.top) continue;
      if (turnedBoxesOverlap(turned, other.turned)) found.push(`“${mark.text}” and “${other.mark.text}”`);
    }
  });
  return found;
}
