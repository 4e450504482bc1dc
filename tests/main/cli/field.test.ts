import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { printPlan } from '#shared/model/print-plan';
import { runCli } from '../../../src-main/cli/run-cli.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const { plan: built } = await buildDemo('F1');
for (const level of Object.values(built.levels)) level.underlays = {};
const plan = { ...built, assets: {} };

/** A folder with the plan in it. */
function planFolder(): string {
  const folder = tempFolder();
  writeFileSync(join(folder, 'plan.json'), printPlan(plan));
  return folder;
}

async function field(folder: string, ...words: string[]) {
  const lines: string[] = [];
  const asides: string[] = [];
  const code = await runCli(['field', join(folder, 'plan.json'), ...words], '1.2.3', { line: (text) => lines.push(text), aside: (text) => asides.push(text), width: 90, now: () => TEST_TIME });
  return { code, lines, out: lines.join('\n'), err: asides.join('\n') };
}

describe('field', () => {
  test('writes the table, reads it back filled, and says every answer in words and in JSON', async () => {
    const folder = planFolder();
    const [table, back] = [join(folder, 'table.csv'), join(folder, 'back.csv')];
    expect(await field(folder, '--csv-out', table)).toMatchObject({ code: 0, out: table });
    const rows = readFileSync(table, 'utf8').split('\r\n');
    const fill = (name: string, value: string): void => {
      const at = rows.findIndex((row) => row.includes(`,${name},`));
      rows[at] = rows[at]?.replace(/(,\d+\.\d),,/, `$1,"${value.replaceAll('"', '""')}",`) ?? '';
    };
    fill('N1 a', `8' 0 1/2"`);
    writeFileSync(back, rows.join('\r\n'));
    expect((await field(folder, back)).code).toBe(0);
    fill('N1 b', '1676');
    fill('N1 c', 'by eye');
    writeFileSync(back, rows.join('\r\n'));
    const { code, out, lines } = await field(folder, back);
    expect(code).toBe(1);
    expect(out).toMatch(/Can be taken \(1\)\n.*\n {2}N1 a +8' 0 1\/2" +8'-0 1\/2" +8'-0" +line \d+/);
    expect(out).toContain('Hardly believed (1)');
    expect(out).toContain('That looks like millimetres written as feet.');
    expect(out).toContain('Not understood (1)');
    expect(out).toMatch(/Nothing was\s+changed\./);
    expect(lines.filter((line) => line.length > 90)).toEqual([]);

    const asJson = await field(folder, back, '--json');
    expect(asJson.code).toBe(1);
    const { match, rows: answers, checks } = JSON.parse(asJson.out) as { match: string; rows: { name: string; kind: string; value_m: number }[]; checks: unknown[] };
    expect(match).toBe('same');
    expect(answers.find(({ name }) => name === 'N1 a')?.value_m).toBeCloseTo(2.4511, 9);
    expect(checks).toHaveLength(12);
  });

  test('without a file, with a wrong one', async () => {
    const folder = planFolder();
    expect(await field(folder)).toMatchObject({ code: 2, err: expect.stringContaining('nothing to read') });
    expect(await field(folder, join(folder, 'gone.csv'))).toMatchObject({ code: 2, err: expect.stringContaining('not there') });
    expect(await field(folder, '--csv-out', join(folder, 'table.txt'))).toMatchObject({ code: 2, err: expect.stringContaining('.csv') });
    expect(await field(folder, join(folder, 'plan.json'))).toMatchObject({ code: 2, err: expect.stringContaining('line of headings') });
  });
});
