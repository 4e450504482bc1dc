import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { issueSet } from '#shared/commands/issue-set';
import { packPlan } from '#shared/model/pack-plan';
import { newPlan } from '#shared/model/plan';
import { runCli } from '../../../src-main/cli/run-cli.ts';
import { sha256Of } from '../../../src-main/services/asset-store.ts';
import { packWithAssets, readPlanBytes } from '../../../src-main/services/plan-files.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';
import { done } from '../../support/try-command.ts';

async function run(...words: string[]) {
  const lines: string[] = [];
  const asides: string[] = [];
  const code = await runCli(words, '1.2.3', { line: (text) => lines.push(text), aside: (text) => asides.push(text), width: 80, now: () => TEST_TIME });
  return { code, out: lines.join('\n'), err: asides.join('\n') };
}

const SHEETS = new TextEncoder().encode('%PDF-1.7 as it was given out');
const FROZEN = packPlan(newPlan(), {});
const issuing = { mark: 'A', date: '2026-11-30', by: 'R. Vale', purpose: 'Approval' };
const kept = { sha256: 'a'.repeat(64), plan: { name: 'Set A, plan', file: 'a.nzw', sha256: sha256Of(FROZEN) }, sheets: { name: 'Set A, sheets', file: 'a.pdf', sha256: sha256Of(SHEETS) } };
const issued = done(newPlan(), issueSet(issuing, kept)).next;

describe('sheets --issue', () => {
  test('the current set is written byte for byte as it was issued', async () => {
    const folder = tempFolder();
    const path = join(folder, 'hut.nzw');
    writeFileSync(path, packPlan(issued, { 'a.nzw': FROZEN, 'a.pdf': SHEETS }));
    const { code, err } = await run('sheets', path, '--out', join(folder, 'out'), '--issue', 'A');
    expect([code, err]).toEqual([0, '']);
    expect(readdirSync(join(folder, 'out'))).toEqual(['hut set A sheets.pdf']);
    expect(new Uint8Array(readFileSync(join(folder, 'out', 'hut set A sheets.pdf')))).toEqual(SHEETS);
  });

  test('a mark that was never issued, and a set that was not kept', async () => {
    const folder = tempFolder();
    const path = join(folder, 'hut.nzw');
    writeFileSync(path, packPlan(issued, {}));
    expect(await run('sheets', path, '--out', folder, '--issue', 'C')).toMatchObject({ code: 2, err: expect.stringContaining('Issued sets: A.') });
    expect(await run('sheets', path, '--out', folder, '--issue', 'A')).toMatchObject({ code: 2, err: expect.stringContaining('was not kept') });
  });
});

describe('files of issued sets', () => {
  test('one that is lost or damaged is named as what it is', async () => {
    expect((await packWithAssets(issued, async () => undefined)).remarks.join(' ')).toContain('The issued set “Set A, plan” was not at hand');
    expect(readPlanBytes(packPlan(issued, { 'a.nzw': FROZEN, 'a.pdf': new Uint8Array(3) }), 'x.nzw').remarks.join(' ')).toContain('The issued set “Set A, sheets” in this file is damaged');
  });
});
