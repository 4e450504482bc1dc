import type { DischargeSource } from './calculations/discharge/discharge-source.ts';
import { type BasisComparison, compareEvaluations } from './compare-evaluations.ts';
import { evaluate } from './evaluate.ts';
import type { BasisOfDesign } from './model/basis-of-design.ts';
import type { Plan } from './model/plan.ts';

/**
 * Works a plan out under another basis of design and lists what would differ. Nothing is changed.
 * @param other        the whole basis to compare with
 * @param dischargeOf  where the transients come from; what it does not know is not compared
 */
export const compareBasis = (plan: Plan, other: BasisOfDesign, dischargeOf: DischargeSource): BasisComparison =>
  compareEvaluations(evaluate(plan, dischargeOf), evaluate({ ...plan, basis: other }, dischargeOf));
