import { type DraftView, viewBox } from './draft-view.ts';
import type { Mark } from './sheet.ts';
import { type PaperBox, markBox } from './text-box.ts';

/** Touching by less than this is no overlap [mm]. */
const SLACK_mm = 0.5;

const overlaps = (a: PaperBox, b: PaperBox): boolean => a.left < b.right - SLACK_mm && b.left < a.right - SLACK_mm && a.top < b.bottom - SLACK_mm && b.top < a.bottom - SLACK_mm;

/** Says which views that the user placed lie over others, or over a table. */
export function overlapRemarks(views: readonly DraftView[], placed: ReadonlySet<DraftView>, fixed: readonly Mark[]): string[] {
  const boxes = views.map(viewBox);
  const tables = fixed.map(markBox);
  return views.flatMap((view, i) => {
    const box = boxes[i];
    if (!box || !placed.has(view)) return [];
    const under = views.flatMap((other, k) => {
      const lower = boxes[k];
      // Of two that were placed, the first tells.
      return k === i || !lower || (placed.has(other) && k < i) || !overlaps(box, lower) ? [] : [`${view.title} lies over ${other.title}. Move one of them.`];
    });
    return tables.some((table) => overlaps(box, table)) ? [...under, `${view.title} lies over a table. Move it.`] : under;
  });
}
