import { type DraftView, viewBox, viewCorner } from './draft-view.ts';
import type { Mark, SheetDimension, SheetView } from './sheet.ts';
import { textBoxOf } from './text-box.ts';

/** The views of a sheet as they can be taken hold of. */
export const sheetViews = (views: readonly DraftView[]): SheetView[] =>
  views.map((view) => ({ key: view.key, title: view.title, box: viewBox(view), corner: viewCorner(view), scale: view.scale, shown: view.ground?.shown ?? null }));

/** The texts of dimensions that can be moved, wherever they stand. */
export const sheetDimensions = (marks: readonly Mark[]): SheetDimension[] =>
  marks.flatMap((mark): SheetDimension[] => {
    if (mark.kind === 'clip') return sheetDimensions(mark.marks);
    return mark.kind === 'text' && mark.dimension ? [{ ...mark.dimension, words: mark.text, box: textBoxOf(mark) }] : [];
  });
