import { designOf } from './calculations/design/design-of.ts';
import type { Design } from './calculations/design/design.ts';
import type { DischargeSource } from './calculations/discharge/discharge-source.ts';
import { derivePlan } from './derived/derive-plan.ts';
import { type Evaluation, evaluationWith } from './evaluation.ts';
import type { Plan } from './model/plan.ts';
import { Findings } from './rules/findings.ts';
import { RULES } from './rules/index.ts';
import type { Rule } from './rules/rule.ts';
import type { RuleFindings } from './rules/rule-findings.ts';

/** Checks one plan after another, redoing only what changed from one to the next. */
export interface Live {
  /**
   * The same as a check from nothing. Once time is up, what is not asked anew yet is as it was, marked stale;
   * another call, with this plan or a later one, goes on.
   * @param dischargeOf  where the transients come from
   * @param isTimeUp     asked between one piece of work and the next; derivation and sums are done whole
   */
  check(plan: Plan, dischargeOf: DischargeSource, isTimeUp?: () => boolean): Evaluation;
}

const never = (): boolean => false;

/** What takes long comes last, so that the rest is ready the sooner. */
const inOrderOfWork = (rules: readonly Rule[]): number[] => {
  const places = rules.map((_, i) => i);
  return [...places.filter((i) => !rules[i]?.isHeavy), ...places.filter((i) => rules[i]?.isHeavy)];
};

/** Starts to check plans from nothing. */
export function makeLive(rules: readonly Rule[] = RULES): Live {
  const ids = rules.map(({ id }) => id);
  const order = inOrderOfWork(rules);
  const found: RuleFindings[] = [];
  /** The sums of the plan that each rule was asked about last: they are those of one plan alone. */
  const askedOf: Design[] = [];
  return {
    check(plan, dischargeOf, isTimeUp = never) {
      const derived = derivePlan(plan);
      const design = designOf(derived, dischargeOf);
      for (const i of order) {
        const last = found[i];
        if (last && askedOf[i] === design && (!last.isStale || isTimeUp())) continue;
        const now = rules[i]?.ask(derived, design, last, isTimeUp);
        if (now) found[i] = now;
        askedOf[i] = design;
      }
      return evaluationWith(derived, design, new Findings(ids, [...found], plan.waivers));
    },
  };
}
