import type { Verdict } from '../rules/finding.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import { box, line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { FontName, FormCell, Mark, SheetField } from './sheet.ts';
import { verdictMark } from './symbols.ts';
import { wordsIn, wrapText } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';

/** A drawing from its top left corner. */
export interface Drawing {
  readonly kind: 'drawing';
  readonly width_mm: number;
  readonly height_mm: number;
  readonly draw: (x: number, y: number) => readonly Mark[];
}

/** What stands in a cell: words, words that are looked for first or run over further columns, the mark of a verdict, an empty field to write in, or a drawing. */
export type Cell = string | { readonly kind: 'bold'; readonly words: string } | { readonly kind: 'over'; readonly words: string; readonly columns: number; readonly isBold: boolean } | { readonly kind: 'verdict'; readonly verdict: Verdict } | { readonly kind: 'field'; /** How it is filled in on a screen. */ readonly form?: FormCell } | Drawing;

/** What stands below the rows of a table, over its whole width: a sentence, or drawings side by side. */
export type Foot = { readonly kind: 'words'; readonly words: string; readonly isStrong?: boolean; /** Where something comes from, not what must be known. */ readonly isSmall?: boolean } | { readonly kind: 'drawings'; readonly drawings: readonly Drawing[] };

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right' | 'middle';
  readonly font?: FontName;
  /** Least width [mm at factor 1]: for fields to write in. */
  readonly least_mm?: number;
  /** Longer words are wrapped rather than taking more width [mm at factor 1]. */
  readonly most_mm?: number;
  /** Takes the width that the other columns leave. */
  readonly isWide?: boolean;
}

/** A table as content; `layTable` gives it measures. */
export interface Table {
  readonly title: string;
  /** How the sheet's own title calls it, when its title is too long for that. */
  readonly shortTitle?: string;
  /** A sentence under the title. */
  readonly note?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Without headings and rules, for lists of sentences. */
  readonly isPlain?: boolean;
  /** Rows close together. */
  readonly isTight?: boolean;
  /** So many columns from the left say their last words again where the table goes on: rows below leave them blank. */
  readonly repeated?: number;
  /** Height of a row that is written in by hand [mm]. */
  readonly rowHeight_mm?: number;
  /** Says on every sheet, beside the title, which form this is. */
  readonly identity?: FormCell;
  readonly foot?: readonly Foot[];
  /** Row by row: the place of the set that its words lead to, and the name by which other texts lead to the row; see `placeName`. */
  readonly links?: readonly { readonly goesTo?: string; readonly place?: string }[];
}

/** A piece of a table that is never parted, drawn from its top left corner. */
export interface LaidRow {
  readonly height_mm: number;
  readonly draw: (x: number, y: number) => Mark[];
  /** Fields of it to be filled in on a screen. */
  readonly fields?: (x: number, y: number) => SheetField[];
  /** How it is laid as the first row where the table goes on. */
  readonly again?: LaidRow;
}

/** A table with measures: the head is repeated wherever the table goes on. */
export interface LaidTable {
  /** How the sheet's own title calls it. */
  readonly title: string;
  readonly width_mm: number;
  readonly titleRow: (isContinued: boolean) => LaidRow;
  readonly head: LaidRow;
  readonly rows: readonly LaidRow[];
  /** How many of the rows stand below the table and need no head over them. */
  readonly footRows: number;
}

const PITCH = 1.72;
const PAD_mm = 1.1;
/** A longer word is broken inside rather than taking the other columns' paper [mm at factor 1]. */
const LONGEST_WORD_mm = 26;

const wordsOf = (cell: Cell): string => printable(typeof cell === 'string' ? cell : 'words' in cell ? cell.words : '');
const isWords = (cell: Cell): boolean => typeof cell === 'string' || cell.kind === 'bold';
const isBold = (cell: Cell): boolean => typeof cell !== 'string' && (cell.kind === 'bold' || (cell.kind === 'over' && cell.isBold));
const fontOf = (cell: Cell, column: Column | undefined): FontName => (isBold(cell) ? 'bold' : (column?.font ?? 'plain'));
const columnsOf = (cell: Cell): number => (typeof cell !== 'string' && cell.kind === 'over' ? cell.columns : 1);
const longestWord = (words: string, height: number, font: FontName): number => Math.max(0, ...wordsIn(words).map((word) => textWidth_mm(word, height, font)));

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/**
 * Shares a width among columns. With enough paper each gets its natural width and the wide ones the rest;
 * with less, each gets its least width and a part of the rest in proportion to what it lacks.
 * @returns widths whose sum is `total`
 */
export function shareWidth(natural: readonly number[], least: readonly number[], isWide: readonly boolean[], total: number): number[] {
  const spare = total - sumOf(natural);
  if (spare >= 0) {
    const wide = isWide.filter(Boolean).length;
    return natural.map((width, i) => width + (wide === 0 ? spare / natural.length : isWide[i] ? spare / wide : 0));
  }
  const over = total - sumOf(least);
  if (over <= 0) return least.map((width) => (width * total) / sumOf(least));
  const lack = natural.map((width, i) => Math.max(0, width - (least[i] ?? 0)));
  return least.map((width, i) => width + (over * (lack[i] ?? 0)) / sumOf(lack));
}

/** Lines of a cell in one row; a longer text goes on in further rows, so that no row outgrows a sheet. */
const MOST_LINES = 14;

/** Measures a table for a width of paper. */
export function layTable(table: Table, width_mm: number, sizes: TypeSizes): LaidTable {
  const { factor } = sizes;
  const height = sizes.text_mm;
  const pad = PAD_mm * factor;
  const columns = table.columns;
  const cellWidth = (cell: Cell, font: FontName): number => {
    if (isWords(cell)) return textWidth_mm(wordsOf(cell), height, font);
    if (typeof cell !== 'string' && cell.kind === 'verdict') return height * 1.4;
    return typeof cell !== 'string' && cell.kind === 'drawing' ? cell.width_mm : 0;
  };
  const natural = columns.map((column, i) => {
    const { head, least_mm, most_mm } = column;
    const most = most_mm === undefined ? Number.POSITIVE_INFINITY : most_mm * factor;
    const cells = table.rows.map((row) => Math.min(most, cellWidth(row[i] ?? '', fontOf(row[i] ?? '', column))));
    const heading = table.isPlain ? 0 : textWidth_mm(head, height, 'bold');
    return Math.max(heading, (least_mm ?? 0) * factor, ...cells) + 2 * pad;
  });
  const least = columns.map((column, i) => {
    const { head, least_mm } = column;
    const cells = table.rows.map((row) => {
      const cell = row[i] ?? '';
      return isWords(cell) ? Math.min(longestWord(wordsOf(cell), height, fontOf(cell, column)), LONGEST_WORD_mm * factor) : cellWidth(cell, 'plain');
    });
    return Math.max(table.isPlain ? 0 : longestWord(head, height, 'bold'), (least_mm ?? 0) * factor, ...cells) + 2 * pad;
  });
  const widths = shareWidth(natural, least, columns.map(({ isWide }) => isWide ?? false), width_mm);
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, width) => sum + width, 0));

  const written = (lines: readonly string[], i: number, x: number, y: number, font: FontName, rowHeight: number): Mark[] => {
    const { align = 'left' } = columns[i] ?? {};
    const left = x + (lefts[i] ?? 0);
    const width = widths[i] ?? 0;
    const at = align === 'left' ? left + pad : align === 'right' ? left + width - pad : left + width / 2;
    const block = lines.length * height * PITCH;
    const top = table.rowHeight_mm ? y + (rowHeight - block) / 2 : y + (table.isTight ? pad * 0.25 : pad * 0.5);
    return lines.map((words, k) => text(at, top + (k + 0.5) * height * PITCH + height / 2, words, { height_mm: height, font, align }));
  };

  const layRow = (cells: readonly Cell[], fontAt: (i: number) => FontName): LaidRow[] => {
    const lines = columns.map((_, i) => {
      const cell = cells[i] ?? '';
      const words = wordsOf(cell);
      return words === '' ? [] : wrapText(words, sumOf(widths.slice(i, i + columnsOf(cell))) - 2 * pad, height, fontAt(i));
    });
    const parts = Math.max(1, Math.ceil(Math.max(0, ...lines.map((list) => list.length)) / MOST_LINES));
    return Array.from({ length: parts }, (_, part) => {
      const shown = lines.map((list) => list.slice(part * MOST_LINES, (part + 1) * MOST_LINES));
      return layLines(part === 0 ? cells : [], shown, fontAt);
    });
  };

  const layLines = (cells: readonly Cell[], lines: readonly (readonly string[])[], fontAt: (i: number) => FontName): LaidRow => {
    const drawings = cells.map((cell) => (typeof cell !== 'string' && cell.kind === 'drawing' ? cell.height_mm : 0));
    const most = Math.max(1, ...lines.map((list) => list.length));
    const between = table.isTight ? pad * 0.5 : pad;
    const rowHeight = Math.max(most * height * PITCH + between, table.rowHeight_mm ?? 0, ...drawings.map((tall) => tall + between));
    return {
      height_mm: rowHeight,
      draw: (x, y) => {
        const marks = lines.flatMap((list, i) => written(list, i, x, y, fontAt(i), rowHeight));
        cells.forEach((cell, i) => {
          if (typeof cell === 'string') return;
          const left = x + (lefts[i] ?? 0);
          if (cell.kind === 'verdict') marks.push(...verdictMark(left + (widths[i] ?? 0) / 2, y + pad * 0.5 + height * PITCH * 0.5, height * 1.25, cell.verdict));
          if (cell.kind === 'drawing') marks.push(...cell.draw(left + pad, y + (rowHeight - cell.height_mm) / 2));
          if (cell.kind === 'field' && cell.form?.kind === 'tick') marks.push(tickBox(cell.form, left, y, widths[i] ?? 0, rowHeight).mark);
        });
        return marks;
      },
      fields: (x, y) =>
        cells.flatMap((cell, i) => {
          if (typeof cell === 'string' || cell.kind !== 'field' || !cell.form) return [];
          const [left, width] = [x + (lefts[i] ?? 0), widths[i] ?? 0];
          return [cell.form.kind === 'tick' ? tickBox(cell.form, left, y, width, rowHeight).field : { ...cell.form, x: left, y, width_mm: width, height_mm: rowHeight }];
        }),
    };
  };

  const ruled = (row: LaidRow, isFirst: boolean): LaidRow => {
    if (table.isPlain) return row;
    return {
      ...row,
      draw: (x, y) => [
        ...(isFirst ? [box(pen(WEIGHT.hair, PRINT.tableBand), x, y, width_mm, row.height_mm, PRINT.tableBand)] : []),
        ...row.draw(x, y),
        line(pen(isFirst ? WEIGHT.medium : WEIGHT.hair, isFirst ? PRINT.ink : PRINT.faint), x, y + row.height_mm, x + width_mm, y + row.height_mm),
        ...(table.rowHeight_mm ? lefts.slice(1).map((left) => line(pen(WEIGHT.hair, PRINT.faint), x + left, y, x + left, y + row.height_mm)) : []),
      ],
    };
  };

  const titleRow = (isContinued: boolean): LaidRow => {
    const title = isContinued ? `${table.title} (continued)` : table.title;
    const titleLines = table.title === '' ? [] : wrapText(printable(title), width_mm, sizes.heading_mm, 'bold');
    const noteLines = table.note && !isContinued ? wrapText(printable(table.note), width_mm, sizes.note_mm, 'plain') : [];
    const titleHeight = titleLines.length * sizes.heading_mm * 1.5;
    const gap = 1.6 * factor;
    const { identity } = table;
    return {
      ...(identity ? { fields: (x, y) => [identityField(identity, x + width_mm, y, sizes)] } : {}),
      height_mm: titleHeight + noteLines.length * sizes.note_mm * PITCH + gap,
      draw: (x, y) => [
        ...titleLines.map((words, i) => text(x, y + sizes.heading_mm * (1.1 + i * 1.5), words, { height_mm: sizes.heading_mm, font: 'bold' })),
        ...noteLines.map((words, i) => text(x, y + titleHeight + (i + 0.8) * sizes.note_mm * PITCH, words, { height_mm: sizes.note_mm, colour: PRINT.quiet })),
        ...(table.title === '' ? [] : [line(pen(WEIGHT.wide), x, y + titleHeight + noteLines.length * sizes.note_mm * PITCH + gap * 0.8, x + width_mm, y + titleHeight + noteLines.length * sizes.note_mm * PITCH + gap * 0.8)]),
      ],
    };
  };
  const [headRow] = layRow(columns.map(({ head: words }) => words), () => 'bold');
  const head = table.isPlain || !headRow ? { height_mm: 0, draw: () => [] } : ruled(headRow, true);
  const laidAt = (row: readonly Cell[], index: number): LaidRow[] => layRow(row, (i) => fontOf(row[i] ?? '', columns[i])).map((part, k) => linked(ruled(part, false), table.links?.[index], k === 0));
  const rows = table.rows.flatMap((row, index) => {
    const [first, ...others] = laidAt(row, index);
    const full = withRepeated(table, index);
    const again = full === row ? undefined : laidAt(full, index)[0];
    return first ? [again ? { ...first, again } : first, ...others] : [];
  });
  const feet = (table.foot ?? []).flatMap((foot) => layFoot(foot, width_mm, sizes));
  return { title: table.shortTitle ?? table.title, width_mm, titleRow, head, rows: [...rows, ...feet], footRows: feet.length };
}

/** A row with the words of the rows above it in the columns that it leaves blank and that are repeated. */
function withRepeated({ rows, repeated = 0 }: Table, index: number): readonly Cell[] {
  const row = rows[index] ?? [];
  if (!row.slice(0, repeated).includes('')) return row;
  const said = (column: number): Cell => rows.slice(0, index).map((above) => above[column] ?? '').findLast((cell) => cell !== '') ?? '';
  return row.map((cell, i) => (i < repeated && cell === '' ? said(i) : cell));
}

/** Side of a box to be ticked [mm]. */
const TICK_mm = 5.6;

/** A box in the middle of a cell, as it is printed and as it is ticked on a screen. */
function tickBox(form: FormCell, left: number, top: number, width_mm: number, height_mm: number): { readonly mark: Mark; readonly field: SheetField } {
  const [x, y] = [left + (width_mm - TICK_mm) / 2, top + (height_mm - TICK_mm) / 2];
  return { mark: box(pen(WEIGHT.medium), x, y, TICK_mm, TICK_mm), field: { ...form, x, y, width_mm: TICK_mm, height_mm: TICK_mm } };
}

/** Which form it is, ending at the right edge of the table's title. */
function identityField(form: FormCell, right: number, y: number, { note_mm, heading_mm }: TypeSizes): SheetField {
  const width_mm = textWidth_mm(printable(form.value), note_mm, 'plain') + 2 * note_mm;
  return { ...form, x: right - width_mm, y, width_mm, height_mm: heading_mm * 1.5 };
}

/** A row whose words lead to a place of the set, and whose first words are a place themselves. */
function linked(row: LaidRow, link: NonNullable<Table['links']>[number] | undefined, isFirst: boolean): LaidRow {
  if (!link) return row;
  return {
    ...row,
    draw: (x, y) => {
      const marks = row.draw(x, y);
      const first = marks.find(({ kind }) => kind === 'text');
      const { goesTo, place } = link;
      return marks.map((mark) => (mark.kind === 'text' ? { ...mark, ...(goesTo === undefined ? {} : { goesTo }), ...(isFirst && mark === first && place !== undefined ? { place } : {}) } : mark));
    },
  };
}

/** Lays what stands below a table; a sentence that is longer than a sheet goes on in further rows. */
function layFoot(foot: Foot, width_mm: number, sizes: TypeSizes): LaidRow[] {
  const gap = PAD_mm * sizes.factor;
  if (foot.kind === 'drawings') {
    const between = 4 * sizes.factor;
    const tall = Math.max(0, ...foot.drawings.map(({ height_mm }) => height_mm));
    const draw = (x: number, y: number): Mark[] => {
      let left = x;
      return foot.drawings.flatMap((drawing) => {
        const marks = drawing.draw(left, y + gap);
        left += drawing.width_mm + between;
        return [...marks];
      });
    };
    return [{ height_mm: tall + 2 * gap, draw }];
  }
  const height = foot.isSmall ? sizes.note_mm : sizes.text_mm;
  const font: FontName = foot.isStrong ? 'bold' : 'plain';
  const lines = wrapText(printable(foot.words), width_mm, height, font);
  const parts = Math.max(1, Math.ceil(lines.length / MOST_LINES));
  return Array.from({ length: parts }, (_, part) => {
    const shown = lines.slice(part * MOST_LINES, (part + 1) * MOST_LINES);
    return {
      height_mm: shown.length * height * PITCH + gap * 0.4,
      draw: (x, y) => shown.map((words, i) => text(x, y + gap * 0.4 + (i + 0.8) * height * PITCH, words, { height_mm: height, font, colour: foot.isSmall ? PRINT.quiet : PRINT.ink })),
    };
  });
}

/** Height of a laid table from its title to its last row [mm]. */
export const tableHeight_mm = ({ titleRow, head, rows }: LaidTable): number => titleRow(false).height_mm + head.height_mm + rows.reduce((sum, row) => sum + row.height_mm, 0);

/** Draws a whole table from its top left corner. */
export function drawTable(table: LaidTable, x: number, y: number): Mark[] {
  const marks: Mark[] = [];
  let top = y;
  for (const row of [table.titleRow(false), table.head, ...table.rows]) {
    marks.push(...row.draw(x, top));
    top += row.height_mm;
  }
  return marks;
}
