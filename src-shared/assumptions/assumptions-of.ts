import type { Design } from '../calculations/design/design.ts';
import type { Derived } from '../derived/derived.ts';
import { ASSUMPTION_TOPICS, type Assumption } from './assumption.ts';
import { basisAssumptions } from './basis-assumptions.ts';
import { pipeAssumptions } from './pipe-assumptions.ts';
import { roomAssumptions } from './room-assumptions.ts';
import { sumAssumptions } from './sum-assumptions.ts';
import { surveyAssumptions } from './survey-assumptions.ts';
import { unitAssumptions } from './unit-assumptions.ts';

/**
 * Everything that was taken for granted in a plan because nobody said otherwise. What is missing altogether is not
 * among it: no figure stands in for that, and a check says so.
 */
export function assumptionsOf({ derived, design }: { readonly derived: Derived; readonly design: Design }): Assumption[] {
  const { plan } = derived;
  const all = [...basisAssumptions(plan), ...unitAssumptions(derived), ...surveyAssumptions(plan), ...roomAssumptions(derived), ...derived.networks.flatMap(pipeAssumptions), ...sumAssumptions(derived, design)];
  return ASSUMPTION_TOPICS.flatMap((topic) => all.filter((assumption) => assumption.topic === topic));
}
