import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flowTables } from '#shared/sheets/flow';
import type { TextMark } from '#shared/sheets/marks';
import { PAPERS } from '#shared/paper/papers';
import type { Mark } from '#shared/sheets/sheet';
import { type Drawing, type Table, drawTable, layTable, shareWidth, tableHeight_mm } from '#shared/sheets/tables';
import { boxHolds, markBox } from '#shared/sheets/text-box';
import { typeSizesOf } from '#shared/paper/type-sizes';

const SIZES = typeSizesOf(PAPERS.A3);
const table = (rows: number, words = 'some words'): Table => ({
  title: 'Things',
  note: 'What they are.',
  columns: [{ head: 'No.', align: 'right' }, { head: 'What', isWide: true }],
  rows: Array.from({ length: rows }, (_, i) => [String(i + 1), `${words} ${i + 1}`]),
});
const texts = (marks: readonly Mark[]): string[] => marks.filter((mark): mark is TextMark => mark.kind === 'text').map(({ text }) => text);

describe('tables', () => {
  test('column widths add up to the table’s, and none is below its least while there is room', () => {
    const width = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(width, width, fc.boolean()), { minLength: 1, maxLength: 9 }), fc.double({ min: 20, max: 500, noNaN: true }), (columns, total) => {
        const least = columns.map(([a, b]) => Math.min(a, b));
        const natural = columns.map(([a, b]) => Math.max(a, b));
        const shared = shareWidth(natural, least, columns.map(([, , isWide]) => isWide), total);
        expect(shared.reduce((sum, one) => sum + one, 0)).toBeCloseTo(total, 6);
        if (least.reduce((sum, one) => sum + one, 0) <= total) expect(shared.filter((one, i) => one < (least[i] ?? 0) - 1e-6)).toEqual([]);
      }),
    );
  });

  test('a table that goes on says again what its first rows there leave blank', () => {
    const rooms: Table = { title: 'Rooms', columns: [{ head: 'Of' }, { head: 'What' }], rows: Array.from({ length: 30 }, (_, i) => [i % 10 === 0 ? `Room ${i / 10 + 1}` : '', `row ${i + 1}`]), repeated: 1 };
    const pages = flowTables([{ table: rooms, span: 'full' }], { left: 0, top: 0, right: 120, bottom: 90 }, 1, SIZES);
    expect(pages.length).toBeGreaterThan(1);
    const all = rooms.rows.map(([, what]) => what);
    expect(pages.flatMap(({ marks }) => texts(marks).filter((words) => words.startsWith('row ')))).toEqual(all);
    for (const { marks } of pages) {
      const said = texts(marks);
      const first = Number(said.find((words) => words.startsWith('row '))?.slice(4));
      expect(said.find((words) => words.startsWith('Room '))).toBe(`Room ${Math.floor((first - 1) / 10) + 1}`);
    }
  });

  test('a drawn table keeps within its width and height', () => {
    const laid = layTable(table(8, 'a long sentence that has to be broken into lines to stay inside its narrow column'), 60, SIZES);
    const marks = drawTable(laid, 10, 20);
    const room = { left: 9.7, top: 20, right: 70.3, bottom: 20 + tableHeight_mm(laid) + 0.3 };
    for (const mark of marks) expect(boxHolds(room, markBox(mark)), JSON.stringify(mark)).toBe(true);
  });

  test('an empty cell, a mark, a drawing and a field need no words', () => {
    const laid = layTable({ title: '', columns: [{ head: 'a' }, { head: 'b' }], rows: [['', { kind: 'verdict', verdict: 'stop' }], [{ kind: 'field' }, { kind: 'drawing', width_mm: 5, height_mm: 12, draw: () => [] }]] }, 40, SIZES);
    expect(laid.rows[1]?.height_mm).toBeGreaterThan(12);
    expect(texts(drawTable(laid, 0, 0))).toEqual(['a', 'b']);
  });

  test('a very long cell goes on in further rows and loses nothing', () => {
    const words = Array.from({ length: 900 }, (_, i) => `w${i}`).join(' ');
    const laid = layTable({ title: 'Long', columns: [{ head: 'a' }, { head: 'b' }], rows: [['x', words]] }, 100, SIZES);
    expect(laid.rows.length).toBeGreaterThan(3);
    expect(texts(drawTable(laid, 0, 0)).join(' ')).toContain('w899');
    for (const row of laid.rows) expect(row.height_mm).toBeLessThan(80);
  });

  test('words that run over further columns take their width, and what is looked for first is bold', () => {
    const long = 'a result that has no formula beside it and so takes the room of both columns';
    const columns = [{ head: 'a' }, { head: 'b' }, { head: 'c' }];
    const [over, plain] = [[{ kind: 'over', words: long, columns: 2, isBold: false }, '', 'end'], [long, '', 'end']] as const;
    const laid = (row: Table['rows'][number]) => layTable({ title: 'T', columns, rows: [row, ['x', 'something as wide as this', 'y']] }, 90, SIZES).rows[0]?.height_mm ?? 0;
    expect(laid(over)).toBeLessThanOrEqual(laid(plain));
    const marks = drawTable(layTable({ title: 'T', columns, rows: [['x', { kind: 'bold', words: '24.13 kg' }, 'y']] }, 90, SIZES), 0, 0);
    expect(marks.find((mark) => mark.kind === 'text' && mark.text === '24.13 kg')).toMatchObject({ font: 'bold' });
  });

  test('a column with a greatest width wraps rather than taking the others’ paper', () => {
    const wide = (most_mm?: number) => layTable({ title: 'T', columns: [{ head: 'a', isWide: true }, { head: 'b', ...(most_mm === undefined ? {} : { most_mm }) }], rows: [['x', 'a rather long sentence that could stand on one line']] }, 140, SIZES).rows[0]?.height_mm ?? 0;
    expect(wide(30)).toBeGreaterThan(wide());
  });

  test('below a table stand sentences over its whole width and drawings side by side', () => {
    const drawing: Drawing = { kind: 'drawing', width_mm: 40, height_mm: 20, draw: (x, y) => [{ kind: 'circle', x, y, radius_mm: 1 }] };
    const laid = layTable({ ...table(1), foot: [{ kind: 'drawings', drawings: [drawing, drawing] }, { kind: 'words', words: 'Caution: mind it.' }, { kind: 'words', words: 'Note 1: a book.', isSmall: true }] }, 100, SIZES);
    expect(laid.footRows).toBe(3);
    const marks = drawTable(laid, 5, 0);
    expect(marks.flatMap((mark) => (mark.kind === 'circle' ? [mark.x] : []))).toEqual([5, 49]);
    expect(texts(marks).slice(-2)).toEqual(['Caution: mind it.', 'Note 1: a book.']);
  });
});

describe('flow', () => {
  const sheet = { left: 0, top: 0, right: 200, bottom: 120 };

  test('what stands below a table goes on without its head', () => {
    const foot = Array.from({ length: 40 }, (_, i) => ({ kind: 'words', words: `Caution ${i + 1}.` }) as const);
    const pages = flowTables([{ table: { ...table(1), foot }, span: 'full' }], sheet, 2, SIZES);
    expect(pages.length).toBeGreaterThan(1);
    const all = pages.map(({ marks }) => texts(marks));
    expect(all.flat().filter((words) => words.startsWith('Caution'))).toHaveLength(40);
    expect(all.slice(1).every((words) => !words.includes('What'))).toBe(true);
  });

  test('a table that is too long goes on, its head repeated, no row lost or parted', () => {
    const pages = flowTables([{ table: table(60), span: 'full' }], sheet, 2, SIZES);
    expect(pages.length).toBeGreaterThan(1);
    const all = pages.flatMap(({ marks }) => texts(marks));
    for (let i = 1; i <= 60; i += 1) expect(all.filter((words) => words === `some words ${i}`)).toHaveLength(1);
    expect(all.filter((words) => words === 'Things (continued)')).toHaveLength(pages.length - 1);
    expect(all.filter((words) => words === 'What')).toHaveLength(pages.length);
    for (const { marks } of pages) for (const mark of marks) expect(boxHolds({ left: -1, top: -1, right: 201, bottom: 121 }, markBox(mark))).toBe(true);
  });

  test('the last row never goes to another sheet alone', () => {
    for (let rows = 10; rows < 40; rows += 1) {
      const pages = flowTables([{ table: table(rows), span: 'full' }], sheet, 2, SIZES);
      const last = texts(pages.at(-1)?.marks ?? []).filter((words) => words.startsWith('some words'));
      expect(last.length, `${rows} rows`).toBeGreaterThan(1);
    }
  });

  test('narrow tables run down one column, then the next, before a new sheet', () => {
    const pages = flowTables([{ table: table(30), span: 'column' }], sheet, 2, SIZES);
    expect(pages).toHaveLength(1);
    const lefts = new Set(pages.flatMap(({ marks }) => marks.filter((mark): mark is TextMark => mark.kind === 'text' && mark.text.startsWith('some')).map(({ x }) => Math.round(x))));
    expect(lefts.size).toBe(2);
  });

  test('a flow begins on what another sheet has left, or leaves it when nothing fits', () => {
    const begun = flowTables([{ table: table(3), span: 'full' }], sheet, 1, SIZES, [{ ...sheet, top: 60 }]);
    expect(begun).toHaveLength(1);
    expect(Math.min(...(begun[0]?.marks ?? []).map((mark) => markBox(mark).top))).toBeGreaterThan(59);
    const left = flowTables([{ table: table(3), span: 'full' }], sheet, 1, SIZES, [{ ...sheet, top: 118 }]);
    expect(left.map(({ titles }) => titles)).toEqual([[], ['Things']]);
  });

  test('what several sheets have left is filled one after the other, and takes no part of a table that a sheet keeps whole', () => {
    const low = { ...sheet, top: 85 };
    const [small, large] = [table(1), { ...table(12), title: 'Many' }];
    const titlesOf = (tables: readonly Table[], begins: readonly (typeof sheet)[]) => flowTables(tables.map((each) => ({ table: each, span: 'full' as const })), sheet, 1, SIZES, begins).map(({ titles }) => titles);
    expect(titlesOf([small], [{ ...sheet, top: 118 }, low])).toEqual([[], ['Things']]);
    expect(titlesOf([small, { ...small, title: 'More' }], [low, low])).toEqual([['Things'], ['More']]);
    expect(titlesOf([large], [{ ...sheet, top: 60 }])).toEqual([[], ['Many']]);
  });

  test('nothing to flow is one empty page', () => {
    expect(flowTables([], sheet, 2, SIZES)).toEqual([{ marks: [], fields: [], titles: [] }]);
  });
});
