import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type WorkbookCell, type WorkbookSheet, figure } from '#shared/workbook/workbook';
import { writeXlsx } from '#shared/workbook/write-xlsx';
import { readXlsx } from '../../support/xlsx-reading.ts';

const sheetOf = (rows: readonly (readonly WorkbookCell[])[], part: Partial<WorkbookSheet> = {}): WorkbookSheet => ({
  name: 'Pipe', title: 'Pipe of a hut', warnings: ['Invented'], columns: [{ head: 'What', width: 20 }, { head: 'How much', width: 9 }], rows, notes: ['Measure first.'], ...part,
});
const readOf = (...sheets: WorkbookSheet[]) => readXlsx(writeXlsx({ sheets }));

describe('an .xlsx file, read by other means', () => {
  test('holds title, warnings, head, rows and notes, with everything down to the head frozen', () => {
    const [sheet] = readOf(sheetOf([['Elbow', figure(3, 0)], ['Tee', null]]));
    expect(sheet).toMatchObject({ name: 'Pipe', frozen: 3, widths: [20, 9], hasFormula: false });
    expect(sheet?.rows).toEqual([['Pipe of a hut'], ['Invented'], ['What', 'How much'], ['Elbow', 3], ['Tee'], [], ['Measure first.']]);
  });

  test('numbers are numbers with their decimals; what is not finite is empty, never a word', () => {
    const [sheet] = readOf(sheetOf([[figure(1.25, 3), figure(Number.NaN, 2)], [figure(0, 0), figure(Number.POSITIVE_INFINITY, 0)]]));
    expect(sheet?.rows.slice(3, 5)).toEqual([[1.25], [0]]);
    expect(sheet?.formats.A4).toBe('0.000');
    expect(sheet?.formats.A5).toBe('0');
  });

  test.each(['=1+1', '+49', '-2', '@here', '=HYPERLINK("x")', '\t=1', '<b>&amp;"', '  two  ', 'π ½ 🜁', 'Straße'])('%j stays the words that it is', (words) => {
    const [sheet] = readOf(sheetOf([[words]], { title: words, warnings: [words], notes: [words] }));
    expect(sheet?.hasFormula).toBe(false);
    expect(sheet?.rows).toEqual([[words], [words], ['What', 'How much'], [words], [], [words]]);
  });

  test('signs that XML does not have go, and nothing else', () => {
    const [sheet] = readOf(sheetOf([['a\u0000b\u000bc\ud800d\uffffe']]));
    expect(sheet?.rows[3]).toEqual(['abcde']);
  });

  test('names of sheets are made fit, and no two are alike', () => {
    const names = readOf(sheetOf([], { name: 'A/B: c?' }), sheetOf([], { name: 'a b  c' }), sheetOf([], { name: '' }), sheetOf([], { name: 'x'.repeat(50) })).map(({ name }) => name);
    expect(names).toEqual(['A B  c', 'Sheet 2', 'Sheet 3', 'x'.repeat(31)]);
  });

  test('the same workbook gives the same bytes', () => {
    const workbook = { sheets: [sheetOf([['Elbow', figure(3, 0)]])] };
    expect(writeXlsx(workbook)).toEqual(writeXlsx(workbook));
  });

  test('any words and numbers come back', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: what XML forbids is tried above
    const words = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 }).filter((text) => !/[\u0000-\u001f\ufffe\uffff]/.test(text));
    const cell = fc.oneof(words, fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => figure(value, 2)));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 1, maxLength: 40 }), { minLength: 1, maxLength: 6 }), (rows) => {
        const [sheet] = readOf(sheetOf(rows));
        expect(sheet?.rows.slice(3, 3 + rows.length)).toEqual(rows.map((row) => row.map((each) => (typeof each === 'string' ? each : each.number + 0))));
      }),
      { numRuns: 60 },
    );
  });
});
