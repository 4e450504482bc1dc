import type { Answer, Host, JobState, Problem } from '#shared/host/contract';
import type { Plan, Underlay } from '#shared/model/plan';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import type { Store } from './state.ts';

/** How far the reading of one page of a floor plan is. */
export type DrawingState =
  | { readonly state: 'loading'; readonly progress: number; readonly doing: string }
  | { readonly state: 'ready'; readonly drawing: UnderlayDrawing }
  | { readonly state: 'failed'; readonly problem: Problem };

/** Follows a job of the host to its end. */
export type FollowJob = (host: Host, job: string, onState: (state: JobState) => void, signal: AbortSignal) => Promise<Answer<JobState>>;

/** One page of a file that the plan holds. */
type PageOf = Pick<Underlay, 'asset' | 'page'>;

/** The floor plans that were read, kept outside the plan: each page of a file once, however often it is placed. */
export interface UnderlayDrawings {
  /** State of the page that an underlay shows; undefined while nobody asked for it. */
  stateOf(plan: Plan, underlay: PageOf): DrawingState | undefined;
  /** The page that an underlay shows, once it is read. */
  find(plan: Plan, underlay: PageOf): UnderlayDrawing | undefined;
  /** Starts reading what the visible underlays and the title block of a plan show and what is not yet read. */
  want(plan: Plan): void;
  /** Starts reading one page, unless it was asked for before. */
  wantPage(plan: Plan, page: PageOf): void;
  /** Keeps a page that an import has read already. */
  keep(sha256: string, page: number, drawing: UnderlayDrawing): void;
  /** Reads a page again after a failure. */
  retry(plan: Plan, underlay: Underlay): void;
  /** Reads what the plan of a store shows, now and after every change. Answers how to stop. */
  follow(store: Store): () => void;
  subscribe(listener: () => void): () => void;
  /** Counts the changes: identical while nothing changed. */
  version(): number;
}

/** Makes the window's keep of floor plan drawings. */
export function makeUnderlayDrawings(host: Host, followJob: FollowJob): UnderlayDrawings {
  const pages = new Map<string, DrawingState>();
  const listeners = new Set<() => void>();
  let version = 0;

  const keyOf = (plan: Plan, underlay: PageOf): string | undefined => {
    const asset = plan.assets[underlay.asset];
    return asset && `${asset.sha256}/${underlay.page}`;
  };
  const become = (key: string, state: DrawingState): void => {
    pages.set(key, state);
    version += 1;
    for (const listener of [...listeners]) listener();
  };
  const failedReading = (where: string): DrawingState => ({
    state: 'failed',
    problem: { code: 'failed', what: 'The floor plan could not be read.', where, remedy: 'Try again, or import the file anew.' },
  });

  async function load(key: string, sha256: string, page: number, name: string): Promise<void> {
    become(key, { state: 'loading', progress: 0, doing: `Reading ${name}` });
    try {
      const begun = await host.readUnderlay({ sha256, page });
      if (!begun.ok) return become(key, { state: 'failed', problem: begun.problem });
      const { job } = begun.value;
      const done = await followJob(host, job, ({ progress, doing }) => become(key, { state: 'loading', progress, doing }), new AbortController().signal);
      if (!done.ok) return become(key, { state: 'failed', problem: done.problem });
      const result = await host.underlayResult({ job });
      become(key, result.ok ? { state: 'ready', drawing: decodeDrawing(result.value.bytes) } : { state: 'failed', problem: result.problem });
    } catch {
      become(key, failedReading(name));
    }
  }

  const wantOne = (plan: Plan, underlay: PageOf): void => {
    const asset = plan.assets[underlay.asset];
    const key = keyOf(plan, underlay);
    if (asset && key !== undefined && !pages.has(key)) void load(key, asset.sha256, underlay.page, asset.name);
  };

  const drawings: UnderlayDrawings = {
    stateOf(plan, underlay) {
      const key = keyOf(plan, underlay);
      return key === undefined ? undefined : pages.get(key);
    },
    find(plan, underlay) {
      const state = drawings.stateOf(plan, underlay);
      return state?.state === 'ready' ? state.drawing : undefined;
    },
    want(plan) {
      for (const level of Object.values(plan.levels)) {
        for (const underlay of Object.values(level.underlays)) if (underlay.visible) wantOne(plan, underlay);
      }
      const { logo } = plan.settings.sheets.titleBlock;
      if (logo !== null) wantOne(plan, { asset: logo, page: 1 });
    },
    wantPage: wantOne,
    keep: (sha256, page, drawing) => become(`${sha256}/${page}`, { state: 'ready', drawing }),
    retry(plan, underlay) {
      const key = keyOf(plan, underlay);
      if (key === undefined || pages.get(key)?.state === 'loading') return;
      pages.delete(key);
      wantOne(plan, underlay);
    },
    follow(store) {
      let seen: Plan | null = null;
      const look = (): void => {
        const plan = store.get().history.present;
        if (plan === seen) return;
        seen = plan;
        drawings.want(plan);
      };
      look();
      return store.subscribe(look);
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    version: () => version,
  };
  return drawings;
}
