import { coverageOf } from '../derived/coverage.ts';
import { placedFootprint } from '../derived/footprint.ts';
import { type Region, differenceOf, fillOf, intersectionOf } from '../derived/polygon-sums.ts';
import { opaqueTo, standsOnFloor } from '../derived/sight.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import { type Box, type Outline, boundsOf, boxesTouch, isInside, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';
import { type Segment, meetingOf } from '../geometry/segment.ts';
import { SAME_PLACE_m, SLIVER_m2 } from '../geometry/tolerance.ts';
import { momentsOf } from '../geometry/moments.ts';
import { isSameRef } from '../model/plan.ts';
import { hangingEdges, underHanging } from './under-hanging.ts';
import { type Forbidden, type Site, acrossOf_m, windowOf } from './site.ts';

/** The floor that this nozzle covers and no other does: where it goes, that must stay covered. */
export function ownFloorOf({ derived, nozzle, space }: Site): Region {
  const serving = derived.nozzles.filter((each) => each.space?.key === space.key);
  const { perNozzle } = coverageOf(space, serving);
  const mine = perNozzle.find(({ nozzle: ref }) => isSameRef(ref, nozzle.ref))?.seen ?? [];
  const others = perNozzle.filter(({ nozzle: ref }) => !isSameRef(ref, nozzle.ref)).map(({ seen }) => seen);
  const own = differenceOf(mine, others);
  // What is left of sums on the grid is no floor.
  return momentsOf(own).area_m2 < SLIVER_m2 ? [] : own.filter((ring) => momentsOf([ring]).area_m2 > 0);
}

/** The places from which the footprint, turned as the nozzle is, still reaches all of a region: one convex ring. */
function reachingRing(site: Site, own: Region): Outline {
  const { nozzle } = site;
  const shape = nozzle.profile?.footprint;
  const corners = own.flat();
  let ring: Outline = windowOf(site)[0] ?? [];
  if (!shape || corners.length === 0) return ring;
  for (const { a, b } of sidesOf(placedFootprint(shape, planPoint(0, 0), nozzle.nozzle.rotation_rad).ring)) {
    const length_m = distance_m(a, b);
    const out = { x: (b.y - a.y) / length_m, y: (a.x - b.x) / length_m };
    const reach_m = out.x * a.x + out.y * a.y;
    const farthest_m = Math.max(...corners.map((p) => out.x * p.x + out.y * p.y));
    ring = clipToHalfPlane(ring, { x: -out.x, y: -out.y, limit: reach_m - farthest_m + SAME_PLACE_m });
  }
  return ring;
}

/** A place this near to a corner touches it: which way it lies is noise [m]. */
const TOUCHING_m = 1e-3;

/** A convex thing that hides floor. */
interface Screen {
  readonly corners: readonly PlanPoint[];
  readonly bounds: Box;
}

const screen = (corners: readonly PlanPoint[]): Screen => ({ corners, bounds: boundsOf(corners) });
const isConvex = (ring: Outline): boolean => convexHull(ring).length === ring.length;

/** Walls that a look from one place of the floor to another can run through: those on the hull of the room cannot be. */
function wallScreens({ space }: Site): Screen[] {
  const hull = sidesOf(convexHull(space.outline));
  const isOnHull = ({ a, b }: Segment): boolean => hull.some((side) => [a, b].every((p) => Math.abs((side.b.x - side.a.x) * (p.y - side.a.y) - (side.b.y - side.a.y) * (p.x - side.a.x)) <= SAME_PLACE_m * distance_m(side.a, side.b)));
  return space.walls.filter(({ segment }) => !isOnHull(segment)).map(({ segment: { a, b } }) => screen([a, b]));
}

const solidScreens = (footprints: readonly Outline[]): Screen[] => footprints.flatMap((ring) => (isConvex(ring) ? [screen(ring)] : sidesOf(ring).map(({ a, b }) => screen([a, b]))));

/** Pieces of a side of the region that do not lie under a convex screen. */
function besides({ a, b }: Segment, { corners }: Screen): Segment[] {
  if (corners.length < 3) return [{ a, b }];
  const length_m = distance_m(a, b);
  const cuts = sidesOf(corners).flatMap((side) => meetingOf({ a, b }, side) ?? []).map((p) => distance_m(a, p) / length_m);
  const shares = [0, ...cuts.sort((s, t) => s - t), 1];
  const at = (t: number): PlanPoint => planPoint(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
  return shares.slice(1).flatMap((end, i) => {
    const start = shares[i] ?? 0;
    return (end - start) * length_m > SAME_PLACE_m && !isInside(at((start + end) / 2), corners) ? [{ a: at(start), b: at(end) }] : [];
  });
}

/** The places from which a convex screen hides some of a straight piece: behind the lines that pass between the two, never too small. */
function hiddenFrom({ a, b }: Segment, { corners }: Screen, reach_m: number): Outline {
  const far: PlanPoint[] = [];
  for (const corner of corners) {
    for (const p of [a, b]) {
      const away_m = distance_m(p, corner);
      // A corner that the piece touches hides along the piece and along the screen: the others say so.
      if (away_m > TOUCHING_m) far.push(planPoint(corner.x + ((corner.x - p.x) / away_m) * reach_m, corner.y + ((corner.y - p.y) / away_m) * reach_m));
    }
  }
  return convexHull([...corners, ...far]);
}

/**
 * N9: the places from which some of the floor that only this nozzle covers is out of its footprint or out of its sight.
 * All of the floor is seen when its border is, for what lies before a place of the border is seen as well: told exactly by the
 * lines that pass between the floor and each thing that stops sight. A sliver of up to 1 cm² that the rule lets pass as noise
 * of its sums counts here.
 * @param candidates  where it matters
 */
export function lostFloor(site: Site, candidates: Region): Forbidden {
  const own = ownFloorOf(site);
  if (own.length === 0 || candidates.length === 0) return { rule: 'N9', region: [] };
  const { space, nozzle } = site;
  const reaching = reachingRing(site, own);
  const outOfReach = differenceOf(windowOf(site), [[reaching]]);
  const left = reaching.length === 0 ? [] : intersectionOf(candidates, [reaching]);
  if (left.length === 0) return { rule: 'N9', region: outOfReach };
  const opaque = opaqueTo(nozzle);
  const hanging = opaque.filter((solid) => !standsOnFloor(space, solid));
  const screens = [...wallScreens(site), ...solidScreens(opaque.filter((solid) => !hanging.includes(solid)).map(({ footprint }) => footprint))];
  const bounds = boundsOf(left.flat());
  const hidden: Outline[] = [...hanging.map(({ footprint }) => footprint), ...underHanging(site, own, hangingEdges(site, hanging))];
  for (const side of own.flatMap(sidesOf)) {
    if (distance_m(side.a, side.b) <= SAME_PLACE_m) continue;
    const around = boundsOf([side.a, side.b, planPoint(bounds.minX, bounds.minY), planPoint(bounds.maxX, bounds.maxY)]);
    for (const each of screens) {
      if (!boxesTouch(each.bounds, around)) continue;
      for (const piece of besides(side, each)) {
        const ring = hiddenFrom(piece, each, acrossOf_m(space) * 1e3);
        if (ring.length > 2 && boxesTouch(boundsOf(ring), bounds)) hidden.push(ring);
      }
    }
  }
  return { rule: 'N9', region: [...outOfReach, ...fillOf(hidden)] };
}
