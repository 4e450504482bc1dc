import type { AskedDischarge, DischargeSource } from '#shared/calculations/discharge/discharge-source';
import type { Evaluation } from '#shared/evaluate';
import { makeLive } from '#shared/live';
import type { Plan } from '#shared/model/plan';
import { type CheckPace, makeCheckPace } from './check-pace.ts';

interface Made {
  readonly evaluation: Evaluation;
  readonly source: DischargeSource;
}

const made = new WeakMap<Plan, Made>();
/** What was found last in this window, whichever plan it was. */
const live = makeLive();

const never = (): boolean => false;
/** A clock that stands still: every step of a gesture is checked. */
const still = (): number => 0;
let clock_ms = still;
/** Begins a slice of work, and answers whether its time is up. */
let beginSlice = (): (() => boolean) => never;
let pace: CheckPace = makeCheckPace(still);
/** The last plan that was checked while a gesture went on, and the plan that the gesture began with. */
let followed: { readonly present: Plan; readonly evaluation: Evaluation } | null = null;

/** Lets checks take no longer at once than a slice; without it they are always finished. */
export function sliceChecks(begin: () => () => boolean): void {
  beginSlice = begin;
}

/** Lets checks keep out of the way of the hand; without it every step of a gesture is checked. */
export function paceChecks(now_ms: () => number): void {
  clock_ms = now_ms;
  pace = makeCheckPace(now_ms);
}

/** A plan checked further, or to the end. */
function check(plan: Plan, source: DischargeSource, isTimeUp: () => boolean): Evaluation {
  const evaluation = live.check(plan, source, isTimeUp);
  made.set(plan, { evaluation, source });
  return evaluation;
}

/**
 * A plan with all that follows from it. It is worked out once for each plan, and anew only when the source of
 * discharges answers something else than it did: another plan's discharge costs this one nothing. What takes longer
 * than a slice is finished by `checkOn`; until then the findings are those from before, and say that they are stale.
 */
export function evaluationOf(plan: Plan, source: DischargeSource): Evaluation {
  const known = made.get(plan);
  if (known?.source === source) return known.evaluation;
  if (known?.evaluation.design.asked.every(({ network, input, answer }) => source(network, input) === answer)) {
    made.set(plan, { ...known, source });
    return known.evaluation;
  }
  return check(plan, source, beginSlice());
}

/** Whether a plan was looked at at all. */
export const isLookedAt = (plan: Plan): boolean => made.has(plan);

const staleCopies = new WeakMap<Evaluation, Evaluation>();

/** The same, marked as from before a change. */
function asStale(evaluation: Evaluation): Evaluation {
  if (evaluation.isStale) return evaluation;
  const known = staleCopies.get(evaluation);
  if (known) return known;
  const { derived, design, found, lapsed } = evaluation;
  const stale: Evaluation = {
    derived,
    design,
    found,
    lapsed,
    isStale: true,
    get findings() {
      return evaluation.findings;
    },
  };
  staleCopies.set(evaluation, stale);
  return stale;
}

/**
 * What follows from the plan under the hand. Where that takes longer than a step has time for, it is what followed from an
 * earlier step, marked as stale: it is caught up with now and then, and as soon as the hand rests.
 */
export function followingEvaluation(plan: Plan, present: Plan, source: DischargeSource): Evaluation {
  if (!isLookedAt(plan) && !pace.isFree()) return asStale(followed?.present === present ? followed.evaluation : evaluationOf(present, source));
  const isNew = !isLookedAt(plan);
  const began_ms = clock_ms();
  const evaluation = evaluationOf(plan, source);
  if (isNew) pace.took(clock_ms() - began_ms);
  followed = { present, evaluation };
  return evaluation;
}

/** Checks a plan for one slice more. Answers whether something is still to be asked. */
export const checkOn = (plan: Plan, source: DischargeSource): boolean => check(plan, source, beginSlice()).isStale;

/** A plan checked until time is up. */
export function evaluationUntil(plan: Plan, source: DischargeSource, isTimeUp: () => boolean): Evaluation {
  const evaluation = evaluationOf(plan, source);
  return evaluation.isStale ? check(plan, source, isTimeUp) : evaluation;
}

/** The discharges that an evaluation asked for. */
export const askedOf = ({ design }: Evaluation): readonly AskedDischarge[] => design.asked;
