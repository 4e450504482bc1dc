import type { DischargeSource } from './calculations/discharge/discharge-source.ts';
import type { Evaluation } from './evaluation.ts';
import { makeLive } from './live.ts';
import type { Plan } from './model/plan.ts';

export type { Evaluation } from './evaluation.ts';

/** No discharge at hand: what needs one is not worked out. */
const NO_DISCHARGE: DischargeSource = () => undefined;

/**
 * Derives, works out and checks a whole plan from nothing.
 * @param dischargeOf  where the transients come from
 */
export const evaluate = (plan: Plan, dischargeOf: DischargeSource = NO_DISCHARGE): Evaluation => makeLive().check(plan, dischargeOf);
