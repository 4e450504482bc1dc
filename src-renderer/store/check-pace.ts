/** A check that takes no longer than this is done at every step of a gesture [ms]: the rest of a frame is for painting. */
const QUICK_ms = 12;
/** A longer one takes no larger share of the window's time than one in so many while the hand moves. */
const SHARE = 20;
/** But while the hand moves it is done at the latest after this [ms]. */
const LATEST_ms = 2000;

/** Says at which steps of a gesture the plan is checked. */
export interface CheckPace {
  /** Whether the plan under the hand may be checked now. */
  isFree(): boolean;
  /** A check of a new plan was made, and took so long [ms]. */
  took(cost_ms: number): void;
}

/** Makes the pace of a window by its clock. */
export function makeCheckPace(now_ms: () => number): CheckPace {
  let cost_ms = 0;
  let endedAt_ms = Number.NEGATIVE_INFINITY;
  return {
    isFree: () => cost_ms <= QUICK_ms || now_ms() - endedAt_ms >= Math.min(LATEST_ms, cost_ms * SHARE),
    took(spent_ms) {
      cost_ms = spent_ms;
      endedAt_ms = now_ms();
    },
  };
}
