import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { billOfMaterials } from '#shared/take-off/bill-of-materials';
import { takeOffWorkbook } from '#shared/workbook/take-off-workbook';
import { takeOffXlsx } from '#shared/workbook/take-off-xlsx';
import { type DemoName, buildDemo } from '../../../src-main/demos/build-demo.ts';
import { type ReadSheet, readXlsx } from '../../support/xlsx-reading.ts';

const read = (plan: Plan): { readonly bill: ReturnType<typeof billOfMaterials>; readonly sheets: ReadSheet[] } => {
  const derived = derivePlan(plan);
  const bill = billOfMaterials(derived);
  return { bill, sheets: readXlsx(takeOffXlsx(plan, derived, bill)) };
};
/** Column of a table below its head, as far down as the table goes. */
function columnOf(sheet: ReadSheet | undefined, head: string, rows: number): (string | number | null)[] {
  const heads = sheet?.rows[sheet.frozen - 1] ?? [];
  const at = heads.indexOf(head);
  if (at < 0) throw new Error(`no column “${head}” among ${heads.join(', ')}`);
  return (sheet?.rows ?? []).slice(sheet?.frozen, (sheet?.frozen ?? 0) + rows).map((row) => row[at] ?? null);
}
const sum = (values: readonly unknown[]): number => values.reduce<number>((total, value) => total + (typeof value === 'number' ? value : 0), 0);

describe.each<DemoName>(['F1', 'F2', 'F3'])('the spreadsheet of %s', (name) => {
  test('has four sheets with head in sight, as many cells as columns, and no formula', async () => {
    const { sheets } = read((await buildDemo(name)).plan);
    expect(sheets.map((sheet) => sheet.name)).toEqual(['Pipe', 'Cut list', 'Fittings', 'Parts']);
    for (const { rows, frozen, widths, hasFormula } of sheets) {
      expect(frozen).toBeGreaterThan(1);
      expect(rows[0]?.[0]).not.toBe('');
      expect(String(rows[1]?.[0])).toContain('SAMPLE PROFILE');
      expect(widths).toHaveLength(rows[frozen - 1]?.length ?? 0);
      for (const row of rows) expect(row.length).toBeLessThanOrEqual(widths.length);
      expect(hasFormula).toBe(false);
    }
  });

  test('lengths and counts are those of the plan, in metres and in the plan’s units', async () => {
    const { plan } = (await buildDemo(name));
    const { bill, sheets: [pipe, cuts, fittings] } = read(plan);
    const drawn_m = derivePlan(plan).networks.reduce((total, { totalLength_m }) => total + totalLength_m, 0);
    expect(sum(columnOf(pipe, 'Centre to centre [m]', bill.pipe.length))).toBeCloseTo(drawn_m, 6);
    expect(sum(columnOf(cuts, 'Centre to centre [m]', bill.pieces.length))).toBeCloseTo(drawn_m, 6);
    // 1 in = 25.4 mm (NIST SP 811).
    if (plan.settings.lengths === 'feet') expect(sum(columnOf(cuts, 'Centre to centre [in]', bill.pieces.length)) * 0.0254).toBeCloseTo(drawn_m, 6);
    else expect(sum(columnOf(cuts, 'Centre to centre [mm]', bill.pieces.length)) / 1000).toBeCloseTo(drawn_m, 6);
    expect(sum(columnOf(fittings, 'Count', bill.fittings.length))).toBe(sum(bill.fittings.map(({ count }) => count)));
    const inches = columnOf(cuts, 'Cut [in]', bill.pieces.length);
    const words = columnOf(cuts, 'Cut, as a tape reads', bill.pieces.length);
    for (const [i, inch] of inches.entries()) {
      if (typeof inch !== 'number') continue;
      expect(inch * 16).toBe(Math.round(inch * 16));
      // Read by hand: 7'-1 1/4" is 7 · 12 + 1 + 1/4 inches.
      const [, feet = '0', whole = '0', top = '0', bottom = '1'] = /^(?:(\d+)'-)?(?:(\d+)(?: |"))?(?:(\d+)\/(\d+)")?$/.exec(String(words[i])) ?? [];
      expect(Number(feet) * 12 + Number(whole) + Number(top) / Number(bottom)).toBeCloseTo(inch, 6);
    }
  });
});

test('names that look like formulas stay words; a profile of one’s own carries no stamp', async () => {
  const { plan: demo } = await buildDemo('F1');
  const [network] = Object.values(demo.networks);
  if (!network) throw new Error('the signal hut has a network');
  const own = { ...SAMPLE_PROFILE, id: 'own', name: '=cmd|A1', isSample: false };
  const plan: Plan = { ...demo, info: { ...demo.info, project: '+Hut' }, profiles: { own }, networks: { [network.id]: { ...network, name: '=1+1', profile: 'own' } } };
  const { bill, sheets } = read(plan);
  expect(columnOf(sheets[1], 'Network', 1)).toEqual(['=1+1']);
  expect(sheets[3]?.rows.flat()).toContain('=cmd|A1');
  expect(sheets.flatMap(({ rows }) => rows.flat()).filter((cell) => String(cell).includes('SAMPLE'))).toEqual([]);
  expect(bill.pieces.length).toBeGreaterThan(0);
});

test('what is not known is empty, and says why', async () => {
  const { plan: demo } = await buildDemo('F1');
  const profiles = Object.fromEntries(Object.entries(demo.profiles).map(([id, profile]) => [id, { ...profile, fittingClass: null, madeFittings: [] }]));
  const { bill, sheets } = read({ ...demo, profiles });
  const uncut = bill.pieces.map(({ cut_m }, i) => ({ cut_m, i })).filter(({ cut_m }) => cut_m === null);
  expect(uncut.length).toBeGreaterThan(0);
  for (const { i } of uncut) {
    expect(columnOf(sheets[1], 'Cut [mm]', bill.pieces.length)[i]).toBeNull();
    expect(String(columnOf(sheets[1], 'Remark', bill.pieces.length)[i])).toMatch(/fitting class is blank/);
  }
});

test('a plan without pipe still gives four sheets', () => {
  const bill = billOfMaterials({ networks: [] });
  expect(takeOffWorkbook(bill, { project: '', lengths: 'metric', isSample: false, networkName: (id) => id }).sheets.map(({ rows }) => rows.length)).toEqual([0, 0, 0, 0]);
});
