import { SERIES_TITLES } from './series.ts';
import type { Cell, Table } from './tables.ts';

/** A sheet as the index names it. */
export interface IndexedSheet {
  readonly series: number;
  readonly number: string;
  readonly title: string;
  readonly scale: string;
}

/** Every sheet of the set by number and title, in its series. */
export function sheetIndex(sheets: readonly IndexedSheet[]): Table {
  return {
    title: 'Index of sheets',
    shortTitle: 'Index',
    columns: [{ head: 'Sheet', font: 'bold' }, { head: 'Title', isWide: true }, { head: 'Scale', least_mm: 22 }],
    rows: SERIES_TITLES.flatMap((title, series) => {
      const own = sheets.filter((sheet) => sheet.series === series);
      if (own.length === 0) return [];
      return [[String(series).padStart(2, '0'), { kind: 'bold', words: title }, ''] as Cell[], ...own.map((sheet): Cell[] => [sheet.number, sheet.title, sheet.scale])];
    }),
    isTight: true,
  };
}
