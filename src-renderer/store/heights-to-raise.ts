import type { HeightRange } from '#shared/margins/height-range';
import type { Plan, RefOf } from '#shared/model/plan';
import { isSameRef } from '#shared/model/plan';
import type { State, Store } from './state.ts';

/** What has a height of its own besides a nozzle: the rail behind a cylinder, and a level pipe. */
export type Raised = RefOf<'cylinder'> | RefOf<'pipe'>;

/** What the window asks its worker. */
export interface HeightsRequest {
  readonly serial: number;
  readonly plan: Plan;
  readonly raised: Raised;
}

export interface HeightsReply {
  readonly serial: number;
  /** null where there is none: a rail that is not set, a pipe that is not level. */
  readonly range: HeightRange | null;
}

export type StartHeightsWorker = (onReply: (reply: HeightsReply) => void, onBroken: () => void) => { post(request: HeightsRequest): void; end(): void };

/** How far the selected thing may be raised and lowered. */
export interface Heights {
  readonly raised: Raised;
  /** The plan that it was found for: another one on the board means that it is stale. */
  readonly plan: Plan;
  readonly range: HeightRange | null;
}

export interface HeightsToRaise {
  get(): Heights | null;
  subscribe(listener: () => void): () => void;
}

/** The plan must stand still for so long before it is asked for [ms]. */
const REST_ms = 250;

function selectedRaised({ session: { selection } }: State): Raised | undefined {
  const [only] = selection;
  return selection.length === 1 && (only?.kind === 'cylinder' || only?.kind === 'pipe') ? only : undefined;
}

/** Keeps how far the selected rail or pipe may be raised, found in a worker once the plan has stood still. */
export function followHeights(store: Store, start: StartHeightsWorker): HeightsToRaise {
  let worker: ReturnType<StartHeightsWorker> | null = null;
  let heights: Heights | null = null;
  let serial = 0;
  let asked: Omit<Heights, 'range'> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const become = (next: Heights | null): void => {
    heights = next;
    for (const listener of [...listeners]) listener();
  };
  const onReply = ({ serial: answered, range }: HeightsReply): void => {
    if (asked && answered === serial) become({ ...asked, range });
  };
  const onBroken = (): void => {
    worker?.end();
    worker = null;
  };
  const ask = (): void => {
    const state = store.get();
    const raised = selectedRaised(state);
    if (!raised || state.preview) return;
    serial += 1;
    asked = { plan: state.history.present, raised };
    worker ??= start(onReply, onBroken);
    worker.post({ serial, ...asked });
  };
  const look = (): void => {
    const state = store.get();
    const raised = selectedRaised(state);
    clearTimeout(timer);
    if (!raised) {
      asked = null;
      if (heights) become(null);
      return;
    }
    if (heights && !isSameRef(heights.raised, raised)) become(null);
    if (state.preview || (asked && asked.plan === state.history.present && isSameRef(asked.raised, raised))) return;
    asked = null;
    timer = setTimeout(ask, REST_ms);
  };
  store.subscribe(look);
  look();
  return {
    get: () => heights,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
