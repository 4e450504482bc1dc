import type { Derived } from '../../derived/derived.ts';
import type { BlockSheets } from '../block-sheets.ts';
import { printable, textWidth_mm } from '../font-widths.ts';
import type { SheetLayout } from '../frame.ts';
import { settleLabels } from '../labels.ts';
import { box, pen, shiftMarks, text } from '../marks.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import type { Mark } from '../sheet.ts';
import { type SheetDraft, missingLabels } from '../sheet-draft.ts';
import { shortened, wrapText } from '../text-box.ts';
import { marksOf, viewDraft, viewFrame } from '../view-draft.ts';
import { assemblyDetails } from './assembly-details.ts';
import { DETAIL_HEIGHT_mm, DETAIL_WIDTH_mm, type Detail } from './detail.ts';
import { dirtTrapDetails } from './dirt-trap-details.ts';
import { nozzleDetails } from './nozzle-details.ts';
import { openingDetails } from './opening-details.ts';
import { railDetails } from './rail-details.ts';
import { signDetails } from './sign-details.ts';
import { supportDetails } from './support-details.ts';

/** A detail with its title, drawing and words, from the top left corner of its own paper. */
interface DetailBlock {
  readonly marks: readonly Mark[];
  readonly height_mm: number;
  readonly unplaced: number;
}

const PITCH = 1.6;
const PAD_mm = 2;
/** Longer words of one kind are cut, so that a name as long as a plan may hold spoils no sheet. */
const MOST_LINES = 6;
/** In place of what a detail has no room for. */
const MORE = '… The schedules tell the rest.';

/** The details that a plan needs, in the order in which they are built. */
export const detailsOf = (derived: Derived): Detail[] => [
  ...railDetails(derived),
  ...assemblyDetails(derived),
  ...supportDetails(derived),
  ...nozzleDetails(derived),
  ...dirtTrapDetails(derived),
  ...openingDetails(derived),
  ...signDetails(derived),
];

function composeDetail(detail: Detail, number: number, width_mm: number, { sizes, area }: SheetLayout, lengths: 'feet' | 'metric'): DetailBlock {
  const { factor, text_mm, heading_mm, note_mm } = sizes;
  const pad = PAD_mm * factor;
  const inner = width_mm - 2 * pad;
  const marks: Mark[] = [];
  let y = pad + heading_mm;
  marks.push(text(pad, y, shortened(printable(`${number}  ${detail.title}`), inner, heading_mm, 'bold'), { height_mm: heading_mm, font: 'bold' }));
  const linesOf = (words: string, height_mm: number, most = MOST_LINES): string[] => {
    const lines = wrapText(printable(words), inner, height_mm, 'plain');
    return lines.length <= most ? lines : [...lines.slice(0, most - 1), shortened(`${lines[most - 1]}…`, inner - textWidth_mm('…', height_mm, 'plain'), height_mm, 'plain')];
  };
  const write = (lines: readonly string[], height_mm: number, colour?: string): void => {
    for (const each of lines) {
      y += height_mm * PITCH;
      marks.push(text(pad, y, each, { height_mm, ...(colour ? { colour } : {}) }));
    }
  };
  write(linesOf(detail.where === '' ? 'not to scale' : `not to scale · ${detail.where}`, text_mm, 2), text_mm, PRINT.quiet);
  y += pad;
  const room = { left: pad, top: y, right: width_mm - pad, bottom: y + DETAIL_HEIGHT_mm * factor };
  const left = room.left + Math.max(0, (inner - DETAIL_WIDTH_mm * factor) / 2);
  const view = viewDraft(viewFrame(1000 / factor, 0, 0, left, room.bottom), sizes, lengths, room);
  detail.draw(view);
  settleLabels(view);
  marks.push(...marksOf(view));
  y = room.bottom + pad / 2;
  const source = detail.source ? linesOf(`Source: ${detail.source}.`, note_mm) : [];
  const caution = detail.caution ? linesOf(`Caution: ${detail.caution}`, note_mm) : [];
  const notes = detail.notes.flatMap((note) => linesOf(note, text_mm));
  const below = (source.length + caution.length) * note_mm * PITCH + 2 * pad;
  const most = Math.max(2, Math.floor((area.bottom - area.top - y - below) / (text_mm * PITCH)));
  write(notes.length <= most ? notes : [...notes.slice(0, most - 1), MORE], text_mm);
  write(source, note_mm, PRINT.quiet);
  write(caution, note_mm);
  const height_mm = y + pad * 1.4;
  marks.unshift(box(pen(WEIGHT.thin, PRINT.faint), 0, 0, width_mm, height_mm));
  return { marks, height_mm, unplaced: view.unplaced.length };
}

/** Between the last row of details and what comes below it [mm at factor 1]. */
const BELOW_mm = 5;

/** Sheets of details, and the paper that the last of them leaves for tables: as many side by side as the paper is wide, row by row, in the order in which they are built. */
export function detailSheets(derived: Derived, layout: SheetLayout): BlockSheets {
  const { area, sizes } = layout;
  const gap = 3 * sizes.factor;
  const columns = Math.max(1, Math.floor((area.right - area.left + gap) / ((DETAIL_WIDTH_mm + 2 * PAD_mm) * sizes.factor + gap)));
  const width = (area.right - area.left - (columns - 1) * gap) / columns;
  const blocks = detailsOf(derived).map((detail, i) => composeDetail(detail, i + 1, width, layout, derived.plan.settings.lengths));
  const pages: { marks: Mark[]; unplaced: number }[] = [];
  let top = area.bottom + 1;
  for (let i = 0; i < blocks.length; i += columns) {
    const row = blocks.slice(i, i + columns);
    const height = Math.max(...row.map(({ height_mm }) => height_mm));
    if (top + height > area.bottom) {
      pages.push({ marks: [], unplaced: 0 });
      top = area.top;
    }
    const page = pages.at(-1);
    row.forEach(({ marks, unplaced }, k) => {
      page?.marks.push(...shiftMarks(marks, area.left + k * (width + gap), top));
      if (page) page.unplaced += unplaced;
    });
    top += height + gap;
  }
  const drafts = pages.map(({ marks, unplaced }, i): SheetDraft => ({
    title: pages.length > 1 ? `Details, part ${i + 1} of ${pages.length}` : 'Details',
    scale: 'not to scale',
    marks,
    hasViews: false,
    hasPlan: false,
    used: new Set(),
    remarks: missingLabels(unplaced),
  }));
  return { drafts, left: drafts.length > 0 ? { ...area, top: top + BELOW_mm * sizes.factor } : undefined };
}
