import { randomUUID } from 'node:crypto';
import type { JobState, Problem } from '#shared/host/contract';
import { HostProblem, problemOf } from './host-problem.ts';

/** Tells how far a piece of work is: 0 … 1, and what it is doing. */
export type ReportProgress = (done: number, doing: string) => void;

export type JobKind = 'reading' | 'printing' | 'issuing';

/** Long pieces of work: each has an id, can be asked how far it is, and can be cancelled. */
export interface Jobs {
  start(kind: JobKind, doing: string, work: (report: ReportProgress, signal: AbortSignal) => Promise<unknown>): string;
  state(job: string): JobState;
  cancel(job: string): void;
  /** What the work of a finished job of this kind gave; anything else is trouble. */
  result(job: string, kind: JobKind): unknown;
  cancelAll(): void;
}

interface Job {
  readonly kind: JobKind;
  readonly abort: AbortController;
  progress: number;
  doing: string;
  outcome: { state: 'done'; value: unknown } | { state: 'failed'; problem: Problem } | { state: 'cancelled' } | null;
}

/** Finished jobs that are remembered; older ones are forgotten with their results. */
const MOST_FINISHED = 12;

const CANCELLED: Problem = { code: 'cancelled', what: 'This was cancelled.', where: '', remedy: 'Start it again if it is wanted after all.' };

export function makeJobs(): Jobs {
  const jobs = new Map<string, Job>();

  const find = (id: string): Job => {
    const job = jobs.get(id);
    if (!job) throw new HostProblem('not-found', 'This piece of work is no longer known.', '', 'Start it again.');
    return job;
  };

  const forgetOldest = (): void => {
    const finished = [...jobs].filter(([, job]) => job.outcome);
    for (const [id] of finished.slice(0, Math.max(0, finished.length - MOST_FINISHED))) jobs.delete(id);
  };

  const cancel = (job: Job): void => {
    if (job.outcome) return;
    job.outcome = { state: 'cancelled' };
    job.abort.abort();
  };

  return {
    start(kind, doing, work) {
      const id = randomUUID();
      const job: Job = { kind, abort: new AbortController(), progress: 0, doing, outcome: null };
      jobs.set(id, job);
      const report: ReportProgress = (done, what) => {
        job.progress = Math.min(1, Math.max(job.progress, done));
        job.doing = what;
      };
      const end = (outcome: NonNullable<Job['outcome']>): void => {
        job.outcome ??= outcome;
        forgetOldest();
      };
      work(report, job.abort.signal).then(
        (value) => end({ state: 'done', value }),
        (error: unknown) => end({ state: 'failed', problem: problemOf(error, doing) }),
      );
      return id;
    },
    state(id) {
      const { outcome, progress, doing } = find(id);
      if (!outcome) return { state: 'running', progress, doing, problem: null };
      if (outcome.state === 'failed') return { state: 'failed', progress, doing, problem: outcome.problem };
      if (outcome.state === 'cancelled') return { state: 'cancelled', progress, doing, problem: CANCELLED };
      return { state: 'done', progress: 1, doing, problem: null };
    },
    cancel: (id) => cancel(find(id)),
    result(id, kind) {
      const { outcome, kind: own } = find(id);
      if (own !== kind) throw new HostProblem('refused', `This piece of work was no ${kind}.`, '', 'Start it again.');
      if (outcome?.state === 'done') return outcome.value;
      const problem = outcome?.state === 'failed' ? outcome.problem : outcome ? CANCELLED : undefined;
      if (problem) throw new HostProblem(problem.code, problem.what, problem.where, problem.remedy);
      throw new HostProblem('refused', 'This piece of work is not finished yet.', '', 'Wait until it is done.');
    },
    cancelAll() {
      for (const job of jobs.values()) cancel(job);
    },
  };
}
