import { hostname } from 'node:os';
import { z } from '#shared/profile/zod';
import { beginningOf, isProcessAlive } from './process-life.ts';

/** Who holds something: one window of one running program. */
export const holderSchema = z.object({
  machine: z.string(),
  pid: z.number().int().positive(),
  /** When that process began; empty where the system does not tell. */
  began: z.string(),
  /** One host within the process. */
  host: z.string(),
  session: z.string(),
  /** Since when, ISO time. */
  since: z.string(),
});
export type Holder = z.infer<typeof holderSchema>;

/** Hosts of this process that have not ended. */
const living = new Set<string>();

/** Counts a host of this process as living until `hostEnded`. */
export const hostBegan = (host: string): void => {
  living.add(host);
};
export const hostEnded = (host: string): void => {
  living.delete(host);
};

/** This process as a holder. */
export const holderOf = (host: string, session: string, since: Date): Holder => ({
  machine: hostname(),
  pid: process.pid,
  began: beginningOf(process.pid),
  host,
  session,
  since: since.toISOString(),
});

/** Whether a holder still runs. One on another machine cannot be asked and counts as running. */
export function isLiving(holder: Holder): boolean {
  if (holder.machine !== hostname()) return true;
  if (!isProcessAlive(holder.pid)) return false;
  const began = beginningOf(holder.pid);
  if (holder.began && began && holder.began !== began) return false;
  return holder.pid !== process.pid || living.has(holder.host);
}
