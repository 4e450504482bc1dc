import { randomUUID } from 'node:crypto';
import { mkdir, open, readFile, readdir, rename, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from '#shared/profile/zod';
import type { Recovery } from '#shared/host/contract';
import type { Plan } from '#shared/model/plan';
import { replaceFile } from './atomic-file.ts';
import { holderOf, isLiving } from './holder.ts';
import { HostProblem, systemCodeOf } from './host-problem.ts';
import { readHolder } from './plan-locks.ts';
import { makeTurns } from './turns.ts';

const headSchema = z.object({
  name: z.string(),
  ref: z.string().nullable(),
  /** Stamp of the file that the unsaved work started from. */
  stamp: z.string().nullable(),
  changedAt: z.string(),
  steps: z.number().int().min(0),
  /** Digests of the floor plans that the state needs. */
  assets: z.array(z.string()),
});
type Head = z.infer<typeof headSchema>;

/** Unsaved work as it was kept: the plan as text, to be read like any plan file. */
export interface KeptWork extends Omit<Head, 'assets'> {
  readonly planText: string;
}

/**
 * Unsaved work of each window, in one file a window: a line that says what it is, then the plan.
 * A file beside it names its holder; work is offered for recovery once that holder has gone.
 */
export interface RecoveryJournal {
  keep(session: string, work: { name: string; ref: string | null; stamp: string | null; steps: number; plan: Plan }): Promise<void>;
  /** Forgets work of this window, or work that nobody holds. */
  drop(session: string): Promise<void>;
  list(): Promise<Recovery[]>;
  /** Reads kept work and makes it this session's own. */
  adopt(id: string, session: string): Promise<KeptWork>;
  /** Digests of all floor plans that unsaved work needs. */
  neededAssets(): Promise<Set<string>>;
  /** This host ends: its unsaved work may be recovered by another. */
  letGo(): Promise<void>;
}

const WORK = '.work';
const HOLDER = '.holder';
/** A head is a few hundred bytes and 64 for each floor plan. */
const LONGEST_HEAD_bytes = 1024 * 1024;

export function makeRecoveryJournal(folder: string, host: string, now: () => Date): RecoveryJournal {
  const inTurn = makeTurns();
  const held = new Set<string>();
  const workOf = (id: string): string => join(folder, `${id}${WORK}`);
  const holderFileOf = (id: string): string => join(folder, `${id}${HOLDER}`);

  const hold = async (session: string): Promise<void> => {
    if (held.has(session)) return;
    await replaceFile(holderFileOf(session), new TextEncoder().encode(JSON.stringify(holderOf(host, session, now()))));
    held.add(session);
  };
  const isFree = async (id: string): Promise<boolean> => {
    const holder = await readHolder(holderFileOf(id));
    return !holder || !isLiving(holder);
  };
  const idsKept = async (): Promise<string[]> => {
    await mkdir(folder, { recursive: true });
    return (await readdir(folder)).filter((name) => name.endsWith(WORK)).map((name) => name.slice(0, -WORK.length));
  };

  return {
    keep: (session, { plan, ...about }) =>
      inTurn(session, async () => {
        await hold(session);
        const assets = Object.values(plan.assets).map(({ sha256 }) => sha256);
        const head: Head = { ...about, assets, changedAt: now().toISOString() };
        await replaceFile(workOf(session), new TextEncoder().encode(`${JSON.stringify(head)}\n${JSON.stringify(plan)}`));
      }),

    drop: (session) =>
      inTurn(session, async () => {
        if (!held.has(session) && !(await isFree(session))) {
          throw new HostProblem('in-use', 'This unsaved work belongs to another open window.', '', 'Save or discard it there.');
        }
        await unlink(workOf(session)).catch(() => undefined);
        await unlink(holderFileOf(session)).catch(() => undefined);
        held.delete(session);
      }),

    async list() {
      const found: Recovery[] = [];
      for (const id of await idsKept()) {
        const head = (await isFree(id)) ? await readHead(workOf(id)) : undefined;
        if (head) found.push({ id, name: head.name, ref: head.ref, changedAt: head.changedAt, steps: head.steps });
      }
      return found.sort((a, b) => b.changedAt.localeCompare(a.changedAt));
    },

    adopt: (id, session) =>
      inTurn(session, async () => {
        if (!held.has(id) && !(await isFree(id))) {
          throw new HostProblem('in-use', 'This unsaved work has been taken up by another window.', '', 'Look for that window.');
        }
        const work = await readWork(workOf(id));
        if (id !== session) {
          // What this window had kept itself stays recoverable under a name of its own.
          if (await stat(workOf(session)).catch(() => undefined)) await rename(workOf(session), workOf(randomUUID()));
          await hold(session);
          await rename(workOf(id), workOf(session));
          await unlink(holderFileOf(id)).catch(() => undefined);
          held.delete(id);
        } else await hold(session);
        return work;
      }),

    async neededAssets() {
      const heads = await Promise.all((await idsKept()).map((id) => readHead(workOf(id))));
      return new Set(heads.flatMap((head) => head?.assets ?? []));
    },

    async letGo() {
      for (const session of [...held]) {
        await inTurn(session, async () => {
          await unlink(holderFileOf(session)).catch(() => undefined);
          held.delete(session);
        });
      }
    },
  };
}

/** The first line of a work file; undefined when it is gone or damaged. */
async function readHead(path: string): Promise<Head | undefined> {
  const file = await open(path, 'r').catch(() => undefined);
  if (!file) return undefined;
  try {
    const { size } = await file.stat();
    const start = Buffer.alloc(Math.min(size, LONGEST_HEAD_bytes));
    await file.read(start, 0, start.length, 0);
    const end = start.indexOf('\n');
    return end < 0 ? undefined : headSchema.parse(JSON.parse(start.toString('utf8', 0, end)));
  } catch {
    return undefined;
  } finally {
    await file.close();
  }
}

async function readWork(path: string): Promise<KeptWork> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    if (systemCodeOf(error) !== 'ENOENT') throw error;
    throw new HostProblem('not-found', 'This unsaved work is no longer there.', '', 'It may have been taken up or discarded in another window.');
  }
  const end = text.indexOf('\n');
  try {
    return { ...headSchema.parse(JSON.parse(text.slice(0, end))), planText: text.slice(end + 1) };
  } catch {
    throw new HostProblem('damaged', 'This unsaved work cannot be read.', path, 'Open the last saved plan instead; the file named here may be sent to whoever looks after the program.');
  }
}
