import type { PrintedPage, PrintedText } from './printed-set.ts';

/** A row of a printed table, its words by the head of their column; a head that comes twice is told with a 2. */
export type PrintedRow = Readonly<Record<string, string>>;

/** Lines of one cell stand closer than this part of the type size, rows farther apart. */
const ROW_GAP = 1.34;

interface Column {
  readonly head: string;
  readonly left: number;
  readonly right: number;
}

/** The type size of most texts. */
function bodySize(texts: readonly PrintedText[]): number {
  const counts = new Map<number, number>();
  for (const { size } of texts) counts.set(Math.round(size * 100) / 100, (counts.get(Math.round(size * 100) / 100) ?? 0) + 1);
  return [...counts].sort(([, a], [, b]) => b - a)[0]?.[0] ?? 0;
}

/** Parts texts, from the top down, where the paper between them is wider than between lines of a cell. */
function bands(texts: readonly PrintedText[]): PrintedText[][] {
  const out: PrintedText[][] = [];
  let last: PrintedText | undefined;
  for (const text of [...texts].sort((a, b) => b.y - a.y)) {
    if (!last || last.y - text.y > ROW_GAP * Math.max(last.size, text.size)) out.push([]);
    out.at(-1)?.push(text);
    last = text;
  }
  return out;
}

const joined = (texts: readonly PrintedText[]): string => [...texts].sort((a, b) => b.y - a.y || a.x - b.x).map(({ text }) => text).join(' ');

function columnsOf(heads: readonly PrintedText[]): Column[] {
  const groups: PrintedText[][] = [];
  for (const head of [...heads].sort((a, b) => a.x - b.x)) {
    const group = groups.find((others) => others.some((other) => head.x < other.x + other.width && other.x < head.x + head.width));
    if (group) group.push(head);
    else groups.push([head]);
  }
  const seen = new Map<string, number>();
  return groups.map((group) => {
    const words = joined(group);
    const count = (seen.get(words) ?? 0) + 1;
    seen.set(words, count);
    return { head: count > 1 ? `${words} ${count}` : words, left: Math.min(...group.map(({ x }) => x)), right: Math.max(...group.map(({ x, width }) => x + width)) };
  });
}

function nearest(columns: readonly Column[], { x, width }: PrintedText): string {
  const away = ({ left, right }: Column): number => Math.min(Math.abs(x - left), Math.abs(x + width - right), Math.abs(x + width / 2 - (left + right) / 2));
  return [...columns].sort((a, b) => away(a) - away(b))[0]?.head ?? '';
}

/** The tables of a page: what stands level on it, their titles, and the rows of those that were asked for. */
interface PageTables {
  readonly level: readonly PrintedText[];
  readonly titles: readonly PrintedText[];
  readonly rows: Map<PrintedText, PrintedRow[]>;
}

const known = new WeakMap<PrintedPage['texts'], PageTables>();

function tablesOf({ texts }: PrintedPage): PageTables {
  const before = known.get(texts);
  if (before) return before;
  const level = texts.filter(({ turn_deg }) => turn_deg === 0);
  const body = bodySize(level);
  // Heads of columns stand a little in under their title; names on drawings have none.
  const titles = level.filter(({ size, x, y }) => size > 1.2 * body && level.some((text) => text.y < y && text.y > y - 7 * body && text.x - x > 0.25 * body && text.x - x < 0.4 * body));
  const tables = { level, titles, rows: new Map<PrintedText, PrintedRow[]>() };
  known.set(texts, tables);
  return tables;
}

/** Rows of every table of a set with this title, in their order, those that go on elsewhere too. */
export function tableRows(pages: readonly PrintedPage[], title: string | ((title: string) => boolean)): PrintedRow[] {
  const isMeant = typeof title === 'string' ? (words: string): boolean => words === title : title;
  return pages.flatMap((page) => {
    const { level, titles, rows } = tablesOf(page);
    const asked = titles.filter(({ text }) => isMeant(text.replace(/ \(continued\)$/, '')));
    // Down one column of the sheet, then down the next.
    return asked.sort((a, b) => (Math.abs(a.x - b.x) < 2 ? b.y - a.y : a.x - b.x)).flatMap((heading) => {
      const own = rows.get(heading) ?? rowsUnder(heading, titles, level);
      rows.set(heading, own);
      return own;
    });
  });
}

function rowsUnder(heading: PrintedText, titles: readonly PrintedText[], level: readonly PrintedText[]): PrintedRow[] {
  const below = titles.filter(({ x, y }) => Math.abs(x - heading.x) < 2 && y < heading.y - 1).sort((a, b) => b.y - a.y)[0];
  const bottom = below ? below.y + below.size : 0;
  // A table beside it begins where another title does; the title column of the sheet at its first small head.
  const frame = level.find(({ text }) => text === 'Of the set');
  const sheet = level.find(({ text, y }) => text === 'Sheet' && frame && Math.abs(y - frame.y) < 2);
  const goesOnBeside = (x: number): boolean => level.some((text) => text.y < heading.y && text.y > bottom && text.x - x >= 0 && text.x - x < 0.4 * text.size);
  const beside = titles.filter(({ text, x, y }) => x > heading.x + 30 && y > bottom && (y <= heading.y + 2 || text === `${heading.text} (continued)` || goesOnBeside(x))).map(({ x }) => x);
  const right = Math.min(sheet ? sheet.x - 5 : Infinity, ...beside.map((x) => x - 1));
  const own = level.filter(({ x, y, size }) => x > heading.x - 1 && x < right && y < heading.y - size * 0.5 && y > bottom);
  const all = bands(own);
  const first = all.findIndex((band) => band.every(({ x }) => Math.abs(x - heading.x) > 1));
  const columns = columnsOf(all[first] ?? []);
  const rows: PrintedRow[] = [];
  for (const band of all.slice(first + 1)) {
    // Sentences under a table begin at its edge, cells a little in.
    if (first < 0 || band.some(({ x }) => Math.abs(x - heading.x) < 1)) break;
    const cells = new Map<string, PrintedText[]>();
    for (const text of band) {
      const head = nearest(columns, text);
      cells.set(head, [...(cells.get(head) ?? []), text]);
    }
    rows.push(Object.fromEntries([...cells].map(([head, texts]) => [head, joined(texts)])));
  }
  return rows;
}

/** Lines of a sum of a thing; several that are alike stand under one title with all their names. */
export const sumLines = (pages: readonly PrintedPage[], sum: string, of: string): PrintedRow[] =>
  tableRows(pages, (title) => title.startsWith(`${sum}: `) && (title.slice(sum.length + 2) === of || title.slice(sum.length + 2).split(', ').includes(of)));

/** The rows of the field sheet, room by room: each is called by its thing and a letter, what is drawn below a table is not. */
export const fieldRows = (pages: readonly PrintedPage[]): PrintedRow[] => tableRows(pages, (title) => title.startsWith('Field verification')).filter((row) => / [a-z]+$/.test(row['Dim.'] ?? ''));

/** The words of a line of a calculation behind what it is: those that run over its empty columns too. */
export const resultOf = (row: PrintedRow | undefined): string | undefined => row?.Result ?? row?.['With numbers'] ?? row?.Formula;
