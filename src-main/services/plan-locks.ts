import { createHash } from 'node:crypto';
import { mkdir, readFile, readdir, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { replaceFile } from './atomic-file.ts';
import { type Holder, holderOf, holderSchema, isLiving } from './holder.ts';

/** Tells which windows have a plan open. It warns; what keeps work from being overwritten is the file's stamp. */
export interface PlanLocks {
  /** Notes that a window has the plan open and answers the other windows that have, longest first. */
  hold(path: string, session: string): Promise<readonly Holder[]>;
  release(path: string, session: string): Promise<void>;
  /** Lets go of whatever this host holds. */
  releaseAll(): Promise<void>;
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 32);

/** Locks as small files: a folder for each plan, in it a file for each window that has it open. */
export function makePlanLocks(folder: string, host: string, now: () => Date): PlanLocks {
  const held = new Map<string, { readonly path: string; readonly session: string }>();
  const folderOf = (path: string): string => join(folder, digest(path));
  const fileOf = (path: string, session: string): string => join(folderOf(path), digest(`${host}/${session}`));

  const release: PlanLocks['release'] = async (path, session) => {
    const file = fileOf(path, session);
    held.delete(file);
    await unlink(file).catch(() => undefined);
  };

  return {
    release,
    async hold(path, session) {
      await mkdir(folderOf(path), { recursive: true });
      const own = fileOf(path, session);
      if (!held.has(own)) {
        // Written before looking at the others: of two windows that open at once, at least one is told.
        await replaceFile(own, new TextEncoder().encode(JSON.stringify(holderOf(host, session, now()))));
        held.set(own, { path, session });
      }
      return othersIn(folderOf(path), own);
    },
    async releaseAll() {
      for (const { path, session } of [...held.values()]) await release(path, session);
    },
  };
}

/** Living holders of a folder but one's own; files of the dead and damaged ones are cleared. */
async function othersIn(folder: string, own: string): Promise<Holder[]> {
  const others: Holder[] = [];
  for (const name of await readdir(folder)) {
    const file = join(folder, name);
    if (file === own || name.startsWith('.')) continue;
    const holder = await readHolder(file);
    if (holder && isLiving(holder)) others.push(holder);
    else await unlink(file).catch(() => undefined);
  }
  return others.sort((a, b) => a.since.localeCompare(b.since));
}

/** Reads a holder file; undefined when it is gone or damaged. */
export async function readHolder(file: string): Promise<Holder | undefined> {
  try {
    return holderSchema.parse(JSON.parse(await readFile(file, 'utf8')));
  } catch {
    return undefined;
  }
}

/** Other windows in words for the user, or null when there are none. */
export function openElsewhereText(others: readonly Holder[], here: string): string | null {
  const [first] = others;
  if (!first) return null;
  const since = first.since.slice(0, 16).replace('T', ' ');
  const where = first.machine === here ? 'in another window' : `on the computer "${first.machine}"`;
  return `This plan is also open ${where} since ${since} UTC. Whoever saves second is asked before anything is replaced.`;
}
