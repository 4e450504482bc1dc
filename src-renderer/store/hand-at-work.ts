import type { Store } from './state.ts';

/** The hand rests when nothing was moved for so long [ms]. */
const REST_ms = 200;

/** Tells whether the user moves the board or something on it just now: whatever can wait then waits. */
export interface HandAtWork {
  isAtWork(): boolean;
  stop(): void;
}

/** Watches the camera and the plan under the hand. */
export function watchHand(store: Store, now_ms: () => number): HandAtWork {
  let { camera } = store.get().session;
  let { preview } = store.get();
  let movedAt_ms = Number.NEGATIVE_INFINITY;
  const stop = store.subscribe(() => {
    const state = store.get();
    if (state.session.camera === camera && state.preview === preview) return;
    ({ camera } = state.session);
    ({ preview } = state);
    movedAt_ms = now_ms();
  });
  return { isAtWork: () => now_ms() - movedAt_ms < REST_ms, stop };
}
