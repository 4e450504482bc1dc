import { spawnSync } from 'node:child_process';
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hostBegan, hostEnded } from '../../../src-main/services/holder.ts';
import { makePlanLocks, openElsewhereText } from '../../../src-main/services/plan-locks.ts';
import { beginningOf, isProcessAlive } from '../../../src-main/services/process-life.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const PLAN = '/plans/hut.nzw';
const now = (): Date => TEST_TIME;
/** Number and beginning of a process that has ended. */
const ended = (): number => spawnSync(process.execPath, ['-e', '']).pid;

describe('who has a plan open', () => {
  beforeEach(() => ['a', 'b'].forEach(hostBegan));
  afterEach(() => ['a', 'b'].forEach(hostEnded));

  test('the first is alone, the second is told of the first', async () => {
    const folder = tempFolder();
    const first = makePlanLocks(folder, 'a', now);
    const second = makePlanLocks(folder, 'b', now);
    expect(await first.hold(PLAN, 's1')).toEqual([]);
    expect(await second.hold(PLAN, 's2')).toMatchObject([{ host: 'a', session: 's1', pid: process.pid }]);
    expect(await first.hold(PLAN, 's1')).toMatchObject([{ host: 'b', session: 's2' }]);
  });

  test('two windows of one host see each other', async () => {
    const locks = makePlanLocks(tempFolder(), 'a', now);
    await locks.hold(PLAN, 's1');
    expect(await locks.hold(PLAN, 's2')).toMatchObject([{ session: 's1' }]);
  });

  test('another plan is another matter', async () => {
    const folder = tempFolder();
    await makePlanLocks(folder, 'a', now).hold(PLAN, 's1');
    expect(await makePlanLocks(folder, 'b', now).hold('/plans/annex.nzw', 's2')).toEqual([]);
  });

  test('a plan that was released, or whose host has ended, is free', async () => {
    const folder = tempFolder();
    const first = makePlanLocks(folder, 'a', now);
    const second = makePlanLocks(folder, 'b', now);
    await first.hold(PLAN, 's1');
    await first.release(PLAN, 's1');
    expect(await second.hold(PLAN, 's2')).toEqual([]);
    await second.releaseAll();
    await first.hold(PLAN, 's1');
    hostEnded('a');
    expect(await second.hold(PLAN, 's2')).toEqual([]);
  });

  test('locks of processes that have gone, and damaged ones, are cleared', async () => {
    const folder = tempFolder();
    const locks = makePlanLocks(folder, 'a', now);
    await locks.hold(PLAN, 's1');
    const [plan = ''] = await readdir(folder);
    const holder = { machine: hostname(), pid: ended(), began: '1', host: 'x', session: 's', since: TEST_TIME.toISOString() };
    await writeFile(join(folder, plan, 'gone'), JSON.stringify(holder));
    await writeFile(join(folder, plan, 'damaged'), '{"pid":');
    // The number was given out again: the process that has it now began at another time.
    if (beginningOf(process.ppid)) await writeFile(join(folder, plan, 'reused'), JSON.stringify({ ...holder, pid: process.ppid, began: '1' }));
    expect(await locks.hold(PLAN, 's1')).toEqual([]);
    expect(await readdir(join(folder, plan))).toHaveLength(1);
  });

  test('a holder on another computer counts as living', async () => {
    const folder = tempFolder();
    const locks = makePlanLocks(folder, 'a', now);
    await locks.hold(PLAN, 's1');
    const [plan = ''] = await readdir(folder);
    await writeFile(join(folder, plan, 'far'), JSON.stringify({ machine: 'drawing-office', pid: 1, began: '', host: 'x', session: 's', since: '2026-03-04T08:00:00.000Z' }));
    const others = await locks.hold(PLAN, 's1');
    expect(openElsewhereText(others, hostname())).toContain('on the computer "drawing-office" since 2026-03-04 08:00');
  });

  test('a folder that cannot be made is trouble, not silence', async () => {
    const folder = tempFolder();
    await mkdir(join(folder, 'x'));
    await writeFile(join(folder, 'x', 'locks'), '');
    await expect(makePlanLocks(join(folder, 'x', 'locks'), 'a', now).hold(PLAN, 's1')).rejects.toThrow();
  });
});

test('a running process is alive, an ended one is not', () => {
  expect(isProcessAlive(process.pid)).toBe(true);
  expect(isProcessAlive(ended())).toBe(false);
});
