import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { PAPERS } from '#shared/paper/papers';
import type { Mark } from '#shared/sheets/sheet';
import { sheetLayout } from '#shared/sheets/frame';
import { cuttingPlanTable } from '#shared/sheets/cutting-plan-table';
import { type CutBar, barWords, barsOf } from '#shared/sheets/take-off-bars';
import { takeOffBlocks } from '#shared/sheets/take-off-blocks';
import { cutListTable, fittingTable, partTable, pipeOrderTable } from '#shared/sheets/take-off-tables';
import { takeOffCautions } from '#shared/sheets/take-off-words';
import { billOfMaterials } from '#shared/take-off/bill-of-materials';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { type DemoName, buildDemo } from '../../../src-main/demos/build-demo.ts';
import { demoSheets, textsOf, wordsOf } from '../../support/sheet-set.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const billOf = async (name: DemoName) => {
  const { plan } = await buildDemo(name);
  return { plan, bill: billOfMaterials(derivePlan(plan)), facts: { lengths: plan.settings.lengths, networkName: (id: string) => plan.networks[id]?.name ?? id } };
};
const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

describe('cutting plan', () => {
  test.each<DemoName>(['F1', 'F2', 'F3'])('%s: pieces of a stock length lie one behind the other, a saw cut apart, none twice and none left out', async (name) => {
    const { bill } = await billOf(name);
    const placed = bill.pipe.flatMap((order) => barsOf(order, bill.kerf_m).flatMap(({ pieces }) => pieces.map(({ piece }) => piece)));
    expect(new Set(placed).size).toBe(placed.length);
    expect(placed).toHaveLength(bill.pieces.filter(({ hasPipe }) => hasPipe).length);
    for (const order of bill.pipe) {
      for (const { pieces, offcut_m } of barsOf(order, bill.kerf_m)) {
        const ends = pieces.map(({ start_m, length_m }) => start_m + length_m);
        for (const [i, { start_m }] of pieces.entries()) if (i > 0) expect(start_m).toBeCloseTo((ends[i - 1] ?? 0) + bill.kerf_m, 9);
        expect(total(pieces.map(({ length_m }) => length_m)) + offcut_m).toBeLessThanOrEqual(order.stock_m + 1e-9);
      }
    }
  });

  test('a bar is drawn to scale inside its paper', async () => {
    const { bill, facts } = await billOf('F1');
    const table = cuttingPlanTable(bill, facts, 300, typeSizesOf(PAPERS.A3));
    const drawing = table.rows[0]?.[2];
    if (typeof drawing !== 'object' || drawing.kind !== 'drawing') throw new Error('a bar is a drawing');
    const boxes = drawing.draw(10, 20).filter((mark): mark is Extract<Mark, { kind: 'line' }> => mark.kind === 'line' && mark.closed === true);
    const [order] = bill.pipe;
    const [bar] = order ? barsOf(order, bill.kerf_m) : [];
    const [first] = bar?.pieces ?? [];
    expect((boxes[0]?.places[2] ?? 0) - 10).toBeCloseTo(((first?.length_m ?? 0) / (order?.stock_m ?? 1)) * drawing.width_mm, 9);
    for (const { places } of boxes) for (const [i, place] of places.entries()) if (i % 2 === 0) expect(place).toBeLessThanOrEqual(10 + drawing.width_mm + 1e-9);
  });

  test('pieces of several networks are named by their network, once each', async () => {
    const { bill } = await billOf('F1');
    const [piece] = bill.pieces;
    if (!piece) throw new Error('the hut has pipe');
    const bar: CutBar = { number: 1, offcut_m: 0, pieces: ['a', 'b', 'a'].map((network) => ({ piece: { ...piece, network }, start_m: 0, length_m: 1 })) };
    expect(barWords(bar, (id) => id.toUpperCase())).toBe('A: 1–2, 1–2; B: 1–2');
    expect(barWords(bar, undefined)).toBe('1–2, 1–2, 1–2');
  });
});

describe('tables of the take-off', () => {
  test('the hut: a turn is cut to its sixteenth, both ways of measuring, in the order of the isometric', async () => {
    const { bill, facts } = await billOf('F1');
    const { rows, columns } = cutListTable(bill, facts);
    expect(columns.map(({ head }) => head)).not.toContain('Network');
    expect(rows.map(([piece]) => piece)).toEqual(bill.pieces.map(({ from, to }) => `${from.label}–${to.label}`));
    // 7'-3" less twice 7/8": reach 1.44 in less 0.5625 in of thread, worked by hand to 1/16.
    expect(rows[1]?.slice(0, 9)).toEqual(['2–3', '3/4"', `7'-3"`, '90° elbow', '7/8"', '90° elbow', '7/8"', `7'-1 1/4"`, '2.165 m']);
  });

  test.each<DemoName>(['F1', 'F2', 'F3'])('%s: counts on the sheet are those of the bill', async (name) => {
    const { bill, plan } = await billOf(name);
    const { lengths } = plan.settings;
    expect(total(fittingTable(bill, lengths).rows.map((row) => Number(row[3])))).toBe(total(bill.fittings.map(({ count }) => count)));
    const bought = pipeOrderTable(bill, lengths).rows.map((row) => Number.parseInt(String(row[3]), 10));
    expect(bought).toEqual(bill.pipe.map(({ nesting }) => nesting.bars.length));
    const nozzles = partTable(bill, lengths).rows.filter(([part]) => part === 'Nozzle');
    expect(total(nozzles.map((row) => Number(row[2])))).toBe(total(bill.nozzles.map(({ count }) => count)));
  });

  test('what is not known is said, never a length', async () => {
    const { plan: demo, facts } = await billOf('F2');
    const plan: Plan = { ...demo, profiles: Object.fromEntries(Object.entries(demo.profiles).map(([id, profile]) => [id, { ...profile, fittingClass: null, madeFittings: [] }])) };
    const bill = billOfMaterials(derivePlan(plan));
    const rows = cutListTable(bill, facts).rows.filter((_, i) => bill.pieces[i]?.cut_m === null);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row[7]).toBe('none');
      expect(row[8]).toBe('');
      expect(String(row[11])).toMatch(/blank in the unit profile|unit profile|maker/);
    }
    expect(fittingTable(bill, 'feet').rows.map((row) => row[2])).toContain('class not known');
  });

  test('a measured pipe is marked, and so is the one that takes the difference up', async () => {
    const { plan: demo, facts } = await billOf('F1');
    const { bill: drawn } = await billOf('F1');
    const second = drawn.pieces[1];
    const [id = ''] = second?.pipes ?? [];
    const network = demo.networks[second?.network ?? ''];
    const pipe = network?.pipes[id];
    if (!network || !pipe || !second) throw new Error('the hut has pipe');
    const plan: Plan = { ...demo, networks: { [network.id]: { ...network, pipes: { ...network.pipes, [id]: { ...pipe, measured_m: second.centreToCentre_m + 0.0254 } } } } };
    const { rows, note } = cutListTable(billOfMaterials(derivePlan(plan)), facts);
    expect(rows[1]?.[2]).toBe(`7'-4" M`);
    expect(rows[1]?.[7]).toBe(`7'-2 1/4"`);
    expect(note).toContain('as measured on site');
  });

  test('cautions name where lengths of fittings were read, and defer to manual and listing', async () => {
    const { bill } = await billOf('F2');
    expect(takeOffCautions(bill).join(' ')).toMatch(/ASME B16\.3.*sample, invented.*listing/);
    expect(takeOffCautions({ pieces: [], fittings: [] })).toHaveLength(3);
  });

  test('stock and saw that were chosen are those of the sheet', async () => {
    const { plan } = await billOf('F1');
    const notesOf = (takeOff: { stock_m: number; kerf_m: number } | null): string => takeOffBlocks(derivePlan(plan), sheetLayout(PAPERS.A3), takeOff).map(({ table }) => table.note).join(' ');
    expect(notesOf(null)).toContain(`lengths of 21'-0"; a saw cut takes 1/8"`);
    expect(notesOf({ stock_m: 3.048, kerf_m: 0.0015875 })).toContain(`lengths of 10'-0"; a saw cut takes 1/16"`);
  });

  test('a plan without pipe has none of them', async () => {
    const { plan } = await buildDemo('F1');
    const bare: Plan = { ...plan, networks: {} };
    expect(takeOffBlocks(derivePlan(bare), sheetLayout(PAPERS.A3))).toEqual([]);
  });
});

describe.each<DemoName>(['F1', 'F2', 'F3'])('sheets of %s', (name) => {
  test.each(['A3', 'ANSI-B'] as const)('on %s, both sets: cut list and cutting plan are there, no words run into others', async (paper) => {
    for (const set of ['submittal', 'field'] as const) {
      const sheets = await demoSheets(name, { paper, set });
      const words = sheets.flatMap(wordsOf);
      for (const title of ['Cut list', 'Cutting plan', 'Fittings', 'Parts']) expect(words).toContain(title);
      // What the older schedules said is not said again.
      expect(words).not.toContain('Pipe runs in flow order');
      for (const sheet of sheets.filter((each) => wordsOf(each).some((text) => /^(Cut list|Cutting plan|Parts)/.test(text)))) {
        expect(textOverlaps(textsOf(sheet))).toEqual([]);
        const { area, column } = sheetLayout(PAPERS[paper]);
        for (const mark of textsOf(sheet)) if (mark.x < column.left) expect(mark.x).toBeGreaterThanOrEqual(area.left - 15);
      }
    }
  });
});
