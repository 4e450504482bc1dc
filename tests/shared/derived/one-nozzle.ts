import type { DerivedNozzle } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import type { PlanBuilder } from '../../support/plan-builder.ts';

/** The first nozzle of a plan under construction, derived. */
export function nozzleOf(built: PlanBuilder): DerivedNozzle {
  const [nozzle] = derivePlan(built.plan).nozzles;
  if (!nozzle) throw new Error('The plan has no nozzle.');
  return nozzle;
}
