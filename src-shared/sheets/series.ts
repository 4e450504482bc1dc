import type { FlowBlock } from './flow.ts';
import { flowTables } from './flow.ts';
import type { SheetLayout } from './frame.ts';
import type { SheetDraft } from './sheet-draft.ts';
import type { PaperBox } from './text-box.ts';

/** The series of a set in their order. A sheet is numbered in its series, so that a sheet more in one leaves the numbers of the others as they are. */
export const SERIES_TITLES = [
  'Cover',
  'Hazard and site',
  'Nozzle and pipe plans',
  'Reflected ceiling',
  'Sections and cylinder walls',
  'Isometrics',
  'Details',
  'Electrical',
  'Schedules',
  'Calculations',
  'Findings and waivers',
  'Tests and hold points',
  'Field verification',
  'As built',
] as const;

/** One series: its drawn sheets, the paper that the last of them leaves, and the tables that follow. */
export interface Series {
  /** Place in `SERIES_TITLES`. */
  readonly number: number;
  readonly drafts: readonly SheetDraft[];
  /** Paper left on the last drawn sheet, where the tables begin. */
  readonly left?: PaperBox | undefined;
  readonly blocks: readonly FlowBlock[];
}

/** A sheet named after what is on it: the first three in words. */
export function sheetTitle(parts: readonly string[]): string {
  const [first = '', ...others] = parts.slice(0, 3);
  const words = [first, ...others.map((part) => part.charAt(0).toLowerCase() + part.slice(1))].join(', ');
  return parts.length > 3 ? `${words} and more` : words;
}

const holdsSomething = ({ table }: FlowBlock): boolean => table.rows.length > 0 || (table.foot ?? []).length > 0;

/** What the title of a sheet is made of: what is drawn on it, and its tables. */
const titlesOf = ({ title, home, tables = [] }: SheetDraft): string[] => (tables.length === 0 ? [title] : [...(home === undefined ? [] : [home]), ...tables]);

/** The sheets of a series: what is drawn, then its tables, beginning on the paper that the drawings leave. */
export function seriesSheets({ drafts, left, blocks }: Series, { area, tableColumns, sizes }: SheetLayout): SheetDraft[] {
  const held = blocks.filter(holdsSomething);
  if (held.length === 0) return [...drafts];
  const drawn = [...drafts];
  const last = drawn.at(-1);
  const begins = left && last ? [left] : [];
  const pages = flowTables(held, area, tableColumns, sizes, begins);
  if (begins.length > 0 && last) {
    const page = pages.shift();
    if (page && page.titles.length > 0) drawn[drawn.length - 1] = { ...last, home: last.home ?? last.title, title: sheetTitle([...titlesOf(last), ...page.titles]), tables: [...(last.tables ?? []), ...page.titles], marks: [...last.marks, ...page.marks], fields: [...(last.fields ?? []), ...page.fields] };
  }
  const tables = pages
    .filter(({ marks }) => marks.length > 0)
    .map(({ marks, fields, titles }): SheetDraft => ({ title: sheetTitle(titles), tables: titles, scale: 'no scale', marks, fields, hasViews: false, hasPlan: false, used: new Set(), remarks: [] }));
  return [...drawn, ...tables];
}
