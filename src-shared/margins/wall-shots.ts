import type { WallFace } from '../derived/derived.ts';
import { type Region, differenceOf, fillOf, intersectionOf } from '../derived/polygon-sums.ts';
import { neighboursOf } from '../derived/wall-runs.ts';
import { axisAngle_rad, turnTo_rad } from '../geometry/angle.ts';
import { type PlanPoint, bearing_rad, polar } from '../geometry/point.ts';
import { ringAround, wedge } from '../geometry/round-rings.ts';
import { ANGLE_SLACK_rad, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { CornerZone } from './corner-zones.ts';
import { type Forbidden, HAIR_m, HAIR_rad, type Site } from './site.ts';

/** Corners that turn less than this are straight walls drawn in pieces [rad]. */
const STRAIGHT_rad = 1e-9;

/** Before a face, as far as the zone: wrong when a hole does not blow along the face. */
function besideFace({ segment: { a, b }, inward_rad }: WallFace, { nozzle, limits }: Site): Region {
  const axis_rad = bearing_rad(a, b);
  const isAlong = nozzle.holes_rad.every((hole_rad) => axisAngle_rad(hole_rad, axis_rad) <= limits.nearWallAngle_rad + ANGLE_SLACK_rad);
  const out = (p: PlanPoint, off_m: number): PlanPoint => polar(p, inward_rad, off_m);
  return isAlong ? [] : fillOf([[out(a, -SAME_PLACE_m), out(b, -SAME_PLACE_m), out(b, limits.nearWallZone_m + HAIR_m), out(a, limits.nearWallZone_m + HAIR_m)]]);
}

/** Round an outside corner a wall is as near as its end, and its axis square to the way there: a fan, wrong but for the directions that every hole is square to. */
function roundEnd(end: PlanPoint, from_rad: number, turn_rad: number, { nozzle, limits }: Site): Region {
  const { nearWallZone_m: zone_m, nearWallAngle_rad: allowed_rad } = limits;
  const far_m = zone_m * 4;
  // In steps, so that a fan wider than half a turn stays what it is.
  const steps = Math.ceil(Math.abs(turn_rad) / 1);
  const fan = Array.from({ length: steps }, (_, i) => wedge(end, from_rad + (turn_rad * (i + 0.5)) / steps, Math.abs(turn_rad) / steps / 2 + 1e-7, far_m));
  const round = intersectionOf(fillOf([ringAround(end, zone_m)]), fillOf(fan));
  const kept = nozzle.holes_rad.map((hole_rad): Region => fillOf([Math.PI / 2, -Math.PI / 2].map((square_rad) => wedge(end, hole_rad + square_rad, Math.min(allowed_rad - HAIR_rad, 1.5), far_m))));
  const allKept = kept.slice(1).reduce((both, each) => intersectionOf(both, each), kept[0] ?? []);
  return differenceOf(round, [allKept]);
}

/** N6: the places near a wall, and in no corner of it, from which a hole, as it points now, does not blow along that wall. */
export function wallShots(site: Site, zones: readonly CornerZone[]): Forbidden {
  const { space } = site;
  const region = space.walls.flatMap((face): Region => {
    const { before } = neighboursOf(space, face);
    const { after } = neighboursOf(space, face);
    const wrong = [besideFace(face, site)];
    // The room turns outward, away from the wall: both walls reach round the corner there.
    const turnBefore_rad = before ? turnTo_rad(before.inward_rad, face.inward_rad) : 0;
    const turnAfter_rad = after ? turnTo_rad(face.inward_rad, after.inward_rad) : 0;
    if (before && turnBefore_rad < -STRAIGHT_rad) wrong.push(roundEnd(face.segment.a, before.inward_rad, turnBefore_rad, site));
    if (after && turnAfter_rad < -STRAIGHT_rad) wrong.push(roundEnd(face.segment.b, face.inward_rad, turnAfter_rad, site));
    const all = wrong.flat();
    const corners = zones.filter(({ walls }) => walls.includes(face)).map(({ inner }) => inner);
    return all.length === 0 || corners.length === 0 ? all : differenceOf(all, corners);
  });
  return { rule: 'N6', region };
}
