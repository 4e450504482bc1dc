import { readFile } from 'node:fs/promises';
import type { z } from '#shared/profile/zod';
import { replaceFile } from './atomic-file.ts';
import { makeTurns } from './turns.ts';

/** A small JSON file of the program's own. A missing or damaged one reads as its first value: nothing of the user's is in it. */
export interface KeptJson<T> {
  read(): Promise<T>;
  /** Changes it from what it is now. */
  change(how: (now: T) => T): Promise<void>;
}

/** Hosts of one process share these files. */
const inTurn = makeTurns();

/**
 * @param first  what it holds before anything was kept
 */
export function makeKeptJson<T>(path: string, schema: z.ZodType<T>, first: T): KeptJson<T> {
  const read = async (): Promise<T> => {
    try {
      return schema.parse(JSON.parse(await readFile(path, 'utf8')));
    } catch {
      return first;
    }
  };
  return {
    read,
    change: (how) =>
      inTurn(path, async () => {
        const next = how(await read());
        await replaceFile(path, new TextEncoder().encode(`${JSON.stringify(next, null, 2)}\n`));
      }),
  };
}
