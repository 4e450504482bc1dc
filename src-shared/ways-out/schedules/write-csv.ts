import type { WorkbookCell, WorkbookSheet } from '../../workbook/workbook.ts';

/** Tells spreadsheet programs that the text is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** Words that a spreadsheet program would take for a formula get a quote before them, which such programs do not show. */
const guarded = (words: string): string => (/^\s*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(words) ? `'${words}` : words);

function cellText(cell: WorkbookCell): string {
  if (cell === null) return '';
  if (typeof cell !== 'string') return Number.isFinite(cell.number) ? String(Number(cell.number.toFixed(cell.decimals)) + 0) : '';
  const words = guarded(cell);
  return /[",\r\n]/.test(words) || words !== words.trim() ? `"${words.replaceAll('"', '""')}"` : words;
}

/**
 * One table as comma-separated values (RFC 4180): a head row, then the rows; numbers with a point and without thousands.
 * What the workbook says above and below the table stands in it alone, since nothing but rows may be in such a file.
 */
export const writeCsv = ({ columns, rows }: Pick<WorkbookSheet, 'columns' | 'rows'>): string =>
  BYTE_ORDER_MARK + [columns.map(({ head }) => head), ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
