import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { boughtFittingsOf } from '#shared/derived/bought-fittings';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { runCli } from '../../../src-main/cli/run-cli.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { tempFolder } from '../../support/temp-folder.ts';
import { readXlsx } from '../../support/xlsx-reading.ts';

async function takeoff(plan: Plan, ...words: string[]) {
  const path = join(tempFolder(), 'plan.json');
  writeFileSync(path, printPlan(plan));
  const lines: string[] = [];
  const asides: string[] = [];
  const code = await runCli(['takeoff', path, ...words], '1.2.3', { line: (text) => lines.push(text), aside: (text) => asides.push(text), width: 80, now: () => TEST_TIME });
  return { code, lines, out: lines.join('\n'), err: asides.join('\n') };
}
/** A demo without the floor plan under it. */
async function demo(name: 'F1' | 'F2' | 'F3'): Promise<Plan> {
  const { plan } = await buildDemo(name);
  for (const level of Object.values(plan.levels)) level.underlays = {};
  return { ...plan, assets: {} };
}

describe('takeoff', () => {
  test('F1 in words: what to buy and how to cut it, with the cautions, no line too long', async () => {
    const { code, out, lines } = await takeoff(await demo('F1'));
    expect(code).toBe(0);
    expect(out).toContain("buy 1 × 21'-0\"");
    expect(out).toContain('2 × 90° elbow 3/4" Class 300');
    expect(out).toContain('1 × tee 3/4" Class 300');
    expect(out).toContain('Label with arrow');
    expect(out).toContain('outside threads');
    expect(out).toContain('long nipple');
    expect(out).toContain('not in it: 1 fitting');
    expect(out.replace(/\s+/g, ' ')).toContain("7'-3\" between centres: cut 7'-1 1/4\" (2.165 m), rounded up by 0.005 in");
    expect(out).toContain('Measure the fittings in hand');
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  test.each(['F1', 'F2', 'F3'] as const)('%s in JSON: counts and lengths are those of the drawing', async (name) => {
    const plan = await demo(name);
    const { code, out } = await takeoff(plan, '--json');
    expect(code).toBe(0);
    const bill: {
      plan: { project: string };
      pieces: { cut_m: number | null; centreToCentre_m: number; because: string[] }[];
      pipe: { bars: number[][]; stockCount: number; leastBars: number }[];
      fittings: { kind: string; place: string; count: number }[];
      nozzles: { count: number }[];
    } = JSON.parse(out);
    const { networks, nozzles } = derivePlan(plan);
    expect(bill.plan.project).toBe(plan.info.project);
    expect(bill.pieces.reduce((sum, { centreToCentre_m }) => sum + centreToCentre_m, 0)).toBeCloseTo(networks.reduce((sum, { totalLength_m }) => sum + totalLength_m, 0), 9);
    expect(bill.fittings.filter(({ place }) => place === 'node').reduce((sum, { count }) => sum + count, 0)).toBe(networks.flatMap(boughtFittingsOf).length);
    expect(bill.nozzles.reduce((sum, { count }) => sum + count, 0)).toBe(nozzles.length);
    expect(bill.pipe.flatMap(({ bars }) => bars.flat()).sort((a, b) => a - b)).toEqual(bill.pieces.map((_, i) => i));
    for (const { stockCount, leastBars } of bill.pipe) expect(stockCount - leastBars).toBeLessThanOrEqual(1);
    for (const { cut_m, because } of bill.pieces) expect(cut_m === null).toBe(because.length > 0);
  });

  test('as comma-separated values: as many cells in every row, sizes no spreadsheet takes for a day', async () => {
    const { lines, err } = await takeoff(await demo('F1'), '--csv');
    const cells = (line: string): string[] => [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].map(([, each = '']) => each).slice(0, lines[0]?.split(',').length);
    expect(new Set(lines.map((line) => cells(line).length)).size).toBe(1);
    expect(lines.find((line) => line.startsWith('cut,Network 1,2–3'))).toBe(`cut,Network 1,2–3,NPS 3/4,40,black-steel,1,2209.8,90° elbow,90° elbow,22.29,22.29,2165,"7'-1 1/4""",2,,1,`);
    expect(err).toContain('Measure the fittings in hand');
  });

  test('a name that begins like a formula stays a name', async () => {
    const { plan } = planBuilder().room(40, 40, 5).network({ name: '=1+1' }).run([place3(1, 5, 3), place3(4, 5, 3)]).nozzle(4, 5, 3);
    expect((await takeoff(plan, '--csv')).out).toContain("cut,'=1+1,1–2");
  });

  test('stock and kerf as typed', async () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(11, 5, 3)]).nozzle(11, 5, 3);
    const { out } = await takeoff(plan, '--json', '--stock', '6 m', '--kerf', '2 mm');
    expect(JSON.parse(out)).toMatchObject({ stock_m: 6, kerf_m: 0.002, pieces: [{ cut_m: expect.closeTo(6, 9) }, {}] });
    const refused = await takeoff(plan, '--kerf', '7 m');
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(refused.err).toContain('Kerf');
  });

  test('a piece that is too short ends with 1, and is named; it is never given a length below 0', async () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(4, 5, 3), place3(4, 5.03, 3), place3(7, 5.03, 3)]).nozzle(7, 5.03, 3);
    const { code, out } = await takeoff(plan);
    expect(code).toBe(1);
    expect(out.replace(/\s+/g, ' ')).toContain('no cut length: TOO SHORT: the fittings would touch');
  });

  test('where sizes change, one reducing fitting is bought and no reducer', async () => {
    const { out } = await takeoff(await demo('F2'));
    expect(out.replace(/\s+/g, ' ')).toContain('3 × reducing tee 1 1/4" × 1 1/4" × 1"');
    expect(out).not.toMatch(/\d × reducer/);
  });

  test('a pipe measured on site is cut as measured, the next takes it up, and a nozzle that moves is named', async () => {
    const built = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(4, 5, 3), place3(8, 5, 3)]).run([place3(4, 5, 3), place3(4, 8, 3)]).nozzle(8, 5, 3).nozzle(4, 8, 3);
    const [first] = Object.values(built.plan.networks[built.networkId]?.pipes ?? {});
    if (first) first.measured_m = 3.1;
    const words = (await takeoff(built.plan)).out.replace(/\s+/g, ' ');
    expect(words).toContain('3.100 m between centres, as measured');
    expect(words).toContain('3.900 m between centres, taking up what was measured elsewhere');
    expect(words).toContain('nozzle N2 moves by 100.0 mm');
  });
});

describe('takeoff --xlsx', () => {
  test('writes a spreadsheet and says where; one that is there is replaced', async () => {
    const place = join(tempFolder(), 'cut.xlsx');
    writeFileSync(place, 'old');
    const { code, lines, err } = await takeoff(await demo('F1'), '--xlsx', place);
    expect(code).toBe(0);
    expect(lines).toEqual([place]);
    expect(err).toContain('Measure the fittings in hand');
    expect(readXlsx(readFileSync(place)).map(({ name }) => name)).toEqual(['Pipe', 'Cut list', 'Fittings', 'Parts']);
  });

  test('refuses another ending and a second format', async () => {
    const plan = await demo('F1');
    expect(await takeoff(plan, '--xlsx', join(tempFolder(), 'cut.ods'))).toMatchObject({ code: 2, lines: [] });
    expect((await takeoff(plan, '--xlsx', join(tempFolder(), 'a.xlsx'), '--csv')).code).toBe(2);
  });
});
