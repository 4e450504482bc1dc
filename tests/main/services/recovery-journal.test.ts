import { spawnSync } from 'node:child_process';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { newPlan } from '#shared/model/plan';
import { hostBegan, hostEnded } from '../../../src-main/services/holder.ts';
import { makeRecoveryJournal } from '../../../src-main/services/recovery-journal.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const now = (): Date => TEST_TIME;
const work = (steps: number) => ({ name: 'Hut', ref: '/plans/hut.nzw', stamp: 'stamp-1', steps, plan: { ...newPlan(), nextSerial: steps + 1 } });

describe('unsaved work', () => {
  beforeEach(() => ['a', 'b'].forEach(hostBegan));
  afterEach(() => ['a', 'b'].forEach(hostEnded));

  test('is offered once its program has gone, and comes back exactly', async () => {
    const folder = tempFolder();
    const first = makeRecoveryJournal(folder, 'a', now);
    await first.keep('s1', work(3));
    await first.keep('s1', work(4));
    const second = makeRecoveryJournal(folder, 'b', now);
    expect(await second.list()).toEqual([]);
    hostEnded('a');
    expect(await second.list()).toEqual([{ id: 's1', name: 'Hut', ref: '/plans/hut.nzw', changedAt: TEST_TIME.toISOString(), steps: 4 }]);
    const back = await second.adopt('s1', 's2');
    expect(JSON.parse(back.planText)).toEqual(work(4).plan);
    expect(back).toMatchObject({ stamp: 'stamp-1', ref: '/plans/hut.nzw', name: 'Hut' });
  });

  test('of a killed process is offered', async () => {
    const folder = tempFolder();
    const journal = makeRecoveryJournal(folder, 'a', now);
    await journal.keep('s1', work(1));
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    await writeFile(join(folder, 's1.holder'), JSON.stringify({ machine: hostname(), pid, began: '1', host: 'x', session: 's1', since: TEST_TIME.toISOString() }));
    expect(await makeRecoveryJournal(folder, 'b', now).list()).toHaveLength(1);
  });

  test('that was taken up is held by its new window, and is offered again when that one goes too', async () => {
    const folder = tempFolder();
    const first = makeRecoveryJournal(folder, 'a', now);
    await first.keep('s1', work(1));
    await first.letGo();
    const second = makeRecoveryJournal(folder, 'b', now);
    await second.adopt('s1', 's2');
    expect(await first.list()).toEqual([]);
    await expect(first.adopt('s2', 's3')).rejects.toEqual(expect.objectContaining({ problem: expect.objectContaining({ code: 'in-use' }) }));
    await second.letGo();
    expect(await first.list()).toMatchObject([{ id: 's2', steps: 1 }]);
  });

  test('of the window that takes other work up is not lost', async () => {
    const folder = tempFolder();
    const first = makeRecoveryJournal(folder, 'a', now);
    await first.keep('s1', work(1));
    await first.letGo();
    const second = makeRecoveryJournal(folder, 'b', now);
    await second.keep('s2', work(7));
    await second.adopt('s1', 's2');
    expect(await first.list()).toMatchObject([{ steps: 7 }]);
  });

  test('is dropped by its window, or when nobody holds it, but not from another window', async () => {
    const folder = tempFolder();
    const first = makeRecoveryJournal(folder, 'a', now);
    const second = makeRecoveryJournal(folder, 'b', now);
    await first.keep('s1', work(1));
    await expect(second.drop('s1')).rejects.toEqual(expect.objectContaining({ problem: expect.objectContaining({ code: 'in-use' }) }));
    await first.letGo();
    await second.drop('s1');
    expect(await readdir(folder)).toEqual([]);
    await first.keep('s3', work(1));
    await first.drop('s3');
    expect(await readdir(folder)).toEqual([]);
  });

  test('keeps the order of its changes: the last one asked for is the one that stays', async () => {
    const folder = tempFolder();
    const journal = makeRecoveryJournal(folder, 'a', now);
    await Promise.all([1, 2, 3, 4, 5, 6, 7, 8].map((steps) => journal.keep('s1', work(steps))));
    expect(JSON.parse((await readFile(join(folder, 's1.work'), 'utf8')).split('\n')[0] ?? '').steps).toBe(8);
    await Promise.all([journal.keep('s1', work(9)), journal.drop('s1')]);
    expect(await readdir(folder)).toEqual([]);
  });

  test('that is damaged is not offered and does not hide the rest', async () => {
    const folder = tempFolder();
    const journal = makeRecoveryJournal(folder, 'a', now);
    await journal.keep('s1', work(1));
    await journal.letGo();
    await writeFile(join(folder, 's2.work'), '{"name":"x"');
    await writeFile(join(folder, 's3.work'), '');
    expect(await journal.list()).toMatchObject([{ id: 's1' }]);
    await expect(journal.adopt('s3', 's4')).rejects.toEqual(expect.objectContaining({ problem: expect.objectContaining({ code: 'damaged' }) }));
  });

  test('that has gone is not found', async () => {
    await expect(makeRecoveryJournal(tempFolder(), 'a', now).adopt('s9', 's1')).rejects.toEqual(expect.objectContaining({ problem: expect.objectContaining({ code: 'not-found' }) }));
  });
});
