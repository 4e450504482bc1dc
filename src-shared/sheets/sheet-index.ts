import { placeName } from './place-name.ts';
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
  const series = SERIES_TITLES.map((title, i) => ({ title, i, own: sheets.filter((sheet) => sheet.series === i) })).filter(({ own }) => own.length > 0);
  return {
    title: 'Index of sheets',
    shortTitle: 'Index',
    columns: [{ head: 'Sheet', font: 'bold' }, { head: 'Title', isWide: true }, { head: 'Scale', least_mm: 22 }],
    rows: series.flatMap(({ title, i, own }) => [[String(i).padStart(2, '0'), { kind: 'bold', words: title }, ''] as Cell[], ...own.map((sheet): Cell[] => [sheet.number, sheet.title, sheet.scale])]),
    links: series.flatMap(({ own }) => [{}, ...own.map(({ number }) => ({ goesTo: placeName('sheet', number) }))]),
    isTight: true,
  };
}
