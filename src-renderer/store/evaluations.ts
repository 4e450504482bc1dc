import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import type { DischargeSource, KnownDischarge } from '#shared/calculations/discharge/discharge-source';
import { type Evaluation, evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';

/** A discharge that an evaluation asked for, and what it was told. */
export interface AskedDischarge {
  readonly network: string;
  readonly input: DischargeInput;
  readonly answer: KnownDischarge | string | undefined;
}

interface Made {
  readonly evaluation: Evaluation;
  readonly source: DischargeSource;
  readonly asked: readonly AskedDischarge[];
}

const made = new WeakMap<Plan, Made>();
const askedBy = new WeakMap<Evaluation, readonly AskedDischarge[]>();

function make(plan: Plan, source: DischargeSource): Made {
  const asked: AskedDischarge[] = [];
  const evaluation = evaluate(plan, (network, input) => {
    const answer = source(network, input);
    asked.push({ network, input, answer });
    return answer;
  });
  askedBy.set(evaluation, asked);
  return { evaluation, source, asked };
}

/**
 * A plan with all that follows from it. It is worked out once for each plan, and anew only when the source of
 * discharges answers something else than it did: another plan's discharge costs this one nothing.
 */
export function evaluationOf(plan: Plan, source: DischargeSource): Evaluation {
  const known = made.get(plan);
  if (known?.source === source) return known.evaluation;
  const isUnchanged = known?.asked.every(({ network, input, answer }) => source(network, input) === answer) ?? false;
  const fresh = known && isUnchanged ? { ...known, source } : make(plan, source);
  made.set(plan, fresh);
  return fresh.evaluation;
}

/** The discharges that an evaluation asked for. */
export const askedOf = (evaluation: Evaluation): readonly AskedDischarge[] => askedBy.get(evaluation) ?? [];
