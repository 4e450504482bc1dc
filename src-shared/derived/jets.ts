import { type PlanPoint, distance_m, planPoint, polar } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import type { RefOf } from '../model/plan.ts';
import type { HungNozzle } from './derived.ts';
import { buriedIn, jetObstaclesOf } from './jet-obstacles.ts';
import { remembered } from './remember.ts';

/** The jet of one hole, as far as it runs free at the height of the orifice. */
export interface Jet {
  /** Direction [rad], counter-clockwise from east. */
  readonly azimuth_rad: number;
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  /** Free run [m], ≥ 0. */
  readonly length_m: number;
  /** What it meets; null when it leaves the drawn space without meeting anything. */
  readonly hit: RefOf<'wall'> | RefOf<'obstruction'> | null;
}

/**
 * The free run of every hole's jet in the plane of the orifice: to the first wall of the space, shaft or blocker.
 * Grazing a corner counts as meeting it. A nozzle in no space has no jets; inside a blocker they have no length.
 * Several checks ask for the same nozzle: the very same answer for it.
 */
export const jetsOf = remembered((nozzle: HungNozzle): readonly Jet[] => {
  const { at, space, holes_rad } = nozzle;
  if (!at || !space) return [];
  const from = planPoint(at.x, at.y);
  const inside = buriedIn(nozzle);
  const obstacles = jetObstaclesOf(nozzle);
  const { minX, minY, maxX, maxY } = space.bounds;
  const farthest_m = Math.hypot(maxX - minX, maxY - minY) + distance_m(from, planPoint((minX + maxX) / 2, (minY + maxY) / 2));
  return holes_rad.map((azimuth_rad) => {
    if (inside) return { azimuth_rad, from, to: from, length_m: 0, hit: inside.ref };
    let length_m = farthest_m;
    let hit: Jet['hit'] = null;
    for (const { ref, segment, front_rad, isTouched } of obstacles) {
      const run_m = isTouched ? (Math.cos(azimuth_rad - front_rad) < -1e-12 ? 0 : undefined) : runTo_m(from, azimuth_rad, segment);
      if (run_m !== undefined && run_m < length_m) {
        length_m = run_m;
        hit = ref;
      }
    }
    return { azimuth_rad, from, to: polar(from, azimuth_rad, length_m), length_m, hit };
  });
});

/** How far a jet runs before it meets a segment it does not start on [m]; undefined when it passes. Ends are wider by `LENGTH_SLACK_m`. */
function runTo_m(from: PlanPoint, azimuth_rad: number, { a, b }: Segment): number | undefined {
  const x = Math.cos(azimuth_rad);
  const y = Math.sin(azimuth_rad);
  const aAside = (a.y - from.y) * x - (a.x - from.x) * y;
  const bAside = (b.y - from.y) * x - (b.x - from.x) * y;
  const aAlong = (a.x - from.x) * x + (a.y - from.y) * y;
  const bAlong = (b.x - from.x) * x + (b.y - from.y) * y;
  const ends = [
    ...(Math.abs(aAside) <= LENGTH_SLACK_m && aAlong >= 0 ? [aAlong] : []),
    ...(Math.abs(bAside) <= LENGTH_SLACK_m && bAlong >= 0 ? [bAlong] : []),
  ];
  if (ends.length > 0) return Math.min(...ends);
  if (aAside > 0 === bAside > 0) return undefined;
  const along = aAlong + ((bAlong - aAlong) * aAside) / (aAside - bAside);
  return along >= 0 ? along : undefined;
}
