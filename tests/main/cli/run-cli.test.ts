import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { acceptFinding } from '#shared/commands/accept-finding';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { evaluate } from '#shared/evaluate';
import { newPlan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { CATALOGUE_IDS } from '#shared/rules/catalogue';
import { RULES } from '#shared/rules/index';
import { runCli } from '../../../src-main/cli/run-cli.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { badPlanFiles } from '../../support/bad-plan-files.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { at3, layout } from '../../support/layout.ts';
import { tempFolder } from '../../support/temp-folder.ts';
import { done, doneAll } from '../../support/try-command.ts';

async function run(...words: string[]) {
  const lines: string[] = [];
  const asides: string[] = [];
  const code = await runCli(words, '1.2.3', { line: (text) => lines.push(text), aside: (text) => asides.push(text), width: 80, now: () => TEST_TIME });
  return { code, out: lines.join('\n'), err: asides.join('\n') };
}

describe('new', () => {
  test('writes a demo plan, and does not replace a file unless asked', async () => {
    const path = join(tempFolder(), 'hut.nzw');
    expect(await run('new', '--demo', 'F1', path)).toEqual({ code: 0, out: path, err: '' });
    expect(await run('new', '--demo', 'F1', path)).toMatchObject({ code: 2, err: expect.stringContaining('already') });
    expect((await run('new', '--demo', 'F2', '--replace', path)).code).toBe(0);
    expect(readdirSync(join(path, '..')).sort()).toEqual(['hut.nzw', 'hut.nzw.bak']);
  });

  test('writes the same bytes each time', async () => {
    const folder = tempFolder();
    await run('new', '--demo', 'F3', join(folder, 'a.nzw'));
    await run('new', '--demo', 'F3', join(folder, 'b.nzw'));
    expect(readFileSync(join(folder, 'a.nzw')).equals(readFileSync(join(folder, 'b.nzw')))).toBe(true);
  });

  test.each([[['new', 'x.nzw']], [['new', '--demo', 'F99', 'x.nzw']], [['new', '--demo', 'F1', 'x.txt']], [['new', '--demo', 'F1']]])('%j is bad input', async (words) => {
    const { code, out, err } = await run(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).not.toBe('');
  });
});

describe('check', () => {
  test('lists every finding gravest first with a summary that adds up', async () => {
    const path = join(tempFolder(), 'annex.nzw');
    await run('new', '--demo', 'F2-faults', path);
    const { code, out } = await run('check', path, '--json');
    const { plan, summary, findings } = JSON.parse(out);
    expect(plan).toEqual({ file: path, project: expect.any(String), remarks: [] });
    expect(summary.stop + summary.warn + summary.notChecked + summary.note + summary.ok + summary.accepted).toBe(findings.length);
    expect(summary.stop).toBe(findings.filter((each: { verdict: string }) => each.verdict === 'stop').length);
    expect(findings[0]).toMatchObject({ rule: expect.any(String), verdict: 'stop', text: expect.any(String), basis: { source: expect.any(String) } });
    expect(code).toBe(1);
  });

  test('in words: headings by verdict, a basis for each finding, a caution, no line too long', async () => {
    const path = join(tempFolder(), 'annex.nzw');
    await run('new', '--demo', 'F2-faults', path);
    const { code, out } = await run('check', path);
    expect(code).toBe(1);
    expect(out).toMatch(/■ Stop: must be cured \(\d+\)/);
    expect(out).toContain('Basis: ');
    expect(out).toMatch(/\d+ stop, \d+ warnings?, \d+ not checked, \d+ notes?, \d+ kept/);
    expect(out.replace(/\s+/g, ' ')).toContain("The unit's own manual, its listing, the adopted code and licensed practice decide.");
    const tooLong = out.split('\n').filter((line) => line.length > 80 && line.trim().includes(' ') && !/^ {2}\S+ {2}/.test(line));
    expect(tooLong).toEqual([]);
    expect((await run('check', path, '--all')).out.length).toBeGreaterThan(out.length);
  });

  test('names every check with its source and counts, and what was taken for granted', async () => {
    const path = join(tempFolder(), 'hut.nzw');
    await run('new', '--demo', 'F1', path);
    const { catalogue, findings, assumptions, lapsed } = JSON.parse((await run('check', path, '--json')).out);
    expect(catalogue.map(({ id }: { id: string }) => id)).toEqual(CATALOGUE_IDS.filter((id) => RULES.some((rule) => rule.id === id)));
    for (const row of catalogue) expect(row).toMatchObject({ title: expect.any(String), basis: { source: expect.any(String) }, counts: { stop: expect.any(Number), accepted: 0 } });
    expect(findings.some(({ inputs }: { inputs?: unknown[] }) => (inputs?.length ?? 0) > 0)).toBe(true);
    expect(assumptions[0]).toMatchObject({ taken: expect.any(String), affects: expect.any(String), change: expect.any(String) });
    expect(lapsed).toEqual([]);
    expect((await run('check', path, '--all')).out).toContain('Taken for granted');
  });

  test('lists accepted findings apart, with reason and name, and does not stop for them', async () => {
    const path = join(tempFolder(), 'one.json');
    const plan = layout({ nozzles: [{ at: at3(3, 2, 2) }], limits: {} });
    const stops = evaluate(plan).findings.filter(({ verdict }) => verdict === 'stop');
    const accepted = stops.reduce((so, finding) => done(so, acceptFinding(finding, { reason: 'Agreed on site.', by: 'M. Orrin', date: '2026-11-30' })).next, plan);
    writeFileSync(path, printPlan(accepted));
    const { code, out } = await run('check', path);
    expect(stops.length).toBeGreaterThan(0);
    expect(code).toBe(0);
    expect(out).toContain(`Accepted as it is, with a name and a reason (${stops.length})`);
    expect(out).toContain('Accepted by M. Orrin, 2026-11-30: Agreed on site.');
    expect(out).toContain(`${stops.length} accepted`);
    expect(out).not.toContain('■ Stop');
    const shifted = doneAll(accepted, moveNozzle({ kind: 'nozzle', network: 'net', id: 'n1' }, at3(3, 2, 1.9)));
    writeFileSync(path, printPlan(shifted));
    expect((await run('check', path)).out).toContain('Acceptances that have lapsed');
  });

  test('a plan that nothing stops ends with 0', async () => {
    const path = join(tempFolder(), 'empty.json');
    const plan = newPlan();
    const info = { ...plan.info, project: 'Hut', site: 'Quay', client: 'Owner', code: 'ISO 14520', edition: '2015', drawnBy: 'A', checkedBy: 'B', approvedBy: 'C' };
    writeFileSync(path, printPlan({ ...plan, info, profiles: Object.fromEntries(Object.entries(plan.profiles).map(([id, profile]) => [id, { ...profile, isSample: false }])) }));
    const { code, out } = await run('check', path, '--json');
    expect([code, JSON.parse(out).summary.stop]).toEqual([0, 0]);
  });

  test('each bad file ends with 2, one message on stderr and nothing on stdout', async () => {
    const folder = tempFolder();
    for (const { name, bytes } of await badPlanFiles()) {
      const path = join(folder, `${name}.nzw`);
      writeFileSync(path, bytes);
      const { code, out, err } = await run('check', path, '--json');
      expect([code, out], name).toEqual([2, '']);
      expect(err, name).toContain(name);
      expect(err.split('\n'), name).toHaveLength(1);
      expect(err, name).not.toMatch(/\bat .*\.ts:|Error:/);
    }
  });

  test.each(['nowhere.nzw', '.'])('%s is bad input', async (name) => {
    const folder = tempFolder();
    mkdirSync(join(folder, 'x'));
    const { code, err } = await run('check', join(folder, name));
    expect(code).toBe(2);
    expect(err).toContain(folder);
  });
});

describe('sheets', () => {
  test('prints a bare plan.json without the floor plan under it, and says so', async () => {
    const folder = tempFolder();
    const { plan } = await buildDemo('F1');
    const place = join(folder, 'plan.json');
    writeFileSync(place, printPlan(plan));
    const { code, err } = await run('sheets', place, '--out', folder);
    expect(code).toBe(0);
    expect(err).toContain('signal-hut-scan.png');
    expect(readFileSync(join(folder, 'plan submittal sheets.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('writes a PDF, the same bytes at the same time', async () => {
    const folder = tempFolder();
    await run('new', '--demo', 'F1', join(folder, 'hut.nzw'));
    const { code, out } = await run('sheets', join(folder, 'hut.nzw'), '--out', join(folder, 'new', 'deep'), '--set', 'field', '--paper', 'A3', '--scale', '1:50');
    expect([code, out]).toEqual([0, join(folder, 'new', 'deep', 'hut field sheets.pdf')]);
    const first = readFileSync(out);
    expect(first.subarray(0, 5).toString()).toBe('%PDF-');
    await run('sheets', join(folder, 'hut.nzw'), '--out', join(folder, 'new', 'deep'), '--set', 'field', '--paper', 'A3', '--scale', '50');
    expect(readFileSync(out).equals(first)).toBe(true);
  });

  test.each([
    [['--set', 'all']],
    [['--paper', 'B9']],
    [['--scale', '0']],
    [['--scale', '0.0001']],
    [['--scale', 'large']],
    [['--scale', '1:']],
  ])('%j is bad input', async (words) => {
    const folder = tempFolder();
    await run('new', '--demo', 'F1', join(folder, 'hut.nzw'));
    const { code, err } = await run('sheets', join(folder, 'hut.nzw'), '--out', folder, ...words);
    expect(code).toBe(2);
    expect(err).toContain(words[0]);
  });

  test('a scale of feet and inches is taken as it is written', async () => {
    const folder = tempFolder();
    await run('new', '--demo', 'F1', join(folder, 'hut.nzw'));
    const printed = async (scale: string) => readFileSync((await run('sheets', join(folder, 'hut.nzw'), '--out', folder, '--scale', scale)).out);
    expect((await printed(`1/4" = 1'-0"`)).equals(await printed('48'))).toBe(true);
  });

  test('a file where the folder should be is told as such', async () => {
    const folder = tempFolder();
    await run('new', '--demo', 'F1', join(folder, 'hut.nzw'));
    const { code, err } = await run('sheets', join(folder, 'hut.nzw'), '--out', join(folder, 'hut.nzw'));
    expect(code).toBe(2);
    expect(err).toContain('There is a file where a folder has to be');
  });

  test('without a folder to write to is bad input', async () => {
    expect(await run('sheets', 'x.nzw')).toMatchObject({ code: 2, err: expect.stringContaining('--out') });
  });
});

describe('import', () => {
  const square = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80"><rect x="10" y="10" width="60" height="40" fill="none" stroke="black"/></svg>';

  test('tells what the importer saw', async () => {
    const path = join(tempFolder(), 'room.svg');
    writeFileSync(path, square);
    const { code, out } = await run('import', path, '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ file: path, kind: 'svg', segments: 4, pageCount: 1, warnings: expect.any(Array), layers: expect.any(Array) });
    expect((await run('import', path)).out).toContain('4 straight pieces');
  });

  test.each([
    ['empty.dxf', ''],
    ['noise.dxf', '\u0001\u0002\u0003 no drawing'],
    ['noise.pdf', '%PDF-1.7 and then nothing'],
    ['half.svg', square.slice(0, 90)],
    ['notes.txt', 'Dear all'],
  ])('%s is bad input', async (name, content) => {
    const path = join(tempFolder(), name);
    writeFileSync(path, content);
    const { code, out, err } = await run('import', path);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(name);
  });

  test('a page that no file has is bad input', async () => {
    const path = join(tempFolder(), 'room.svg');
    writeFileSync(path, square);
    expect((await run('import', path, '--page', '0')).code).toBe(2);
    expect((await run('import', path, '--page', 'two')).code).toBe(2);
  });
});

describe('the command line itself', () => {
  test('says its version and how it is used', async () => {
    expect(await run('--version')).toMatchObject({ code: 0, out: '1.2.3' });
    const { code, out } = await run('--help');
    expect(code).toBe(0);
    for (const command of ['check', 'sheets', 'takeoff', 'import', 'new']) expect(out).toContain(command);
  });

  test.each([[[]], [['chek', 'a.nzw']], [['check']], [['check', 'a.nzw', '--jsn']], [['check', 'a.nzw', 'b.nzw']]])('%j is bad input', async (words) => {
    const { code, out, err } = await run(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).not.toBe('');
  });
});
