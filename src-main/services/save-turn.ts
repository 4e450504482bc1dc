import { createHash, randomUUID } from 'node:crypto';
import { constants, copyFile, link, readFile, realpath, rename, unlink, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { z } from '#shared/profile/zod';
import { systemCodeOf } from './host-problem.ts';
import { beginningOf, isProcessAlive } from './process-life.ts';

const markSchema = z.object({ machine: z.string(), pid: z.number().int().positive(), began: z.string() });

const PAUSE_ms = 10;
/** Looks at the mark of another save before it is taken for one that was left behind: half a minute, where a save takes a moment. */
const MOST_LOOKS = 3000;

const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 32);

/** Whether whoever left a mark has certainly gone. One on another machine cannot be asked. */
function isLeftBehind(mark: string): boolean {
  try {
    const { machine, pid, began } = markSchema.parse(JSON.parse(mark));
    if (machine !== hostname()) return false;
    return !isProcessAlive(pid) || (began !== '' && beginningOf(pid) !== began);
  } catch {
    return false;
  }
}

/**
 * Waits until no other window or program is putting a file in its place, and keeps them waiting until it is released:
 * between looking whether a file is still as it was known and replacing it nobody else may do the same.
 * A mark beside the file says so; it holds for every program that saves there, on whatever machine.
 * @param looks  how often another's mark is looked at before it counts as left behind
 * @returns how to release it
 */
export async function takeSaveTurn(path: string, looks = MOST_LOOKS): Promise<() => Promise<void>> {
  const target = await realpath(path).catch(() => path);
  const mark = join(dirname(target), `.nzw-${digest(basename(target))}.saving`);
  const own = join(dirname(target), `.nzw-${process.pid}-${randomUUID()}.part`);
  await writeFile(own, JSON.stringify({ machine: hostname(), pid: process.pid, began: beginningOf(process.pid), save: randomUUID() }), { flag: 'wx' });
  try {
    let seen: string | undefined;
    for (let look = 0; !(await placed(own, mark)); look += 1) {
      const present = await readFile(mark, 'utf8').catch(() => undefined);
      if (present !== seen) look = 0;
      seen = present;
      if (present !== undefined && (isLeftBehind(present) || look >= looks)) await clear(mark, present);
      else await wait(PAUSE_ms);
    }
  } finally {
    await unlink(own).catch(() => undefined);
  }
  return () => unlink(mark).catch(() => undefined);
}

/** Puts the own mark in place, whole, unless there is one. */
async function placed(own: string, mark: string): Promise<boolean> {
  try {
    await link(own, mark);
    return true;
  } catch (error) {
    if (systemCodeOf(error) === 'EEXIST') return false;
  }
  try {
    // Some disks and network shares know no second names.
    await copyFile(own, mark, constants.COPYFILE_EXCL);
    return true;
  } catch (error) {
    if (systemCodeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

/** Takes a mark away when it is still the one that was seen; another's that came meanwhile is put back. */
async function clear(mark: string, seen: string): Promise<void> {
  const aside = `${mark}-${randomUUID()}`;
  await rename(mark, aside).catch(() => undefined);
  if ((await readFile(aside, 'utf8').catch(() => seen)) !== seen) await link(aside, mark).catch(() => undefined);
  await unlink(aside).catch(() => undefined);
}
