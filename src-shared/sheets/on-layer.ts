import type { Mark, SheetLayer } from './sheet.ts';
import type { ViewDraft } from './view-draft.ts';

/** Draws a part of a view and puts every mark of it that has no layer yet on one. */
export function onLayer({ under, lines, texts }: Pick<ViewDraft, 'under' | 'lines' | 'texts'>, layer: SheetLayer, draw: () => void): void {
  const lists: readonly Mark[][] = [under, lines, texts];
  const from = lists.map(({ length }) => length);
  draw();
  for (const [k, list] of lists.entries()) {
    for (let i = from[k] ?? 0; i < list.length; i += 1) {
      const mark = list[i];
      if (mark && mark.layer === undefined) list[i] = { ...mark, layer };
    }
  }
}
