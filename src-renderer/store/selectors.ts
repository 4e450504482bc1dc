import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import type { Calculation } from '#shared/calculations/lines/calculation';
import type { Evaluation } from '#shared/evaluate';
import type { Plan, Ref } from '#shared/model/plan';
import { refKey } from '#shared/model/plan';
import type { Finding, Verdict } from '#shared/rules/finding';
import { askedOf, evaluationOf } from './evaluations.ts';
import { type FoundThing, findThing } from './find-thing.ts';
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

/** What follows from the shown plan. */
export const selectEvaluation = (state: State): Evaluation => evaluationOf(shownPlan(state), state.discharges);

/** Whether a discharge of the shown plan is still being worked out. */
export const isWorkingOut = (state: State): boolean => askedOf(selectEvaluation(state)).some(({ answer }) => answer === undefined || (typeof answer !== 'string' && answer.isStale));

/** What follows from the plan without the gesture under way. */
export const presentEvaluation = (state: State): Evaluation => evaluationOf(state.history.present, state.discharges);

/** Every answer of every rule about the shown plan, gravest first. */
export const selectFindings = (state: State): readonly Finding[] => selectEvaluation(state).findings;

/** Every calculation about a plan, as lines that can be followed. */
const calculationsFrom = remembered((evaluation: Evaluation): readonly Calculation[] => calculationsOf(evaluation));

/** Every calculation about the shown plan. */
export const selectCalculations = (state: State): readonly Calculation[] => calculationsFrom(selectEvaluation(state));

const findingsByThing = remembered((evaluation: Evaluation): ReadonlyMap<string, readonly Finding[]> => {
  const byThing = new Map<string, Finding[]>();
  for (const finding of evaluation.findings) {
    if (finding.subject.kind === 'plan' || finding.subject.kind === 'profile') continue;
    const key = refKey(finding.subject);
    const known = byThing.get(key);
    if (known) known.push(finding);
    else byThing.set(key, [finding]);
  }
  return byThing;
});

const NO_FINDINGS: readonly Finding[] = [];

/** What the rules say about one thing, gravest first. */
export const findingsOf = (state: State, ref: Ref): readonly Finding[] => findingsByThing(selectEvaluation(state)).get(refKey(ref)) ?? NO_FINDINGS;

const countsByEvaluation = remembered((evaluation: Evaluation): Readonly<Record<Verdict, number>> => {
  const counts: Record<Verdict, number> = { stop: 0, warn: 0, note: 0, 'not-checked': 0, ok: 0 };
  for (const { verdict } of evaluation.findings) counts[verdict] += 1;
  return counts;
});

/** How many findings there are of each verdict. */
export const findingCounts = (state: State): Readonly<Record<Verdict, number>> => countsByEvaluation(selectEvaluation(state));

const ledgers = remembered((evaluation: Evaluation): Ledger => ledgerOf(evaluation.derived, evaluation.design, countsByEvaluation(evaluation)));

/** The live numbers of the bottom line. */
export const selectLedger = (state: State): Ledger => ledgers(selectEvaluation(state));

let lastSelected: { plan: Plan; selection: readonly Ref[]; things: readonly FoundThing[] } | null = null;

/** The selected things as they are in the shown plan; those that have gone are left out. */
export function selectedThings(state: State): readonly FoundThing[] {
  const plan = shownPlan(state);
  const { selection } = state.session;
  if (lastSelected?.plan !== plan || lastSelected.selection !== selection) {
    lastSelected = { plan, selection, things: selection.flatMap((ref) => findThing(plan, ref) ?? []) };
  }
  return lastSelected.things;
}
