import { checkOn, evaluationOf } from './evaluations.ts';
import { shownPlan } from './selectors.ts';
import type { Store } from './state.ts';

/** Runs something once the window has nothing else to do; answers how to call it off. */
export type WhenIdle = (run: () => void) => () => void;

/**
 * Finishes the checks of the shown plan in idle time, slice by slice, and tells the store each time. A drag that goes on
 * comes first: its next step is a plan of its own. Answers how to stop.
 */
export function followChecks(store: Store, whenIdle: WhenIdle): () => void {
  let callOff: (() => void) | null = null;
  const goOn = (): void => {
    callOff = null;
    const state = store.get();
    checkOn(shownPlan(state), state.discharges);
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
