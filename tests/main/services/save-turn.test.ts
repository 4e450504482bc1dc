import { readdir, readFile, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { savePlanFile } from '../../../src-main/services/plan-files.ts';
import { takeSaveTurn } from '../../../src-main/services/save-turn.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const EIGHT = [0, 1, 2, 3, 4, 5, 6, 7];

/** Leaves a mark as another save would have, and answers its name. */
async function leaveMark(path: string, folder: string, content: string): Promise<string> {
  const release = await takeSaveTurn(path);
  const name = (await readdir(folder)).find((each) => each.endsWith('.saving')) ?? '';
  await release();
  await writeFile(join(folder, name), content);
  return name;
}

describe('saving one file from several windows at once', () => {
  test('of several that knew the same state one saves, the others are told', async () => {
    const path = join(tempFolder(), 'plan.nzw');
    const stamp = await savePlanFile(path, bytes('first'), { stamp: null, overwrite: false });
    const saves = await Promise.allSettled(EIGHT.map((i) => savePlanFile(path, bytes(`from ${i}`), { stamp, overwrite: false })));
    const winner = saves.findIndex(({ status }) => status === 'fulfilled');
    expect(saves.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    for (const save of saves) if (save.status === 'rejected') expect(save.reason).toMatchObject({ problem: { code: 'conflict' } });
    expect([await readFile(path, 'utf8'), await readFile(`${path}.bak`, 'utf8')]).toEqual([`from ${winner}`, 'first']);
  });

  test('of several new plans under one name one is written', async () => {
    const folder = tempFolder();
    const saves = await Promise.allSettled(EIGHT.map((i) => savePlanFile(join(folder, 'plan.nzw'), bytes(`from ${i}`), { stamp: null, overwrite: false })));
    expect(saves.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect(await readdir(folder)).toEqual(['plan.nzw']);
  });
});

describe('a mark that was left behind', () => {
  test('by a program that was killed is cleared', async () => {
    const folder = tempFolder();
    const path = join(folder, 'plan.nzw');
    // No process has this number: the largest that Linux gives out is 4,194,304.
    await leaveMark(path, folder, JSON.stringify({ machine: hostname(), pid: 4_194_999, began: '', save: 'x' }));
    await savePlanFile(path, bytes('saved'), { stamp: null, overwrite: false });
    expect(await readdir(folder)).toEqual(['plan.nzw']);
  });

  test.each([
    ['of another machine', JSON.stringify({ machine: 'a machine that is off', pid: 1, began: '', save: 'x' })],
    ['that was cut short', ''],
  ])('%s is waited for, then cleared', async (_, content) => {
    const folder = tempFolder();
    const path = join(folder, 'plan.nzw');
    await leaveMark(path, folder, content);
    const release = await takeSaveTurn(path, 3);
    expect((await readdir(folder)).filter((name) => name.endsWith('.saving'))).toHaveLength(1);
    await release();
    expect(await readdir(folder)).toEqual([]);
  });
});
