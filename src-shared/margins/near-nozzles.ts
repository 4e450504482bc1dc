import { findOpposed } from '../derived/nozzle-pairs.ts';
import type { DerivedNozzle } from '../derived/derived.ts';
import { type Region, differenceOf, fillOf, intersectionOf } from '../derived/polygon-sums.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { sidesOf } from '../geometry/outline.ts';
import { distance3_m, polar, bearing_rad } from '../geometry/point.ts';
import { ringAround } from '../geometry/round-rings.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import { isSameRef } from '../model/plan.ts';
import { coneOnPlan } from './cone-on-plan.ts';
import { type Forbidden, HAIR_m, type Site, acrossOf_m } from './site.ts';
import { standIn } from './stand-in.ts';

/** Everything nearer to a nozzle than a distance in space. */
function within({ at }: Site, other: DerivedNozzle, far_m: number): Region {
  if (!other.at || far_m <= 0) return [];
  const level_m2 = far_m ** 2 - (at.z - other.at.z) ** 2;
  return level_m2 > 0 ? fillOf([ringAround(other.at, Math.sqrt(level_m2) + HAIR_m)]) : [];
}

/** The places at which the two blow at each other too near, but for those from which something stands between. */
function opposed(site: Site, other: DerivedNozzle): Region {
  const { nozzle, at, space } = site;
  const [mine, theirs] = [nozzle.profile?.limits, other.profile?.limits];
  if (!other.at || !mine?.freeJet_m || !theirs?.freeJet_m || !mine.jetSpread_rad || !theirs.jetSpread_rad) return [];
  const from = other.at;
  const reach_m = mine.freeJet_m.value + theirs.freeJet_m.value;
  const off_m = Math.abs(at.z - from.z);
  const cones = (ways_rad: readonly number[], half_rad: number): Region => fillOf(ways_rad.map((way_rad) => coneOnPlan(from, way_rad, half_rad, off_m, reach_m)).filter((ring) => ring.length > 2));
  const near = within(site, other, reach_m);
  const blown = intersectionOf(near, cones(nozzle.holes_rad, mine.jetSpread_rad.value + nozzle.nozzle.tilt_rad));
  // From the other one it is the same the other way round.
  const facing = intersectionOf(blown, cones(other.holes_rad.map((hole_rad) => hole_rad + Math.PI), theirs.jetSpread_rad.value + other.nozzle.tilt_rad));
  if (facing.length === 0) return [];
  const faces = [...space.walls.map(({ segment }) => segment), ...standIn(site, at).blockers.flatMap(({ footprint }) => sidesOf(footprint))];
  const hidden = faces.flatMap(({ a, b }): Region => {
    const ring = convexHull([a, b, ...[a, b].map((p) => polar(p, bearing_rad(from, p), acrossOf_m(space)))]);
    return ring.length > 2 ? fillOf([ring]) : [];
  });
  return differenceOf(facing, [hidden]);
}

/**
 * N12: everything nearer to another nozzle of its space than the greater of the two least distances, and the places at which
 * the two blow at each other before their jets have opened out. A pair of which the rule warns as it is drawn is not asked.
 */
export function nearNozzles(site: Site): Forbidden {
  const { derived, nozzle, space, at } = site;
  const others = derived.nozzles.filter((each) => each.space?.key === space.key && each.at && !isSameRef(each.ref, nozzle.ref));
  const region = others.flatMap((other): Region => {
    const [mine_m, theirs_m] = [nozzle, other].map(({ profile }) => profile?.limits.nozzleSpacing_m?.value);
    const least_m = mine_m === undefined || theirs_m === undefined ? 0 : Math.max(mine_m, theirs_m);
    const isWarned = (other.at && distance3_m(at, other.at) < least_m - LENGTH_SLACK_m) || findOpposed({ one: nozzle, other }) !== undefined;
    return isWarned ? [] : [...within(site, other, least_m), ...opposed(site, other)];
  });
  return { rule: 'N12', region };
}
