import { strFromU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { rectangle } from '#shared/geometry/outline';
import { wayOutFiles, wayOutName } from '#shared/ways-out/way-out-files';
import { writeCsv } from '#shared/ways-out/schedules/write-csv';
import { schedulesWorkbook } from '#shared/ways-out/schedules/schedules-workbook';
import { figure } from '#shared/workbook/workbook';
import { sure, wholePlan } from '../../support/whole-plan.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { readXlsx } from '../../support/xlsx-reading.ts';

/** RFC 4180 read letter by letter, independent of what wrote it. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let isQuoted = false;
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charAt(i);
    if (isQuoted && c === '"' && text.charAt(i + 1) === '"') [cell, i] = [`${cell}"`, i + 1];
    else if (c === '"') isQuoted = !isQuoted;
    else if (!isQuoted && c === ',') {
      rows.at(-1)?.push(cell);
      cell = '';
    } else if (!isQuoted && text.startsWith('\r\n', i)) {
      rows.at(-1)?.push(cell);
      rows.push([]);
      [cell, i] = ['', i + 1];
    } else cell += c;
  }
  return rows.slice(0, -1);
}

const evaluated = () => evaluate(wholePlan().plan);

describe('tables as CSV', () => {
  test('commas, quotes and line ends stay in their cell; numbers have a point; a mark says UTF-8', () => {
    const text = writeCsv({ columns: [{ head: 'What', width: 9 }, { head: 'Length [m]', width: 9 }], rows: [['a, "b"\r\nc', figure(1234.5, 4)], ['ü', null], [' x', figure(-0.00001, 2)]] });
    expect(text.startsWith('\uFEFFWhat,Length [m]\r\n')).toBe(true);
    expect(readCsv(text.slice(1))).toEqual([['What', 'Length [m]'], ['a, "b"\r\nc', '1234.5'], ['ü', ''], [' x', '0']]);
  });

  test.each(['=1+1', '+49', '-2', '@SUM(A1)', '\t=1', '  =1', '＝1'])('the words %j are never a formula', (words) => {
    const [, [cell = ''] = []] = readCsv(writeCsv({ columns: [{ head: 'What', width: 9 }], rows: [[words]] }).slice(1));
    expect(cell).toBe(`'${words}`);
  });

  test('every table of a plan, each row as long as its head', () => {
    const evaluation = evaluated();
    const files = [...wayOutFiles(evaluation, 'csv')];
    expect(files.map(({ of }) => of)).toEqual(expect.arrayContaining(['Spaces', 'Openings', 'Cylinders', 'Nozzles', 'Pipe by stretches', 'Paths', 'Findings', 'Field dimensions', 'Pipe', 'Cut list', 'Fittings', 'Parts']));
    for (const { bytes } of files) {
      const [head = [], ...rows] = readCsv(strFromU8(bytes).slice(1));
      expect(rows.length).toBeGreaterThan(0);
      expect(new Set(head).size).toBe(head.length);
      for (const row of rows) expect(row.length).toBe(head.length);
    }
    const field = sure(files.find(({ of }) => of === 'Field dimensions'));
    expect(readCsv(strFromU8(field.bytes).slice(1)).slice(1).map(([id]) => id)).toEqual(fieldDimensionsOf(evaluation.derived).map(({ id }) => id));
  });
});

describe('tables as a spreadsheet', () => {
  test('numbers are numbers, in feet and metric; the warning of an invented profile is on every sheet', () => {
    const evaluation = evaluated();
    const [file] = [...wayOutFiles(evaluation, 'xlsx')];
    const sheets = readXlsx(sure(file).bytes);
    expect(sheets.map(({ name }) => name)).toEqual(schedulesWorkbook(evaluation).sheets.map(({ name }) => name));
    for (const { rows, hasFormula } of sheets) {
      expect(hasFormula).toBe(false);
      expect(rows[1]?.[0]).toMatch(/^SAMPLE PROFILE: NOT FOR CONSTRUCTION/);
    }
    const nozzles = sure(sheets.find(({ name }) => name === 'Nozzles'));
    const head = sure(nozzles.rows.find((row) => row.includes('Orifice above floor [m]')));
    const [first] = evaluation.derived.nozzles;
    const row = sure(nozzles.rows.find((each) => each[1] === first?.nozzle.name));
    expect(row[head.indexOf('Orifice above floor [m]')]).toBeCloseTo(sure(first?.at).z, 4);
    const spaces = sure(sheets.find(({ name }) => name === 'Spaces'));
    const spaceHead = sure(spaces.rows.find((each) => each.includes('Floor area [m²]')));
    expect(sure(spaces.rows.find((each) => each[1] === evaluation.derived.spaces[0]?.name))[spaceHead.indexOf('Floor area [m²]')]).toBeCloseTo(sure(evaluation.derived.spaces[0]).area_m2, 3);
  });

  test('what is not known is an empty cell, and a plan with nothing on it still opens', () => {
    const bare = planBuilder('feet').room(3, 2, 2.5).obstruction('rack', rectangle(1, 1), 0, 1);
    sure(bare.plan.levels['level-0']?.enclosures[bare.enclosure.id]).height_m = null;
    const [file] = [...wayOutFiles(evaluate(bare.plan), 'xlsx')];
    const spaces = sure(readXlsx(sure(file).bytes).find(({ name }) => name === 'Spaces'));
    const head = sure(spaces.rows.find((row) => row.includes('Clear height [m]')));
    const row = sure(spaces.rows.at(spaces.rows.indexOf(head) + 1));
    expect(row[head.indexOf('Clear height [m]')] ?? null).toBeNull();
    expect(row[head.indexOf('Floor area [ft²]')]).toBeCloseTo(6 / 0.3048 ** 2, 2);
    expect(readXlsx(sure([...wayOutFiles(evaluate(planBuilder().plan), 'xlsx')][0]).bytes).length).toBeGreaterThan(0);
  });
});

test('names are such as every file system takes', () => {
  expect(wayOutName('a/b:c', { of: 'Ground <1>', kind: 'dxf' })).toBe('a-b-c Ground -1-.dxf');
  expect(wayOutName('', { of: '', kind: 'xlsx' })).toBe('Plan.xlsx');
});
