import { checkOn, evaluationOf } from './evaluations.ts';
import { shownPlan } from './selectors.ts';
import type { Store } from './state.ts';

/**
 * Runs something once the window has nothing else to do, and says whether there is time for another slice;
 * answers how to call it off.
 */
export type WhenIdle = (run: (hasTime: () => boolean) => void) => () => void;

/** What was checked is told no more often than this [ms]. */
const TELL_EVERY_ms = 300;
/** Showing it takes no larger share of the window's time than one in so many: a large plan is slow to show. */
const SHOW_SHARE = 20;
/** But it is told at the latest after this [ms]. */
const TELL_LATEST_ms = 5000;

/**
 * Finishes the checks of the shown plan in idle time, slice by slice, and tells the store now and then and at the end.
 * A drag that goes on comes first: its next step is a plan of its own. Answers how to stop.
 */
export function followChecks(store: Store, whenIdle: WhenIdle, now_ms: () => number = () => performance.now()): () => void {
  let callOff: (() => void) | null = null;
  let toldAt_ms = Number.NEGATIVE_INFINITY;
  let tellEvery_ms = TELL_EVERY_ms;
  let isBeingShown = false;
  const goOn = (hasTime: () => boolean): void => {
    callOff = null;
    const began_ms = now_ms();
    // Idle again: what was told last is shown.
    if (isBeingShown) tellEvery_ms = Math.min(TELL_LATEST_ms, Math.max(TELL_EVERY_ms, (began_ms - toldAt_ms) * SHOW_SHARE));
    isBeingShown = false;
    const state = store.get();
    const plan = shownPlan(state);
    let isStale = checkOn(plan, state.discharges);
    while (isStale && hasTime()) isStale = checkOn(plan, state.discharges);
    const end_ms = now_ms();
    if (isStale && end_ms - toldAt_ms < tellEvery_ms) {
      callOff = whenIdle(goOn);
      return;
    }
    toldAt_ms = end_ms;
    isBeingShown = true;
    store.tellChecked();
  };
  const look = (): void => {
    const state = store.get();
    if (callOff === null && evaluationOf(shownPlan(state), state.discharges).isStale) callOff = whenIdle(goOn);
  };
  look();
  const unsubscribe = store.subscribe(look);
  return () => {
    unsubscribe();
    callOff?.();
  };
}
