import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import type { Calculation } from '#shared/calculations/lines/calculation';
import type { Evaluation } from '#shared/evaluate';
import type { Plan, Ref } from '#shared/model/plan';
import { refKey } from '#shared/model/plan';
import type { FindingCounts } from '#shared/rules/count-findings';
import type { Finding } from '#shared/rules/finding';
import { askedOf, evaluationOf, evaluationUntil, followingEvaluation } from './evaluations.ts';
import { type Ledger, ledgerOf } from './ledger.ts';
import type { State } from './state.ts';

/** Remembers what was made from an object for as long as that object lives. */
function remembered<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const made = new WeakMap<K, V>();
  return (key) => {
    const known = made.get(key);
    if (known !== undefined) return known;
    const fresh = make(key);
    made.set(key, fresh);
    return fresh;
  };
}

/** The plan that the user sees: as a gesture would leave it while one is under way. */
export const shownPlan = (state: State): Plan => state.preview ?? state.history.present;

/** What follows from the shown plan; while a gesture is under way it may be from an earlier step of it, and then is stale. */
export const selectEvaluation = ({ history: { present }, preview, discharges }: State): Evaluation =>
  preview === null ? evaluationOf(present, discharges) : followingEvaluation(preview, present, discharges);

/** Whether a discharge of the shown plan is still being worked out. */
export const isWorkingOut = (state: State): boolean => askedOf(selectEvaluation(state)).some(({ answer }) => answer === undefined || (typeof answer !== 'string' && answer.isStale));

/** What follows from the plan without the gesture under way. */
export const presentEvaluation = (state: State): Evaluation => evaluationOf(state.history.present, state.discharges);

/** What asks for something or is to be known about the shown plan, gravest first: all but the kept ones. */
export const selectOpenFindings = (state: State): readonly Finding[] => selectEvaluation(state).found.open;

/** The finding that is shown in detail, or undefined. */
export const selectShownFinding = (state: State): Finding | undefined => (state.session.finding === null ? undefined : selectEvaluation(state).found.withKey(state.session.finding));

/** The plan checked until time is up, without the gesture under way. */
export const presentUntil = (state: State, isTimeUp: () => boolean): Evaluation => evaluationUntil(state.history.present, state.discharges, isTimeUp);

/** Every calculation about a plan, as lines that can be followed. */
const calculationsFrom = remembered((evaluation: Evaluation): readonly Calculation[] => calculationsOf(evaluation));

/** Every calculation about the shown plan. */
export const selectCalculations = (state: State): readonly Calculation[] => calculationsFrom(selectEvaluation(state));

const aboutThings = remembered((_: Evaluation) => new Map<string, readonly Finding[]>());

/** What the rules say about one thing, gravest first. */
export function findingsOf(state: State, ref: Ref): readonly Finding[] {
  const evaluation = selectEvaluation(state);
  const known = aboutThings(evaluation);
  const key = refKey(ref);
  const about = known.get(key) ?? evaluation.found.about(ref);
  known.set(key, about);
  return about;
}

/** How many findings there are of each verdict. */
export const findingCounts = (state: State): FindingCounts => selectEvaluation(state).found.counts;

const ledgers = remembered((evaluation: Evaluation): Ledger => ledgerOf(evaluation.derived, evaluation.design, evaluation.found.counts));

/** The live numbers of the bottom line. */
export const selectLedger = (state: State): Ledger => ledgers(selectEvaluation(state));
