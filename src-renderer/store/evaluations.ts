import type { AskedDischarge, DischargeSource } from '#shared/calculations/discharge/discharge-source';
import type { Evaluation } from '#shared/evaluate';
import { makeLive } from '#shared/live';
import type { Plan } from '#shared/model/plan';

interface Made {
  readonly evaluation: Evaluation;
  readonly source: DischargeSource;
}

const made = new WeakMap<Plan, Made>();
/** What was found last in this window, whichever plan it was. */
const live = makeLive();

const never = (): boolean => false;
/** Begins a slice of work, and answers whether its time is up. */
let beginSlice = (): (() => boolean) => never;

/** Lets checks take no longer at once than a slice; without it they are always finished. */
export function sliceChecks(begin: () => () => boolean): void {
  beginSlice = begin;
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

/** Checks a plan for one slice more. Answers whether something is still to be asked. */
export const checkOn = (plan: Plan, source: DischargeSource): boolean => check(plan, source, beginSlice()).isStale;

/** A plan checked to the end, for what must not rest on findings from before. */
export function finishedEvaluation(plan: Plan, source: DischargeSource): Evaluation {
  const evaluation = evaluationOf(plan, source);
  return evaluation.isStale ? check(plan, source, never) : evaluation;
}

/** A plan checked until time is up. */
export function evaluationUntil(plan: Plan, source: DischargeSource, isTimeUp: () => boolean): Evaluation {
  const evaluation = evaluationOf(plan, source);
  return evaluation.isStale ? check(plan, source, isTimeUp) : evaluation;
}

/** The discharges that an evaluation asked for. */
export const askedOf = ({ design }: Evaluation): readonly AskedDischarge[] => design.asked;
