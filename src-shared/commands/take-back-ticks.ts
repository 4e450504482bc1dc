import { HOLD_POINTS, holdPointIndex } from '../model/hold-points.ts';
import type { SiteRecord } from '../model/plan.ts';

type Checks = SiteRecord['checks'];

/** Ids of the hold points that are ticked from one on, itself included, in the order of the work. */
export function tickedFrom(checks: Checks, id: string): string[] {
  const index = holdPointIndex(id);
  return index < 0 ? [] : HOLD_POINTS.slice(index).filter((each) => checks[each.id]?.done).map((each) => each.id);
}

/** Takes back the tick of a hold point and of all that come after it. */
export function takeBackTicks(checks: Checks, id: string): void {
  for (const each of tickedFrom(checks, id)) delete checks[each];
}
