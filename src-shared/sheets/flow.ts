import type { Mark, SheetField } from './sheet.ts';
import { type LaidRow, type LaidTable, type Table, layTable } from './tables.ts';
import type { PaperBox } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';

/** A table and how wide it may be. */
export interface FlowBlock {
  readonly table: Table;
  /** `full` spans the sheet, `column` one of its columns. */
  readonly span: 'full' | 'column';
}

/** What one sheet got of a flow. */
export interface FlowPage {
  readonly marks: Mark[];
  readonly fields: SheetField[];
  /** Titles of the tables on it, each once. */
  readonly titles: string[];
}

const GAP_mm = 7;

/** Width of one of the columns that tables run down in [mm]. */
export const columnWidth_mm = ({ left, right }: PaperBox, columns: number, { factor }: TypeSizes): number => (right - left - (columns - 1) * GAP_mm * factor) / columns;

/**
 * Lets tables run down sheets: full ones below each other, then those of one column side by side.
 * A table that does not fit goes on where there is room, its head repeated; a row is never parted,
 * unless it alone is higher than a sheet: it then begins a sheet of its own.
 * @param sheet  paper of each sheet
 * @param begins  paper left on the sheets where the flow begins, one after the other; the first pages answered are what they got, maybe nothing
 * @param mayPart  a table begins on what another sheet has left though a sheet of its own would keep it whole
 */
export function flowTables(blocks: readonly FlowBlock[], sheet: PaperBox, columns: number, sizes: TypeSizes, begins: readonly PaperBox[] = [], mayPart = false): FlowPage[] {
  const gap = GAP_mm * sizes.factor;
  let area = begins[0] ?? sheet;
  const width = sheet.right - sheet.left;
  const columnWidth = columnWidth_mm(sheet, columns, sizes);
  const pages: FlowPage[] = [];
  let page: FlowPage = { marks: [], fields: [], titles: [] };
  let top = area.top;
  let column = 0;
  let y = area.top;
  let lowest = area.top;
  let isEmpty = true;

  const turnPage = (): void => {
    if (!isEmpty || pages.length < Math.max(1, begins.length)) pages.push(page);
    area = begins[pages.length] ?? sheet;
    page = { marks: [], fields: [], titles: [] };
    top = area.top;
    column = 0;
    y = area.top;
    lowest = area.top;
    isEmpty = true;
  };
  const nextPlace = (span: FlowBlock['span']): void => {
    if (span === 'column' && column + 1 < columns && !(isEmpty && column === 0)) {
      column += 1;
      y = top;
    } else turnPage();
  };
  const put = (row: LaidRow, span: FlowBlock['span']): void => {
    const left = area.left + (span === 'column' ? column * (columnWidth + gap) : 0);
    page.marks.push(...row.draw(left, y));
    if (row.fields) page.fields.push(...row.fields(left, y));
    y += row.height_mm;
    lowest = Math.max(lowest, y);
    isEmpty = false;
  };
  const fits = (rows: readonly LaidRow[]): boolean => y + rows.reduce((sum, row) => sum + row.height_mm, 0) <= area.bottom + 1e-6;

  const run = (laid: LaidTable, span: FlowBlock['span']): void => {
    // What another sheet has left takes no part of a table that a sheet of its own keeps whole.
    const height = [laid.titleRow(false), laid.head, ...laid.rows].reduce((sum, row) => sum + row.height_mm, 0);
    while (!mayPart && area !== sheet && span === 'full' && y + height > area.bottom && sheet.top + height <= sheet.bottom) turnPage();
    let isContinued = false;
    let rest = [...laid.rows];
    while (rest.length > 0 || !isContinued) {
      const title = laid.titleRow(isContinued);
      const [next, ...others] = rest;
      const first = isContinued ? (next?.again ?? next) : next;
      const least = [title, laid.head, ...(first ? [first] : []), ...others.slice(0, 1)];
      if (!fits(least) && (y > area.top + 1e-6 || area !== sheet)) {
        nextPlace(span);
        continue;
      }
      put(title, span);
      if (rest.length === 0 || rest.length > laid.footRows) put(laid.head, span);
      if (!page.titles.includes(laid.title)) page.titles.push(laid.title);
      isContinued = true;
      if (!first) break;
      put(first, span);
      rest = others;
      // The last row does not go to another sheet alone.
      while (rest[0] && fits(rest.length === 2 ? rest : [rest[0]])) put(rest.shift() ?? first, span);
      if (rest.length > 0) nextPlace(span);
    }
    y += gap;
  };

  let lastSpan: FlowBlock['span'] = 'full';
  for (const { table, span } of blocks) {
    if (span !== lastSpan) {
      if (span === 'column') {
        top = y;
        column = 0;
      } else {
        y = lowest === area.top ? area.top : lowest + gap;
        column = 0;
      }
      lastSpan = span;
    }
    run(layTable(table, span === 'full' ? width : columnWidth, sizes), span);
  }
  if (!isEmpty || pages.length === 0) pages.push(page);
  return pages;
}
