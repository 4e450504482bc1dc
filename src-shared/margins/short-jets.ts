import { fillOf } from '../derived/polygon-sums.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { type Outline, sidesOf } from '../geometry/outline.ts';
import { polar } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import { type Forbidden, HAIR_m, type Site } from './site.ts';

/** N7: the places from which a hole, as it points now, meets a wall or a thing at the height of the orifice too soon, and the inside of such things. */
export function shortJets({ space, nozzle, at, limits }: Site): Forbidden {
  const cut = space.solids.filter(({ bottom_m, top_m }) => bottom_m < at.z && at.z < top_m);
  const faces: Segment[] = [...space.walls.map(({ segment }) => segment), ...cut.flatMap(({ footprint }) => sidesOf(footprint))];
  const freeJet_m = limits.freeJet_m + HAIR_m;
  const tooNear = nozzle.holes_rad.flatMap((hole_rad) =>
    faces.map(({ a, b }): Outline => convexHull([a, b, polar(a, hole_rad + Math.PI, freeJet_m), polar(b, hole_rad + Math.PI, freeJet_m)])),
  );
  return { rule: 'N7', region: fillOf([...tooNear, ...cut.map(({ footprint }) => footprint)].filter((ring) => ring.length > 2)) };
}

