/** A line of a table with the number of the line it begins on. */
export interface TableLine {
  readonly line: number;
  readonly cells: readonly string[];
}

/** Signs that part the cells of a table. */
export const PARTINGS = [',', ';', '\t'] as const;
export type Parting = (typeof PARTINGS)[number];

/**
 * Splits comma-separated text into lines and cells (RFC 4180, with any parting sign and line end). A quote counts only
 * where a cell begins, so that inches such as 9 1/2" need none. A quote that is never closed stands for itself, and so do
 * all behind it.
 * @param mostLines  lines beyond it are left out
 */
export function splitTable(text: string, parting: Parting, mostLines: number): { readonly lines: TableLine[]; readonly hasOpenQuote: boolean } {
  const lines: TableLine[] = [];
  let cells: string[] = [];
  let at = 0;
  let line = 1;
  let begins = 1;
  let hasOpenQuote = false;
  const countLines = (part: string): number => part.split(/\r\n|\r|\n/).length - 1;
  while (at <= text.length && lines.length < mostLines) {
    let cell = '';
    const quotedEnd = text[at] === '"' && !hasOpenQuote ? endOfQuoted(text, at) : undefined;
    if (quotedEnd === null) hasOpenQuote = true;
    if (typeof quotedEnd === 'number') {
      cell = text.slice(at + 1, quotedEnd).replaceAll('""', '"');
      line += countLines(cell);
      at = quotedEnd + 1;
    }
    const rest = endOfCell(text, at, parting);
    cells.push(cell + text.slice(at, rest));
    at = rest;
    if (text[at] === parting) {
      at += 1;
      continue;
    }
    lines.push({ line: begins, cells });
    cells = [];
    if (at >= text.length) break;
    at += text[at] === '\r' && text[at + 1] === '\n' ? 2 : 1;
    line += 1;
    begins = line;
  }
  return { lines: lines.filter((each) => each.cells.some((cell) => cell.trim() !== '')), hasOpenQuote };
}

/** Where a quoted cell that begins at `at` is closed; null: nowhere. */
function endOfQuoted(text: string, at: number): number | null {
  let end = text.indexOf('"', at + 1);
  while (end >= 0 && text[end + 1] === '"') end = text.indexOf('"', end + 2);
  return end < 0 ? null : end;
}

function endOfCell(text: string, at: number, parting: Parting): number {
  let end = at;
  while (end < text.length && text[end] !== parting && text[end] !== '\n' && text[end] !== '\r') end += 1;
  return end;
}
