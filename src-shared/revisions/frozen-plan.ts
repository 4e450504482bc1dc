import { assetsInUse } from '../model/assets-in-use.ts';
import type { Plan } from '../model/plan.ts';

/**
 * The plan as it is kept with an issue. Earlier sets stay in its log but their files are not kept in it again, so
 * that no issue grows by those before it.
 */
export function frozenPlan(plan: Plan): Plan {
  const issuedSets = plan.issuedSets.map((set) => ({ ...set, plan: null, sheets: null }));
  const used = assetsInUse({ ...plan, issuedSets });
  const left = Object.entries(plan.assets).filter(([id]) => used.has(id));
  return { ...plan, issuedSets, assets: Object.fromEntries(left) };
}
