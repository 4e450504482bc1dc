import { area_m2, isInside } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
import { type Enclosure, ringOf } from '#shared/model/plan';
import type { ToolView } from './tool.ts';

/**
 * The enclosure that a part drawn at a place belongs to: the selected one, if the place is in it, else the
 * smallest that holds the place, else the selected one.
 */
export function enclosureAt(view: ToolView, at: PlanPoint): Enclosure | undefined {
  const { level, selection } = view.session;
  const enclosures = Object.values(view.plan.levels[level]?.enclosures ?? {});
  const chosen = new Set(selection.flatMap((ref) => (ref.kind === 'enclosure' ? [ref.id] : 'enclosure' in ref ? [ref.enclosure] : [])));
  const around = enclosures.filter(({ outline }) => isInside(at, ringOf(outline))).sort((a, b) => area_m2(ringOf(a.outline)) - area_m2(ringOf(b.outline)));
  return around.find(({ id }) => chosen.has(id)) ?? around[0] ?? enclosures.find(({ id }) => chosen.has(id));
}
