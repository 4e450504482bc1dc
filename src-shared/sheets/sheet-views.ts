import { type DraftView, viewBox, viewCorner } from './draft-view.ts';
import type { SheetView } from './sheet.ts';

/** The views of a sheet as they can be taken hold of. */
export const sheetViews = (views: readonly DraftView[]): SheetView[] =>
  views.map((view) => ({ key: view.key, title: view.title, box: viewBox(view), corner: viewCorner(view), scale: view.scale, shown: view.ground?.shown ?? null }));
