import { checkOn, evaluationOf, isLookedAt } from './evaluations.ts';
import { watchHand } from './hand-at-work.ts';
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
 * A hand that moves the board or something on it comes first. Answers how to stop.
 */
export function followChecks(store: Store, whenIdle: WhenIdle, now_ms: () => number = () => performance.now()): () => void {
  const hand = watchHand(store, now_ms);
  let callOff: (() => void) | null = null;
  let toldAt_ms = Number.NEGATIVE_INFINITY;
  let tellEvery_ms = TELL_EVERY_ms;
  let isBeingShown = false;
  const goOn = (hasTime: () => boolean): void => {
    callOff = null;
    if (hand.isAtWork()) {
      callOff = whenIdle(goOn);
      return;
    }
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
    if (callOff !== null) return;
    const state = store.get();
    const plan = shownPlan(state);
    // What a step of a gesture had no time for is looked at when the hand rests.
    const isHeld = plan === state.preview && !isLookedAt(plan);
    if (isHeld || evaluationOf(plan, state.discharges).isStale) callOff = whenIdle(goOn);
  };
  look();
  const unsubscribe = store.subscribe(look);
  return () => {
    unsubscribe();
    hand.stop();
    callOff?.();
  };
}
