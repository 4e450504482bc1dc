import { distanceToOutline_m } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
import { type Ref, ringOf } from '#shared/model/plan';
import type { State } from '../store/state.ts';
import { pickAt } from '../tools/pick.ts';

/**
 * What a click of the select tool would pick at a place, or null. The floor of an enclosure is not marked: only its
 * walls can be taken hold of.
 * @param reach_m how near the pointer picks [m]
 */
export function hoveredThing(state: State, at: PlanPoint, reach_m: number): Ref | null {
  const { history, preview, session } = state;
  if (session.tool !== 'select' || preview) return null;
  const ref = pickAt(history.present, session, [], at, reach_m);
  if (ref?.kind !== 'enclosure') return ref ?? null;
  const enclosure = history.present.levels[ref.level]?.enclosures[ref.id];
  const isEdge = enclosure && [enclosure.outline, ...enclosure.holes].some((ring) => distanceToOutline_m(at, ringOf(ring)) <= reach_m);
  return isEdge ? ref : null;
}
