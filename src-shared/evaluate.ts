import type { Derived } from './derived/derived.ts';
import { derivePlan } from './derived/derive-plan.ts';
import type { Plan } from './model/plan.ts';
import type { Finding } from './rules/finding.ts';
import { RULES } from './rules/index.ts';
import { runRules } from './rules/rule.ts';

/** A plan with all that follows from it and what the rules say. */
export interface Evaluation {
  readonly derived: Derived;
  /** Every answer of every rule, kept ones included, gravest first. */
  readonly findings: readonly Finding[];
}

/** Derives and checks a whole plan from nothing. */
export function evaluate(plan: Plan): Evaluation {
  const derived = derivePlan(plan);
  return { derived, findings: runRules(RULES, derived) };
}
