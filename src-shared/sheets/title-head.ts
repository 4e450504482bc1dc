import type { SheetSettings } from '../model/plan.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import type { SheetLayout } from './frame.ts';
import { line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark, SheetOptions } from './sheet.ts';
import { shortened } from './text-box.ts';

/** Height of a logo at most [mm at factor 1]. */
const LOGO_mm = 18;

/** The user's own head of the title column, from its top. */
export interface TitleHead {
  readonly marks: readonly Mark[];
  readonly height_mm: number;
}

/** Logo and lines of the user, cut to the width of the column. @param most_mm height that the program's own fields leave */
export function titleHead({ column, sizes }: SheetLayout, { lines }: SheetSettings['titleBlock'], logo: SheetOptions['logo'], most_mm: number): TitleHead {
  const { factor, text_mm, note_mm } = sizes;
  const pad = 1.4 * factor;
  const width = column.right - column.left - 2 * pad;
  const marks: Mark[] = [];
  let y = column.top + pad;
  const bottom = column.top + most_mm - pad;
  if (logo && logo.width_px > 0 && logo.height_px > 0) {
    const share = Math.min(width / logo.width_px, (LOGO_mm * factor) / logo.height_px);
    const [w, h] = [logo.width_px * share, logo.height_px * share];
    if (y + h <= bottom) {
      // The unit square of a picture has y up, the paper y down.
      marks.push({ kind: 'image', bytes: logo.bytes, mime: logo.mime, matrix: [w, 0, 0, -h, column.left + pad + (width - w) / 2, y + h], opacity: 1 });
      y += h + pad;
    }
  }
  const pitch = text_mm * 1.7;
  const captions = Math.min(width * 0.4, Math.max(0, ...lines.map(({ label }) => textWidth_mm(printable(label), note_mm, 'plain'))));
  for (const { label, value } of lines) {
    if (y + pitch > bottom) break;
    const base = y + text_mm;
    const left = column.left + pad + (captions > 0 ? captions + pad : 0);
    marks.push(
      text(column.left + pad, base, shortened(printable(label), captions, note_mm, 'plain'), { height_mm: note_mm, colour: PRINT.quiet }),
      text(left, base, shortened(printable(value), column.right - pad - left, text_mm, 'plain'), { height_mm: text_mm }),
    );
    y += pitch;
  }
  if (marks.length === 0) return { marks: [], height_mm: 0 };
  const foot = y + pad * 0.4;
  return { marks: [...marks.filter((mark) => mark.kind !== 'text' || mark.text !== ''), line(pen(WEIGHT.thin), column.left, foot, column.right, foot)], height_mm: foot - column.top };
}
