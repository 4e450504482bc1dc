import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { printPlan } from '#shared/model/print-plan';
import { readDxf } from '#shared/underlay/dxf/read-dxf';
import { runCli } from '../../../src-main/cli/run-cli.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';
import { decode, quiet } from '../../support/underlay.ts';
import { readXlsx } from '../../support/xlsx-reading.ts';

async function exported(...words: string[]) {
  const isHut = words.at(-1) === '--demo-hut';
  if (isHut) words.pop();
  const { plan } = await buildDemo(isHut ? 'F1' : 'F2');
  for (const level of Object.values(plan.levels)) level.underlays = {};
  const folder = tempFolder();
  const path = join(folder, isHut ? 'hut.json' : 'annex.json');
  writeFileSync(path, printPlan({ ...plan, assets: {} }));
  const [lines, asides]: [string[], string[]] = [[], []];
  const to = join(folder, 'out');
  const code = await runCli(['export', path, '--out', to, ...words], '1.2.3', { line: (text) => lines.push(text), aside: (text) => asides.push(text), width: 80, now: () => TEST_TIME });
  return { code, names: lines.map((line) => basename(line)), files: code === 0 ? readdirSync(to).map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(to, name))) })) : [], err: asides.join('\n') };
}

describe('export', () => {
  test('a DXF of each view, or of the one that is asked for', async () => {
    const all = await exported('--as', 'dxf');
    expect(all).toMatchObject({ code: 0, names: ['annex Ground floor.dxf', 'annex Ground floor, under the floor.dxf'] });
    for (const { bytes } of all.files) expect(readDxf(bytes, decode, quiet).layers.some(({ name }) => name === 'Nozzles')).toBe(true);
    const one = await exported('--as', 'dxf', '--level', 'ground floor, under the floor');
    expect(one.names).toEqual(['annex Ground floor, under the floor.dxf']);
  });

  test('SVG, CSV and a spreadsheet', async () => {
    const svg = await exported('--as', 'svg', '--level', 'Ground floor, under the floor');
    expect(new TextDecoder().decode(svg.files[0]?.bytes)).toContain('</svg>');
    expect((await exported('--as', 'csv', '--no-tolerances')).names).toContain('annex Nozzles.csv');
    const [book] = (await exported('--as', 'xlsx', '--no-tolerances')).files;
    expect(book?.name).toBe('annex.xlsx');
    expect(readXlsx(book?.bytes ?? new Uint8Array()).length).toBeGreaterThan(10);
  });

  test('tables tell how far each nozzle may be moved, and what is being worked out; or leave it out', async () => {
    const rowsOf = ({ files }: Awaited<ReturnType<typeof exported>>) => new TextDecoder().decode(files.find(({ name }) => name === 'hut Field dimensions.csv')?.bytes).split('\r\n').filter((row) => row.includes('/first,'));
    const full = await exported('--as', 'csv', '--demo-hut');
    expect(full.err).toContain('Looking how far nozzle 1 of 1 may be moved');
    const bare = await exported('--as', 'csv', '--no-tolerances', '--demo-hut');
    expect(bare.err).toBe('');
    const known = (rows: readonly string[]) => rows.filter((row) => row.includes('nozzle')).map((row) => row.split(',').filter((cell) => cell !== '').length);
    expect(known(rowsOf(full)).every((count, i) => count > (known(rowsOf(bare))[i] ?? Infinity))).toBe(true);
    expect(known(rowsOf(full)).length).toBeGreaterThan(0);
  });

  test('a level that is not there, a level of tables and an unknown kind are said, with code 2', async () => {
    expect(await exported('--as', 'dxf', '--level', 'Attic')).toMatchObject({ code: 2, err: expect.stringContaining('Its views are: “Ground floor”') });
    expect(await exported('--as', 'csv', '--level', 'Ground floor')).toMatchObject({ code: 2, err: expect.stringContaining('Leave --level out.') });
    expect((await exported('--as', 'paper')).code).toBe(2);
  });
});
