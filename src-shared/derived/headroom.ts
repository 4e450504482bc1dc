import { isInsideOrOn, isInsideRegion } from '../geometry/inside.ts';
import { type Box, type Outline, boundsOf, boxesTouch, distanceToOutline_m, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, type PlanPoint3, distance_m, planPoint, polar } from '../geometry/point.ts';
import { distanceToSegment_m, meetingOf } from '../geometry/segment.ts';
import { type Segment3, along3 } from '../geometry/segment3.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import { feet_m, inches_m } from '../units/convert.ts';
import type { Network } from '../model/plan.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';
import type { DerivedNetwork, Solid, Space } from './derived.ts';
import { remembered, rememberedPart, sameList } from './remember.ts';
import { isThere } from './solids.ts';
import { findWallBehind } from './wall-behind.ts';

/** A thing on the floor this high is walked around, and a cane finds pipe that comes down so low: 27 in, IBC 1003.3, memory [m]. */
export const CANE_m = inches_m(27);
/** What stands off the floor by no more stands on it [m]. */
const STANDS_m = inches_m(4);
/** Pipe may project this far from a wall into a way out: IBC 1003.3.3, memory [m]. */
const AT_WALL_m = inches_m(4);
/** The strip of a cylinder: nobody walks between it and its wall, nor within a foot beside it, the outlet of its assembly included. */
const STRIP_ASIDE_m = feet_m(1);
/** Pipe and assembly along the wall over cylinders belong to their strip as far from the wall as this, or as the cylinders stand [m]. */
const STRIP_DEEP_m = 0.3;
/** Pipe outside every room by no more than this is in a wall [m]. */
const WALL_m = 0.6;
/** Stretches shorter than this slip between two regions that touch [m]. */
const SLIVER_m = 0.005;
/** Farther away than this nothing counts: beyond the thickness of a wall and the reach of its strip [m]. */
const NEAR_m = 1;

/** Floor of a level that nobody walks on. */
export interface KeptOffFloor {
  readonly rooms: readonly Space[];
  /** Closed rings, and the box around each. */
  readonly rings: readonly Outline[];
  readonly boxes: readonly Box[];
}

const grown = ({ minX, minY, maxX, maxY }: Box, by_m: number): Box => ({ minX: minX - by_m, minY: minY - by_m, maxX: maxX + by_m, maxY: maxY + by_m });
const circle = (at: PlanPoint, radius_m: number): PlanPoint[] => Array.from({ length: 24 }, (_, i) => polar(at, (i * Math.PI) / 12, radius_m));

function stripOf(at: PlanPoint, radius_m: number, back_rad: number, toWall_m: number): PlanPoint[] {
  const wall = polar(at, back_rad, toWall_m);
  const deep_m = Math.max(toWall_m + radius_m, STRIP_DEEP_m);
  const [left, right] = [polar(wall, back_rad + Math.PI / 2, radius_m + STRIP_ASIDE_m), polar(wall, back_rad - Math.PI / 2, radius_m + STRIP_ASIDE_m)];
  return [left, right, polar(right, back_rad, -deep_m), polar(left, back_rad, -deep_m)];
}

const stripsOf = rememberedPart((cylinders: Network['cylinders'], rooms: readonly Space[], profile: UnitProfile | undefined): readonly Outline[] => {
  const radius_m = (profile?.limits.cylinderDiameter_m?.value ?? 0) / 2;
  return Object.values(cylinders).flatMap((cylinder) => {
    const behind = findWallBehind(cylinder, rooms);
    const own = radius_m > 0 ? [circle(cylinder.at, radius_m)] : [];
    return behind ? [...own, stripOf(cylinder.at, radius_m, behind.face.inward_rad + Math.PI, behind.off_m)] : own;
  });
});

const standingOf = remembered((solids: readonly Solid[]): readonly Outline[] =>
  solids.filter((solid) => isThere(solid) && solid.bottom_m <= STANDS_m && solid.top_m >= CANE_m).map(({ footprint }) => footprint),
);

interface LastFloor {
  readonly standing: readonly Outline[];
  readonly strips: readonly (readonly Outline[])[];
  readonly floor: KeptOffFloor;
}

const lastOf = new WeakMap<readonly Space[], LastFloor>();

/** Cylinders of a network with the strips between them and their wall, on a level with these rooms: the very same list while neither changes. */
export const cylinderStripsOf = ({ network, profile }: DerivedNetwork, rooms: readonly Space[]): readonly Outline[] => stripsOf(network.cylinders, rooms, profile);

/**
 * Where on a level nobody walks: over things 27 in high or higher that stand on the floor, and over cylinders with the
 * strip between them and their wall, which reaches a foot past them to either side. The very same answer for the same
 * list of rooms while nothing of that changes.
 * @param around  `cylinderStripsOf` every network of the level
 */
export function keptOffFloor(rooms: readonly Space[], solids: readonly Solid[], around: readonly (readonly Outline[])[]): KeptOffFloor {
  const standing = standingOf(solids);
  const last = lastOf.get(rooms);
  const strips = sameList(last?.strips, around);
  if (last && last.standing === standing && last.strips === strips) return last.floor;
  const rings = sameList(last?.floor.rings, [...standing, ...strips.flat()]);
  const floor = last?.floor.rings === rings ? last.floor : { rooms, rings, boxes: rings.map(boundsOf) };
  lastOf.set(rooms, { standing, strips, floor });
  return floor;
}

/** Pipe or a part of the discharge assembly, around its axis. */
export interface Overhead {
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly outside_m: number;
}

/** What is low over a floor. */
export interface LowOverFloor {
  /** Lowest place of its axis where people walk; undefined when there is none. */
  readonly at: PlanPoint3 | undefined;
  /** Its underside there [m]. */
  readonly under_m: number;
  /** A part of it lies over no room that is drawn. */
  readonly isOffPlan: boolean;
}

/** The part of an axis whose underside is below a height, and whose top is above the finished floor. */
function lowPart({ from, to, outside_m }: Overhead, below_m: number): Segment3 | undefined {
  const [under, over] = [below_m + outside_m / 2 - LENGTH_SLACK_m, -outside_m / 2];
  const rise = to.z - from.z;
  if (rise === 0) return from.z < under && from.z > over ? { a: from, b: to } : undefined;
  const [s, t] = [(over - from.z) / rise, (under - from.z) / rise].sort((a, b) => a - b);
  const [start, end] = [Math.max(0, s ?? 0), Math.min(1, t ?? 1)];
  return start < end ? { a: along3({ a: from, b: to }, start), b: along3({ a: from, b: to }, end) } : undefined;
}

const roomAt = (p: PlanPoint, rooms: readonly Space[]): Space | undefined => rooms.find((room) => isInsideRegion(p, room.outline, room.holes));

/** Whether people walk under a place of pipe: in a room, not over what keeps them off, not close along a wall, not above its ceiling. */
function walksUnder(p: PlanPoint3, outside_m: number, { rooms, rings }: Pick<KeptOffFloor, 'rooms' | 'rings'>): boolean {
  const room = roomAt(p, rooms);
  if (!room || rings.some((ring) => isInsideOrOn(p, ring))) return false;
  if (p.z - outside_m / 2 > (room.ceilingAt_m(p) ?? Infinity)) return false;
  return room.walls.every(({ segment }) => distanceToSegment_m(p, segment) + outside_m / 2 > AT_WALL_m + LENGTH_SLACK_m);
}

/**
 * The lowest place of pipe over floor where people walk, below a height. Its axis counts, with its underside: it is cut
 * where it enters or leaves a room, a region that keeps people off, or the 4 in along a wall, to half a centimetre.
 * @param below_m  underside that leaves headroom [m]
 */
export function lowOverFloor(thing: Overhead, floor: KeptOffFloor, below_m: number): LowOverFloor {
  const low = lowPart(thing, below_m);
  if (!low) return { at: undefined, under_m: Infinity, isOffPlan: false };
  const { a, b } = low;
  const near = grown(boundsOf([a, b]), NEAR_m);
  const off = { rooms: floor.rooms.filter(({ bounds }) => boxesTouch(bounds, near)), rings: floor.rings.filter((_, i) => boxesTouch(floor.boxes[i] ?? near, near)) };
  const length_m = distance_m(a, b);
  const cuts = [0, 1];
  const cut = (ring: Outline): void => {
    for (const side of sidesOf(ring)) {
      const met = length_m > 0 ? meetingOf({ a, b }, side) : undefined;
      if (met) cuts.push(Math.min(1, distance_m(a, met) / length_m));
    }
  };
  for (const ring of off.rings) cut(ring);
  for (const room of off.rooms) {
    for (const ring of [room.outline, ...room.holes]) cut(ring);
    const reach_m = AT_WALL_m - thing.outside_m / 2;
    for (const { segment, inward_rad } of reach_m > 0 ? room.walls : []) if (boxesTouch(boundsOf([segment.a, segment.b]), near)) cut([segment.a, segment.b, polar(segment.b, inward_rad, reach_m), polar(segment.a, inward_rad, reach_m)]);
  }
  cuts.sort((s, t) => s - t);
  let at: PlanPoint3 | undefined;
  let isOffPlan = false;
  const consider = (from: PlanPoint3, to: PlanPoint3, middle: PlanPoint3): void => {
    if (!roomAt(middle, off.rooms)) {
      const flat = planPoint(middle.x, middle.y);
      if (off.rooms.every(({ outline }) => distanceToOutline_m(flat, outline) > WALL_m) && !off.rings.some((ring) => isInsideOrOn(middle, ring))) isOffPlan = true;
      return;
    }
    if (!walksUnder(middle, thing.outside_m, off)) return;
    const lowest = from.z <= to.z ? from : to;
    if (!at || lowest.z < at.z) at = lowest;
  };
  if (length_m <= SLIVER_m) consider(a, b, along3(low, 0.5));
  else {
    for (const [i, start] of cuts.slice(0, -1).entries()) {
      const end = cuts[i + 1] ?? 1;
      if ((end - start) * length_m > SLIVER_m) consider(along3(low, start), along3(low, end), along3(low, (start + end) / 2));
    }
  }
  return { at, under_m: at ? at.z - thing.outside_m / 2 : Infinity, isOffPlan };
}
