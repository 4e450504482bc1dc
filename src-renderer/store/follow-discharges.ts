import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import type { AskedDischarge } from '#shared/calculations/discharge/discharge-source';
import type { Plan } from '#shared/model/plan';
import { askedOf, evaluationOf } from './evaluations.ts';
import { watchHand } from './hand-at-work.ts';
import { type RunAnswer, keyOf, makeKnownDischarges } from './known-discharges.ts';
import { selectEvaluation, shownPlan } from './selectors.ts';
import type { Store } from './state.ts';

/** Works out one discharge, away from the window's own thread. Never rejects. */
export type RunDischarge = (input: DischargeInput) => Promise<RunAnswer>;

/** The plan must stand still for so long before a run is asked for [ms]: a drag asks for none until the pointer rests. */
const REST_ms = 80;
/** While many networks wait, results are shown together this often [ms]. */
const SHOW_EVERY_ms = 250;
/** Showing them takes no larger share of the window's time than one in so many: a large plan is slow to show. */
const SHOW_SHARE = 30;
/** But they are shown at the latest after this [ms]. */
const SHOW_LATEST_ms = 10_000;

/**
 * Works out the discharges that the shown plan needs, one after the other, and gives them to the store.
 * What is wanted no more is not begun. Answers how to stop.
 */
export function followDischarges(store: Store, run: RunDischarge): () => void {
  const known = makeKnownDischarges();
  let seen: Plan | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let queue: DischargeInput[] = [];
  const hand = watchHand(store, () => performance.now());
  let isRunning = false;
  let isStopped = false;
  let learned = 0;
  let shownAt_ms = 0;
  let showEvery_ms = SHOW_EVERY_ms;

  const show = (): void => {
    learned = 0;
    const began_ms = performance.now();
    known.renew();
    store.takeDischarges(known.source);
    known.trim(askedOf(selectEvaluation(store.get())).map(({ input }) => input));
    shownAt_ms = began_ms;
    // The window is painted before a timer comes.
    setTimeout(() => {
      showEvery_ms = Math.min(SHOW_LATEST_ms, Math.max(SHOW_EVERY_ms, (performance.now() - began_ms) * SHOW_SHARE));
    });
  };
  const next = async (): Promise<void> => {
    const input = queue.shift();
    if (!input) return;
    isRunning = true;
    const answer = await run(input);
    isRunning = false;
    if (isStopped) return;
    known.learn(input, answer);
    learned += 1;
    // A gesture comes first: what was learned is shown after it.
    const isMoving = store.get().preview !== null || hand.isAtWork();
    if (queue.length === 0 || (!isMoving && performance.now() - shownAt_ms >= showEvery_ms)) show();
    void next();
  };
  const want = (): void => {
    timer = null;
    const state = store.get();
    const asked = askedOf(evaluationOf(shownPlan(state), state.discharges));
    // What a network does as drawn comes before trials of what it might do.
    const isDrawn = ({ network }: AskedDischarge): boolean => network in shownPlan(state).networks;
    const wanted = new Map([...asked.filter(isDrawn), ...asked.filter((each) => !isDrawn(each))].map(({ input }) => [keyOf(input), input]));
    queue = [...wanted.values()].filter((input) => !known.has(input));
    if (queue.length > 0) {
      if (!isRunning) void next();
    } else if (learned > 0) show();
  };
  const look = (): void => {
    const plan = shownPlan(store.get());
    if (plan === seen) return;
    seen = plan;
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(want, REST_ms);
  };

  store.takeDischarges(known.source);
  look();
  const unsubscribe = store.subscribe(look);
  return () => {
    isStopped = true;
    hand.stop();
    if (timer !== null) clearTimeout(timer);
    unsubscribe();
  };
}
