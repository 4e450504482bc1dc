import type { Design } from './calculations/design/design.ts';
import { designOf } from './calculations/design/design-of.ts';
import type { DischargeSource } from './calculations/discharge/discharge-source.ts';
import type { Derived } from './derived/derived.ts';
import { derivePlan } from './derived/derive-plan.ts';
import type { Plan } from './model/plan.ts';
import type { Finding } from './rules/finding.ts';
import { RULES } from './rules/index.ts';
import { runRules } from './rules/rule.ts';
import { type LapsedWaiver, waive } from './rules/waive.ts';

/** A plan with all that follows from it, every sum, and what the rules say. */
export interface Evaluation {
  readonly derived: Derived;
  readonly design: Design;
  /** Every answer of every rule, kept ones included, gravest first. */
  readonly findings: readonly Finding[];
  /** Acceptances of findings that no longer hold. */
  readonly lapsed: readonly LapsedWaiver[];
}

/** No discharge at hand: what needs one is not worked out. */
const NO_DISCHARGE: DischargeSource = () => undefined;

/**
 * Derives, works out and checks a whole plan from nothing.
 * @param dischargeOf  where the transients come from
 */
export function evaluate(plan: Plan, dischargeOf: DischargeSource = NO_DISCHARGE): Evaluation {
  const derived = derivePlan(plan);
  const design = designOf(derived, dischargeOf);
  return { derived, design, ...waive(runRules(RULES, derived, design), plan.waivers) };
}
