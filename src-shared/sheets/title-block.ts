import type { Info, Revision, SheetSettings } from '../model/plan.ts';
import { STANDING } from './cautions.ts';
import { printable } from './font-widths.ts';
import { SAMPLE_STAMP, type SheetLayout } from './frame.ts';
import { box, line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { FontName, Mark, SheetOptions } from './sheet.ts';
import { STAMP_mm, stampBox, stampHeight_mm } from './stamp-box.ts';
import { titleHead } from './title-head.ts';
import { shortened, wrapText } from './text-box.ts';

/** What the title column of one sheet says. */
export interface TitleFacts {
  readonly info: Info;
  readonly title: string;
  readonly number: string;
  readonly index: number;
  readonly count: number;
  readonly scale: string;
  readonly paper: string;
  readonly printedAt: string;
  readonly isSample: boolean;
  /** Rests on a profile that the plan has lost, or none: said beside the sample stamp's place. */
  readonly warnings: readonly string[];
  /** The user's own head of the column, and whether a box is kept clear for a stamp. */
  readonly titleBlock: SheetSettings['titleBlock'];
  readonly logo: SheetOptions['logo'];
  readonly hasStampBox: boolean;
  /** Sheet that holds the full box for a stamp, for columns with a smaller one. */
  readonly stampAt: string | undefined;
}

/** A composed title column. A text too long for its field is shortened there; the job table of the set holds it in full. */
export interface TitleColumn {
  readonly marks: Mark[];
  /** Lower edge of the paper that is left for a legend, and its upper edge. */
  readonly free: { readonly top: number; readonly bottom: number };
  /** Whether the box for a stamp has its full size, or none is wished. */
  readonly isStampFull: boolean;
}

const CAPTION_GAP = 1.25;
/** Share of the free column that the user's own head takes at most. */
const MOST_HEAD = 0.6;
/** Lines that a field may take, the most first: fewer where the paper is low and many fields are long. */
const LINES_PER_FIELD = [3, 2, 1];
/** A sheet keeps at least this clear for a stamp [mm at factor 1]. */
const LEAST_STAMP_mm = 27;

interface Field {
  readonly caption: string;
  readonly words: string;
  readonly share: number;
  readonly height_mm?: number;
  readonly font?: FontName;
  /** Stays empty for a signature or a number when nothing is entered. */
  readonly lines?: number;
}

/**
 * Composes the title column: stamp space, revisions and title block from its foot upward.
 * @param legend_mm paper that a legend above them asks for; the stamp space gives way to it as far as it can
 */
export function titleColumn(layout: SheetLayout, facts: TitleFacts, legend_mm = 0): TitleColumn {
  const least = facts.hasStampBox ? LEAST_STAMP_mm * layout.sizes.factor : 0;
  const tries = LINES_PER_FIELD.map((most) => composeColumn(layout, facts, legend_mm, most));
  const fitting = tries.find(({ stampBottom }) => stampBottom - least >= layout.column.top);
  return fitting ?? tries.at(-1) ?? { marks: [], free: { top: layout.column.top, bottom: layout.column.top }, isStampFull: false };
}

function composeColumn(layout: SheetLayout, facts: TitleFacts, legend_mm: number, mostLines: number): TitleColumn & { readonly stampBottom: number } {
  const { column, sizes } = layout;
  const { factor, text_mm, note_mm } = sizes;
  const pad = 1.4 * factor;
  const width = column.right - column.left;
  const marks: Mark[] = [];
  const { info } = facts;
  const lastDate = info.revisions.at(-1)?.date ?? '';
  const rows: Field[][] = [
    [{ caption: 'Client', words: info.client, share: 1 }],
    [{ caption: 'Project', words: info.project, share: 1, font: 'bold' }],
    [{ caption: 'Site', words: info.site, share: 1 }],
    [{ caption: 'Sheet title', words: facts.title, share: 1, font: 'bold' }],
    [
      { caption: 'Code', words: info.code, share: 0.64 },
      { caption: 'Edition', words: info.edition, share: 0.36 },
    ],
    [
      { caption: 'Drawn', words: info.drawnBy, share: 1 / 3 },
      { caption: 'Checked', words: info.checkedBy, share: 1 / 3 },
      { caption: 'Approved', words: info.approvedBy, share: 1 / 3 },
    ],
    [
      { caption: 'Scale', words: facts.scale, share: 0.5, font: 'bold' },
      { caption: 'Paper', words: facts.paper, share: 0.5 },
    ],
    [
      { caption: 'Date of issue', words: lastDate, share: 0.46 },
      { caption: 'Printed', words: facts.printedAt, share: 0.54 },
    ],
    [
      { caption: 'Sheet', words: facts.number, share: 0.54, font: 'bold', height_mm: sizes.heading_mm },
      { caption: 'Of the set', words: `${facts.index} of ${facts.count}`, share: 0.46, height_mm: sizes.heading_mm },
    ],
  ];

  let bottom = column.bottom;
  for (const row of [...rows].reverse()) {
    const laid = row.map((field) => {
      const height_mm = field.height_mm ?? text_mm;
      const font = field.font ?? 'plain';
      const room = width * field.share - 2 * pad;
      const all = wrapText(printable(field.words), room, height_mm, font);
      const kept = all.length <= mostLines ? all : [...all.slice(0, mostLines - 1), shortened(all.slice(mostLines - 1).join(' '), room, height_mm, font)];
      return { field, height_mm, font, lines: kept };
    });
    const tallest = Math.max(...laid.map(({ lines, height_mm }) => Math.max(1, lines.length) * height_mm * 1.6));
    const rowHeight = pad + note_mm * CAPTION_GAP + tallest + pad * 0.8;
    const top = bottom - rowHeight;
    let left = column.left;
    for (const { field, height_mm, font, lines } of laid) {
      if (left > column.left) marks.push(line(pen(WEIGHT.thin), left, top, left, bottom));
      marks.push(text(left + pad, top + pad + note_mm, field.caption, { height_mm: note_mm, colour: PRINT.quiet }));
      lines.forEach((words, i) => {
        marks.push(text(left + pad, top + pad + note_mm * CAPTION_GAP + (i + 1) * height_mm * 1.6 - height_mm * 0.3, words, { height_mm, font }));
      });
      if (lines.length === 0) {
        const y = bottom - pad * 1.1;
        marks.push(line(pen(WEIGHT.hair, PRINT.faint, [0.4, 1]), left + pad, y, left + width * field.share - pad, y));
      }
      left += width * field.share;
    }
    marks.push(line(pen(WEIGHT.thin), column.left, top, column.right, top));
    bottom = top;
  }
  bottom = drawRevisions(layout, info.revisions, bottom, marks);
  bottom = drawStanding(layout, facts, bottom, marks);

  // The stamp space takes what a legend may leave; at best the 4 × 6 in that authorities ask for.
  const least = facts.hasStampBox ? LEAST_STAMP_mm * factor : 0;
  const head = titleHead(layout, facts.titleBlock, facts.logo, Math.max(0, bottom - column.top - least) * MOST_HEAD);
  const top = column.top + head.height_mm;
  const free = bottom - top;
  marks.push(...head.marks);
  if (!facts.hasStampBox) return { marks, free: { top, bottom }, isStampFull: true, stampBottom: bottom - head.height_mm };
  // A legend that has no room here leaves one line that says where it is.
  const kept = legend_mm <= free - least ? legend_mm : Math.min(legend_mm, text_mm * 5);
  const stampHeight = Math.max(Math.min(free, least), Math.min(stampHeight_mm(width, sizes), free - kept));
  const stampTop = bottom - stampHeight;
  marks.push(...stampBox({ left: column.left, top: stampTop, right: column.right, bottom }, sizes, facts.stampAt), line(pen(WEIGHT.thin), column.left, stampTop, column.right, stampTop));
  return { marks, free: { top, bottom: stampTop }, isStampFull: width - 2 * pad >= STAMP_mm.width && stampHeight >= stampHeight_mm(width, sizes) - 1e-6, stampBottom: bottom - head.height_mm };
}

function drawRevisions({ column, sizes }: SheetLayout, revisions: readonly Revision[], bottom: number, marks: Mark[]): number {
  const { factor, note_mm } = sizes;
  const pad = 1.4 * factor;
  const pitch = note_mm * 1.7;
  const shown = 3;
  const latest = revisions.slice(-shown).reverse();
  const markRight = column.left + 11 * factor;
  const dateRight = markRight + 22 * factor;
  const height = pitch * (shown + 1) + pad;
  const top = bottom - height;
  const style = { height_mm: note_mm };
  const row = (i: number): number => top + pad * 0.4 + (i + 0.5) * pitch + note_mm / 2;
  marks.push(
    text(column.left + pad, row(0), 'Rev.', { ...style, colour: PRINT.quiet }),
    text(markRight + pad, row(0), 'Date', { ...style, colour: PRINT.quiet }),
    text(dateRight + pad, row(0), revisions.length > shown ? 'Latest changes' : 'What changed', { ...style, colour: PRINT.quiet }),
  );
  latest.forEach(({ mark, date, text: words }, i) => {
    marks.push(
      text(column.left + pad, row(i + 1), shortened(printable(mark), markRight - column.left - 1.5 * pad, note_mm, 'bold'), { ...style, font: 'bold' }),
      text(markRight + pad, row(i + 1), shortened(printable(date), dateRight - markRight - 1.5 * pad, note_mm, 'plain'), style),
      text(dateRight + pad, row(i + 1), shortened(printable(words), column.right - dateRight - 2 * pad, note_mm, 'plain'), style),
    );
  });
  for (let i = 1; i <= shown; i += 1) marks.push(line(pen(WEIGHT.hair, PRINT.faint), column.left, top + pad * 0.4 + i * pitch, column.right, top + pad * 0.4 + i * pitch));
  for (const x of [markRight, dateRight]) marks.push(line(pen(WEIGHT.hair, PRINT.faint), x, top, x, bottom));
  marks.push(line(pen(WEIGHT.thin), column.left, top, column.right, top));
  return top;
}

/** What stands above the sheet, and, framed, whatever forbids building from it. */
function drawStanding({ column, sizes }: SheetLayout, { isSample, warnings }: TitleFacts, bottom: number, marks: Mark[]): number {
  const { factor, note_mm, text_mm } = sizes;
  const pad = 1.4 * factor;
  const width = column.right - column.left - 2 * pad;
  let foot = bottom;
  const standing = wrapText(STANDING, width, note_mm, 'plain');
  const top = foot - standing.length * note_mm * 1.7 - pad;
  standing.forEach((words, i) => {
    marks.push(text(column.left + pad, top + pad * 0.5 + (i + 0.5) * note_mm * 1.7 + note_mm / 2, words, { height_mm: note_mm }));
  });
  marks.push(line(pen(WEIGHT.thin), column.left, top, column.right, top));
  foot = top;
  const forbidding = [...(isSample ? [SAMPLE_STAMP] : []), ...warnings];
  for (const words of forbidding) {
    const lines = wrapText(printable(words), width - 2 * pad, text_mm, 'bold');
    const height = lines.length * text_mm * 1.7 + 2 * pad;
    const boxTop = foot - height - pad;
    marks.push(box(pen(WEIGHT.heavy), column.left + pad, boxTop, width, height));
    lines.forEach((part, i) => {
      marks.push(text((column.left + column.right) / 2, boxTop + pad + (i + 0.5) * text_mm * 1.7 + text_mm / 2, part, { height_mm: text_mm, font: 'bold', align: 'middle' }));
    });
    foot = boxTop - pad * 0.6;
    marks.push(line(pen(WEIGHT.thin), column.left, foot, column.right, foot));
  }
  return foot;
}
