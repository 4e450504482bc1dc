import type { Sheet } from '#shared/sheets/sheet';

const POINTS_PER_MM = 72 / 25.4;
/** Paper that is shown around a view [mm]. */
const AROUND_mm = 4;

/** What pdfkit keeps of the outline; it can show a page, but no part of one. */
interface OutlineItem {
  readonly outlineData: { Dest?: unknown };
  addItem(title: string, options: { pageNumber: number; fit: boolean }): OutlineItem;
}

/** Writes the outline of a set once its pages are painted: every sheet by number and title, its views below it. */
export function outlineSheets(document: PDFKit.PDFDocument, sheets: readonly Sheet[]): void {
  const { outline, _root: root } = document as unknown as { outline: OutlineItem; _root: { data: { Pages: { data: { Kids: unknown[] } } } } };
  sheets.forEach(({ number, title, views, paper }, pageNumber) => {
    const item = outline.addItem(`${number}  ${title}`, { pageNumber, fit: true });
    for (const view of views) {
      const { left, top, right, bottom } = view.box;
      const [west, east] = [Math.max(0, left - AROUND_mm), Math.min(paper.width_mm, right + AROUND_mm)];
      const [north, south] = [Math.max(0, top - AROUND_mm), Math.min(paper.height_mm, bottom + AROUND_mm)];
      const below = item.addItem(view.title, { pageNumber, fit: true });
      below.outlineData.Dest = [root.data.Pages.data.Kids[pageNumber], 'FitR', ...[west, paper.height_mm - south, east, paper.height_mm - north].map((mm) => mm * POINTS_PER_MM)];
    }
  });
}
