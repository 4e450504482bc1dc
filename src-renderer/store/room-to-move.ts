import type { PatchAnswer } from '#shared/margins/allowed-patch';
import type { HeightRange } from '#shared/margins/height-range';
import type { ProvenAnswer } from '#shared/margins/proven-patch';
import type { Plan, RefOf } from '#shared/model/plan';
import { isSameRef } from '#shared/model/plan';
import type { State, Store } from './state.ts';

/** What the window asks its worker. */
export interface RoomRequest {
  readonly serial: number;
  readonly plan: Plan;
  readonly nozzle: RefOf<'nozzle'>;
}

/** What it answers, step by step: the patch, the patch with every rule tried, and the heights. */
export interface RoomReply {
  readonly serial: number;
  readonly patch: PatchAnswer | ProvenAnswer;
  readonly isTried: boolean;
  readonly heights: HeightRange | undefined;
}

export type StartRoomWorker = (onReply: (reply: RoomReply) => void, onBroken: () => void) => { post(request: RoomRequest): void; end(): void };

/** Where the selected nozzle may be put. */
export interface Room extends Omit<RoomReply, 'serial'> {
  readonly nozzle: RefOf<'nozzle'>;
  /** The plan that it was found for: another one on the board means that it is stale. */
  readonly plan: Plan;
}

/** Room to move of the nozzle that is selected. */
export interface RoomToMove {
  get(): Room | null;
  subscribe(listener: () => void): () => void;
}

/** The plan must stand still for so long before it is asked for [ms]. */
const REST_ms = 120;

/** The one nozzle that is selected, if it is one. */
export function selectedNozzle({ session: { selection } }: State): RefOf<'nozzle'> | undefined {
  const [only] = selection;
  return selection.length === 1 && only?.kind === 'nozzle' ? only : undefined;
}

/**
 * Keeps the room to move of the selected nozzle, found in a worker once the plan has stood still. While a drag goes on, and
 * until the answer is there, the last one of the same nozzle stands, marked by its plan as stale.
 */
export function followRoomToMove(store: Store, start: StartRoomWorker): RoomToMove {
  let worker: ReturnType<StartRoomWorker> | null = null;
  let room: Room | null = null;
  let serial = 0;
  let asked: { readonly plan: Plan; readonly nozzle: RefOf<'nozzle'> } | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const become = (next: Room | null): void => {
    room = next;
    for (const listener of [...listeners]) listener();
  };
  const onReply = ({ serial: answered, ...rest }: RoomReply): void => {
    if (asked && answered === serial) become({ ...rest, ...asked });
  };
  const onBroken = (): void => {
    worker?.end();
    worker = null;
  };
  const ask = (): void => {
    const state = store.get();
    const nozzle = selectedNozzle(state);
    if (!nozzle || state.preview) return;
    serial += 1;
    asked = { plan: state.history.present, nozzle };
    worker ??= start(onReply, onBroken);
    worker.post({ serial, ...asked });
  };
  const look = (): void => {
    const state = store.get();
    const nozzle = selectedNozzle(state);
    if (!nozzle) {
      asked = null;
      clearTimeout(timer);
      if (room) become(null);
      return;
    }
    if (room && !isSameRef(room.nozzle, nozzle)) become(null);
    if (state.preview || (asked && asked.plan === state.history.present && isSameRef(asked.nozzle, nozzle))) return;
    asked = null;
    clearTimeout(timer);
    timer = setTimeout(ask, REST_ms);
  };
  store.subscribe(look);
  look();
  return {
    get: () => room,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
