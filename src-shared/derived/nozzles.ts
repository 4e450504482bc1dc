import { isInsideOrOn } from '../geometry/inside.ts';
import { normalAngle_rad } from '../geometry/angle.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import type { Nozzle } from '../model/plan.ts';
import type { DerivedNetwork, DerivedNozzle, Solid, Space } from './derived.ts';
import { isThere } from './solids.ts';
import type { SpaceIndex } from './space-index.ts';

/**
 * Solids of a space that the horizontal plane of an orifice cuts, touching at their top or bottom left out;
 * a solid that the orifice itself is in or touches counts in any case.
 */
export const blockersOf = (space: Space, at: PlanPoint3): Solid[] =>
  space.solids.filter(
    (solid) =>
      isThere(solid) && ((solid.bottom_m < at.z && at.z < solid.top_m) || (solid.bottom_m <= at.z && at.z <= solid.top_m && isInsideOrOn(at, solid.footprint))),
  );

/** Derives a nozzle: the space it serves (as chosen, or the one it hangs in), the ceiling over it, what stops its jets. */
export function derivedNozzleOf(nozzle: Nozzle, network: DerivedNetwork, spaces: SpaceIndex): DerivedNozzle {
  const at = network.network.nodes[nozzle.node]?.at;
  const space = at && (nozzle.serves ? spaces.find(nozzle.serves) : spaces.findAt(at));
  return {
    ref: { kind: 'nozzle', network: network.network.id, id: nozzle.id },
    nozzle,
    network,
    profile: network.profile,
    at,
    space,
    holes_rad: nozzle.holes_rad.map((hole_rad) => normalAngle_rad(hole_rad + nozzle.rotation_rad)),
    localCeiling_m: at && space?.ceilingAt_m(at),
    blockers: at && space ? blockersOf(space, at) : [],
  };
}
