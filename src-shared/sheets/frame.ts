import { line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Paper } from '../paper/papers.ts';
import type { Mark } from './sheet.ts';
import type { PaperBox } from './text-box.ts';
import { textWidth_mm } from './font-widths.ts';
import { type TypeSizes, typeSizesOf } from '../paper/type-sizes.ts';

/** Margin on the filing side and on the others [mm]. Source: ISO 5457, from memory. */
const FILING_mm = 20;
const MARGIN_mm = 10;

/** How a sheet's paper is shared: drawing area on the left, title column on the right. */
export interface SheetLayout {
  readonly paper: Paper;
  readonly sizes: TypeSizes;
  readonly frame: PaperBox;
  /** Where views and tables lie. */
  readonly area: PaperBox;
  readonly column: PaperBox;
  /** Columns of narrow tables side by side. */
  readonly tableColumns: number;
}

/** Shares a paper between the drawing and its title column. */
export function sheetLayout(paper: Paper): SheetLayout {
  const sizes = typeSizesOf(paper);
  const isWide = paper.width_mm / sizes.factor > 350;
  const columnWidth = (isWide ? 84 : 66) * sizes.factor;
  const frame = { left: FILING_mm, top: MARGIN_mm, right: paper.width_mm - MARGIN_mm, bottom: paper.height_mm - MARGIN_mm };
  const pad = 4 * sizes.factor;
  const column = { left: frame.right - columnWidth, top: frame.top, right: frame.right, bottom: frame.bottom };
  return {
    paper,
    sizes,
    frame,
    column,
    area: { left: frame.left + pad, top: frame.top + pad, right: column.left - pad, bottom: frame.bottom - pad },
    tableColumns: isWide ? 2 : 1,
  };
}

/** The frame with its centring marks, the trimming corners and the line before the title column. */
export function drawFrame({ paper, frame, column }: SheetLayout): Mark[] {
  const { left, top, right, bottom } = frame;
  const centre = pen(WEIGHT.heavy);
  const trim = pen(WEIGHT.thin, PRINT.faint);
  const [w, h] = [paper.width_mm, paper.height_mm];
  const middleX = (left + right) / 2;
  const middleY = (top + bottom) / 2;
  const corner = 4;
  const edge = 0.2;
  return [
    { kind: 'line', places: [left, top, right, top, right, bottom, left, bottom], closed: true, stroke: pen(WEIGHT.heavy) },
    line(centre, middleX, 3, middleX, top),
    line(centre, middleX, h - 3, middleX, bottom),
    line(centre, 3, middleY, left, middleY),
    line(centre, w - 3, middleY, right, middleY),
    line(trim, edge, corner, edge, edge, corner, edge),
    line(trim, w - corner, edge, w - edge, edge, w - edge, corner),
    line(trim, edge, h - corner, edge, h - edge, corner, h - edge),
    line(trim, w - corner, h - edge, w - edge, h - edge, w - edge, h - corner),
    line(pen(WEIGHT.wide), column.left, top, column.left, bottom),
  ];
}

/** Words of the stamp that a sheet on a sample profile carries. */
export const SAMPLE_STAMP = 'SAMPLE PROFILE: NOT FOR CONSTRUCTION';

/** The stamp from corner to corner of the drawing area, pale and under everything, so that it hides nothing. */
export function sampleStamp({ area }: SheetLayout): Mark[] {
  const width = area.right - area.left;
  const height = area.bottom - area.top;
  const diagonal = Math.hypot(width, height);
  const angle = Math.atan2(height, width);
  const wide = textWidth_mm(SAMPLE_STAMP, 1, 'bold');
  // Its ends keep inside the area: the text is a bar of some height turned by the angle.
  const height_mm = (0.86 * diagonal) / (wide + 2 / Math.tan(angle) + 2 * Math.tan(angle) * 0.2);
  const x = (area.left + area.right) / 2 + (Math.sin(angle) * height_mm) / 2;
  const y = (area.top + area.bottom) / 2 + (Math.cos(angle) * height_mm) / 2;
  return [text(x, y, SAMPLE_STAMP, { height_mm, font: 'bold', align: 'middle', rotation_rad: angle, colour: PRINT.stamp })];
}
