import { randomUUID } from 'node:crypto';
import * as fs from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { systemCodeOf } from './host-problem.ts';
import { isProcessAlive } from './process-life.ts';

/** The file operations that a replacement goes through; tests cut it short between any two of them. */
export type FileSteps = Pick<typeof fs, 'open' | 'rename' | 'link' | 'copyFile' | 'unlink' | 'realpath' | 'readdir' | 'mkdir'>;

const PART = /^\.nzw-(\d+)-[0-9a-f-]+\.part$/;
/** A virus scanner or indexer holds a file for a moment; so many tries, each after a longer pause. */
const RENAME_TRIES = 5;
const PAUSE_ms = 20;

export interface Replacement {
  /** Keeps what was there before beside it, under its name with `.bak` added. */
  readonly keepPrevious?: boolean;
  /** Last look before the new bytes take the place; throwing leaves everything as it was. */
  readonly beforeSwap?: () => Promise<void>;
  readonly steps?: FileSteps;
}

/**
 * Replaces a file so that at every moment, a crash included, its name leads to either the whole old or
 * the whole new bytes: written aside in the same folder, flushed to the disk, then renamed.
 * @throws the system's error; the old file is then untouched and nothing is left beside it
 */
export async function replaceFile(path: string, bytes: Uint8Array, { keepPrevious = false, beforeSwap, steps = fs }: Replacement = {}): Promise<void> {
  const target = await steps.realpath(path).catch(() => path);
  const folder = dirname(target);
  await steps.mkdir(folder, { recursive: true });
  await sweepParts(folder, steps);
  const fresh = partIn(folder);
  const previous = partIn(folder);
  try {
    await writeFlushed(fresh, bytes, steps);
    await beforeSwap?.();
    if (keepPrevious && (await keepAside(target, previous, steps))) {
      await renameWithPatience(previous, `${target}.bak`, steps);
      // Where the .bak was that very file already, as after a crash right here, the renaming did nothing.
      await steps.unlink(previous).catch(() => undefined);
    }
    await renameWithPatience(fresh, target, steps);
  } catch (error) {
    for (const left of [fresh, previous]) await steps.unlink(left).catch(() => undefined);
    throw error;
  }
  await flushFolder(folder, steps);
}

const partIn = (folder: string): string => join(folder, `.nzw-${process.pid}-${randomUUID()}.part`);

async function writeFlushed(path: string, bytes: Uint8Array, steps: FileSteps): Promise<void> {
  const file = await steps.open(path, 'wx');
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Gives the present file a second name; answers whether there is one. */
async function keepAside(target: string, aside: string, steps: FileSteps): Promise<boolean> {
  try {
    await steps.link(target, aside);
    return true;
  } catch (error) {
    if (systemCodeOf(error) === 'ENOENT') return false;
    // Some disks and network shares know no second names.
    await steps.copyFile(target, aside);
    return true;
  }
}

async function renameWithPatience(from: string, to: string, steps: FileSteps): Promise<void> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await steps.rename(from, to);
    } catch (error) {
      if (tries === RENAME_TRIES || !['EBUSY', 'EPERM', 'EACCES'].includes(systemCodeOf(error) ?? '')) throw error;
      await wait(PAUSE_ms * tries);
    }
  }
}

/** Makes the new name itself durable. Not every system lets a folder be flushed; the rename stands all the same. */
async function flushFolder(folder: string, steps: FileSteps): Promise<void> {
  try {
    const handle = await steps.open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    return;
  }
}

/** Clears what a program that was killed while saving left in the folder. */
async function sweepParts(folder: string, steps: FileSteps): Promise<void> {
  for (const name of await steps.readdir(folder).catch(() => [])) {
    const pid = PART.exec(name)?.[1];
    if (pid && !isProcessAlive(Number(pid))) await steps.unlink(join(folder, basename(name))).catch(() => undefined);
  }
}
