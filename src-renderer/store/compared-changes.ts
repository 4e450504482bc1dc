import type { Plan } from '#shared/model/plan';
import { comparePlans } from '#shared/revisions/compare-plans';
import type { PlanChange } from '#shared/revisions/plan-change';
import type { State } from './state.ts';

const NONE: readonly PlanChange[] = [];
let last: { readonly before: Plan; readonly now: Plan; readonly changes: readonly PlanChange[] } | null = null;

/** What differs between the two states that are compared; nothing while none are. The plan as it is means without a gesture under way. */
export function selectChanges({ session: { compared }, history: { present } }: State): readonly PlanChange[] {
  if (!compared) return NONE;
  const before = compared.before.plan;
  const now = compared.now?.plan ?? present;
  if (last?.before === before && last.now === now) return last.changes;
  last = { before, now, changes: comparePlans(before, now, present.settings.lengths) };
  return last.changes;
}
