import { placeName } from '#shared/sheets/place-name';
import type { TextMark } from '#shared/sheets/marks';
import type { Mark, Sheet } from '#shared/sheets/sheet';
import { markBox } from '#shared/sheets/text-box';

const POINTS_PER_MM = 72 / 25.4;
/** Paper that is shown around a place that a link leads to, from its middle to each side and up and down [mm]. */
const AROUND_mm = { across: 75, up: 50 } as const;

/** Lays links between the sheets of a set over their texts. */
export interface LinkPainter {
  /** Lays the links of the page that was just painted, and makes its places known. */
  paint(sheet: Sheet): void;
}

/** Texts of a sheet, those inside clips as well. */
const textsIn = (marks: readonly Mark[]): TextMark[] => marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : mark.kind === 'clip' ? textsIn(mark.marks) : []));

/**
 * Links of a set: texts that say where they go lead to the sheet or the place of that name, whichever sheet it is on.
 * A place that stands on several sheets is found on the first.
 */
export function linkPainter(document: PDFKit.PDFDocument, sheets: readonly Sheet[]): LinkPainter {
  const names = new Map<string, string>();
  // Names of one length, so that every way of sorting them is the same: viewers search them by halves.
  const nameOf = (place: string): string => names.get(place) ?? names.set(place, `p${String(names.size).padStart(6, '0')}`).get(place) ?? '';
  const known = new Set(sheets.flatMap(({ number, marks }) => [placeName('sheet', number), ...textsIn(marks).flatMap(({ place }) => (place === undefined ? [] : [place]))]));
  const laid = new Set<string>();
  const { addNamedDestination } = document as unknown as { addNamedDestination(name: string, ...place: unknown[]): void };
  const open = (place: string, ...how: unknown[]): void => {
    if (laid.has(place)) return;
    laid.add(place);
    addNamedDestination.call(document, nameOf(place), ...how);
  };
  return {
    paint({ number, marks, paper }) {
      open(placeName('sheet', number), 'Fit');
      for (const mark of textsIn(marks)) {
        if (mark.place === undefined && mark.goesTo === undefined) continue;
        const { left, top, right, bottom } = markBox(mark);
        if (mark.place !== undefined) {
          const [x, y] = [(left + right) / 2, (top + bottom) / 2];
          const [west, east] = [Math.max(0, x - AROUND_mm.across), Math.min(paper.width_mm, x + AROUND_mm.across)];
          const [north, south] = [Math.max(0, y - AROUND_mm.up), Math.min(paper.height_mm, y + AROUND_mm.up)];
          open(mark.place, 'FitR', ...[west, paper.height_mm - south, east, paper.height_mm - north].map((mm) => mm * POINTS_PER_MM));
        }
        // A little larger than the text, so that a finger meets it.
        if (mark.goesTo !== undefined && known.has(mark.goesTo)) document.annotate(left - 0.5, top - 0.5, right - left + 1, bottom - top + 1, { Subtype: 'Link', Dest: nameOf(mark.goesTo) } as PDFKit.Mixins.AnnotationOption);
      }
    },
  };
}
