import { isThere } from '../derived/solids.ts';
import { fillOf } from '../derived/polygon-sums.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { type Outline, sidesOf } from '../geometry/outline.ts';
import { polar } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import { type Forbidden, HAIR_m, type Site } from './site.ts';

/** N7: for a nozzle in a room (in a void N18 warns, and stops nothing) the places from which a hole, as it points now, meets a wall or a thing at the height of the orifice too soon, and the inside of such things. */
export function shortJets({ space, nozzle, at, limits }: Site): Forbidden {
  if (space.kind !== 'room') return { rule: 'N7', region: [] };
  const cut = space.solids.filter((solid) => isThere(solid) && solid.bottom_m < at.z && at.z < solid.top_m);
  const faces: Segment[] = [...space.walls.map(({ segment }) => segment), ...cut.flatMap(({ footprint }) => sidesOf(footprint))];
  const freeJet_m = limits.freeJet_m + HAIR_m;
  const tooNear = nozzle.holes_rad.flatMap((hole_rad) =>
    faces.map(({ a, b }): Outline => convexHull([a, b, polar(a, hole_rad + Math.PI, freeJet_m), polar(b, hole_rad + Math.PI, freeJet_m)])),
  );
  return { rule: 'N7', region: fillOf([...tooNear, ...cut.map(({ footprint }) => footprint)].filter((ring) => ring.length > 2)) };
}

