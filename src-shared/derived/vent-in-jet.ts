import { angleBetween_rad } from '../geometry/angle.ts';
import { type PlanPoint, bearing_rad, distance_m, midpoint, planPoint } from '../geometry/point.ts';
import { type Segment, meetingOf, nearestOnSegment, rayHit_m } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { DerivedNozzle, WallFace } from './derived.ts';

/** The face of an opening: its width on the plan, and its height above the finished floor [m]. */
export interface OpeningFace {
  readonly wall: string;
  readonly on: Segment;
  readonly bottom_m: number;
  readonly top_m: number;
}

/** An opening that a jet blows at. */
export interface JetAtOpening {
  readonly azimuth_rad: number;
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  /** From the hole to the nearest part of the opening that lies in the jet [m]. */
  readonly distance_m: number;
}

/** A wider spread than this has no cone any more [rad]. */
const WIDEST_rad = (89 * Math.PI) / 180;

/** The part of a piece of wall that lies within a wedge from a place; undefined where it lies outside. */
function inWedge(from: PlanPoint, azimuth_rad: number, half_rad: number, on: Segment): Segment | undefined {
  const isIn = (p: PlanPoint): boolean => distance_m(from, p) === 0 || angleBetween_rad(bearing_rad(from, p), azimuth_rad) <= half_rad + 1e-9;
  const edges = [azimuth_rad - half_rad, azimuth_rad, azimuth_rad + half_rad].flatMap((edge_rad) => {
    const run_m = rayHit_m(from, edge_rad, on);
    return run_m === undefined ? [] : [planPoint(from.x + Math.cos(edge_rad) * run_m, from.y + Math.sin(edge_rad) * run_m)];
  });
  const inside = [...[on.a, on.b].filter(isIn), ...edges];
  const along = (p: PlanPoint): number => distance_m(on.a, p);
  const inOrder = inside.sort((one, other) => along(one) - along(other));
  const [first, last] = [inOrder[0], inOrder.at(-1)];
  return first && last ? { a: first, b: last } : undefined;
}

/** Whether both ends of a piece of wall lie behind the back of a jet: mostly that is all there is to tell. */
function isTurnedAway(from: PlanPoint, azimuth_rad: number, half_rad: number, { a, b }: Segment): boolean {
  if (half_rad > Math.PI / 3) return false;
  const [x, y] = [Math.cos(azimuth_rad), Math.sin(azimuth_rad)];
  const isBack = (p: PlanPoint): boolean => (p.x - from.x) * x + (p.y - from.y) * y < -SAME_PLACE_m;
  return isBack(a) && isBack(b);
}

/** Whether walls of the room other than that of the opening stand between. */
const isHidden = (from: PlanPoint, to: PlanPoint, wall: string, walls: readonly WallFace[]): boolean => walls.some(({ ref, segment }) => ref.id !== wall && meetingOf({ a: from, b: to }, segment) !== undefined && !endsOn(to, segment));
const endsOn = (p: PlanPoint, { a, b }: Segment): boolean => distance_m(p, a) < 1e-6 || distance_m(p, b) < 1e-6;

/**
 * The jets of a nozzle that blow at an opening in a wall of its space: each spreads as a cone to either side, up and down,
 * and only walls count as standing in its way, so that rather too much is said to be blown at.
 * @param spread_rad  half the angle of the cone
 */
export function jetsAtOpening({ at, space, holes_rad }: DerivedNozzle, spread_rad: number, { wall, on, bottom_m, top_m }: OpeningFace): JetAtOpening[] {
  if (!at || !space) return [];
  const from = planPoint(at.x, at.y);
  const away_m = Math.max(0, bottom_m - at.z, at.z - top_m);
  const half_rad = Math.min(spread_rad, WIDEST_rad);
  return holes_rad.flatMap((azimuth_rad) => {
    if (isTurnedAway(from, azimuth_rad, half_rad, on)) return [];
    const part = inWedge(from, azimuth_rad, half_rad, on);
    if (!part) return [];
    const nearest = nearestOnSegment(from, part);
    const farthest_m = Math.max(distance_m(from, part.a), distance_m(from, part.b));
    if (away_m > Math.tan(half_rad) * farthest_m + 1e-9) return [];
    const seen = [nearest, midpoint(part.a, part.b), part.a, part.b].find((place) => !isHidden(from, place, wall, space.walls));
    return seen ? [{ azimuth_rad, from, to: nearest, distance_m: Math.hypot(distance_m(from, nearest), away_m) }] : [];
  });
}
