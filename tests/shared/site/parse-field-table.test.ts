import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { emptySiteRecord } from '#shared/model/plan';
import { FIELD_HEADS, fieldTableText } from '#shared/site/field-table';
import type { FieldRecord } from '#shared/site/field-entries';
import { parseFieldTable } from '#shared/site/parse-field-table';
import { readEntries } from '#shared/site/read-entries';
import { splitTable } from '#shared/site/split-table';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

function recordIn(text: string): FieldRecord {
  const parsed = parseFieldTable(text, 1000);
  if (!parsed.ok) throw new Error(parsed.what);
  return parsed.record;
}
const measuredIn = (text: string): (string | undefined)[] => recordIn(text).rows.map(({ cells }) => cells.measured);

describe('cells of a table', () => {
  test('inches need no quotes, quoted cells may hold anything', () => {
    expect(splitTable('a,9 1/2",b\n"1,5","say ""x""","two\nlines"\r\n\r\nlast', ',', 10)).toEqual({
      lines: [
        { line: 1, cells: ['a', '9 1/2"', 'b'] },
        { line: 2, cells: ['1,5', 'say "x"', 'two\nlines'] },
        { line: 5, cells: ['last'] },
      ],
      hasOpenQuote: false,
    });
  });

  test('a quote that is never closed swallows nothing', () => {
    const open = splitTable('a,"b\nc,d\ne,f', ',', 10);
    expect(open).toEqual({ lines: [{ line: 1, cells: ['a', '"b'] }, { line: 2, cells: ['c', 'd'] }, { line: 3, cells: ['e', 'f'] }], hasOpenQuote: true });
  });

  test('any cells that are written come back', () => {
    const cell = fc.string({ maxLength: 12 });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }), (rows) => {
        const text = rows.map((cells) => cells.map((each) => `"${each.replaceAll('"', '""')}"`).join(';')).join('\r\n');
        expect(splitTable(text, ';', 100).lines.map(({ cells }) => cells)).toEqual(rows.filter((cells) => cells.some((each) => each.trim() !== '')));
      }),
    );
  });

  test('any text is split without end or error', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), fc.constantFrom(',' as const, ';' as const, '\t' as const), (text, parting) => splitTable(text, parting, 50).lines.length <= 50));
    expect(splitTable('"'.repeat(200_000), ',', 10).lines.length).toBeLessThanOrEqual(1);
    expect(splitTable('",'.repeat(100_000), ',', 10).lines.length).toBeLessThanOrEqual(1);
  });
});

describe('a table', () => {
  test.each([
    ['comma', 'id,measured,by\nx,3 m,A\n'],
    ['semicolon', 'id;measured;by\r\nx;3 m;A\r\n'],
    ['tab', 'ID\tMeasured\tInitials\nx\t3 m\tA'],
    ['printed headings', 'Dim.;From datum;Measured;By\nx;west;3 m;A'],
    ['lines above, and a hint for spreadsheets', 'sep=;\nSite visit;;\n\nid;measured;by\nx;3 m;A'],
    ['mark of UTF-8', '\ufeffid,measured,by\nx,3 m,A'],
  ])('with %s', (_, text) => {
    expect(recordIn(text).rows).toMatchObject([{ id: 'x', cells: { measured: '3 m', by: 'A' } }]);
  });

  test('a decimal comma is read where commas do not part the cells', () => {
    expect(measuredIn('id;measured\nx;3,467 m\ny;11,375\'\nz;3,4')).toEqual(['3.467 m', "11.375'", '3.4']);
    expect(recordIn('id;measured\nx;3,467').about.remarks).toEqual(['A comma in a number is read as the decimal sign.']);
    expect(measuredIn('id,measured\nx,"3,467 m"')).toEqual(['3,467 m']);
  });

  test('a unit in the heading goes with numbers alone', () => {
    const record = recordIn('id,measured (mm)\nx,3467\ny,11\' 4"');
    expect(record.rows.map(({ cells }) => cells.measured)).toEqual(['3467 mm', `11' 4"`]);
    expect(record.about.remarks).toEqual(['A number alone is read in the unit of its heading: mm.']);
    expect(measuredIn('id,measured [in]\nx,96')).toEqual(['96 "']);
  });

  test('what is no such table is told', () => {
    expect(parseFieldTable('  ', 10)).toMatchObject({ ok: false, what: 'The table is empty.' });
    expect(parseFieldTable('a,b\n1,2', 10)).toMatchObject({ ok: false, what: expect.stringContaining('no line of headings') });
    expect(recordIn(`id,measured\n${'x,1\n'.repeat(1100)}`).rows).toHaveLength(1000);
    expect(recordIn(`id,measured\n${'x,1\n'.repeat(1100)}`).about.remarks).toEqual(['The table has more than 1000 lines; the rest was left out.']);
  });

  test('any text gives a record or a reason', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => parseFieldTable(`id,measured,form\n${text}`, 50).ok));
    fc.assert(fc.property(fc.string({ maxLength: 300 }), (text) => typeof parseFieldTable(text, 50).ok === 'boolean'));
  });
});

const { plan } = await buildDemo('F1');
const derived = derivePlan(plan);
const dimensions = fieldDimensionsOf(derived);

describe('the table that is written', () => {
  test('has every dimension and hold point, and is read back as nothing written', () => {
    const text = fieldTableText(derived);
    expect(text.startsWith(`\ufeff${FIELD_HEADS.join(',')}\r\n`)).toBe(true);
    const record = recordIn(text);
    expect(record.rows).toHaveLength(dimensions.length + 12);
    expect(record.about).toMatchObject({ project: plan.info.project, count: dimensions.length, remarks: [] });
    const reading = readEntries(record, derived);
    expect(reading).toMatchObject({ match: 'same', remarks: [] });
    expect(new Set(reading.rows.map(({ kind }) => kind))).toEqual(new Set(['empty']));
    expect(new Set(reading.checks.map(({ kind }) => kind))).toEqual(new Set(['empty']));
  });

  test('holds what was measured, unchanged when it comes back, and no formula', () => {
    const [first] = dimensions;
    if (!first) throw new Error('There is nothing to measure.');
    const kept = { value_m: first.planned_m + 0.0127, by: '=HYPERLINK("x")', at: '-today', instrument: 'tape, 5 m', reason: 'say "why"', approvedBy: '', photos: [] };
    const checks = { H5: { done: true, by: 'A', witness: 'B', at: 'today' } };
    const measured = derivePlan({ ...plan, siteRecord: { ...emptySiteRecord(), measurements: { [first.id]: kept }, checks } });
    const text = fieldTableText(measured);
    expect(text).toContain(`"'=HYPERLINK(""x"")",'-today,"tape, 5 m"`);
    const { rows, checks: ticks } = readEntries(recordIn(text), measured);
    expect(rows[0]).toMatchObject({ kind: 'unchanged', by: kept.by, reason: kept.reason });
    expect(ticks[4]?.kind).toBe('unchanged');
  });
});
