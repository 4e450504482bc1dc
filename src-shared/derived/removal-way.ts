import { sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, midpoint, polar } from '../geometry/point.ts';
import { type Segment, nearestOnSegment } from '../geometry/segment.ts';
import type { Space } from './derived.ts';
import type { Door } from './door-swing.ts';
import type { OtherCylinder } from './front-depth.ts';
import { leadsPlainly } from './plain-way.ts';
import { type Region, differenceOf, intersectionOf, partsOf } from './polygon-sums.ts';
import { remembered } from './remember.ts';

/** What a person works under: things above it leave the floor free [m]. */
const HEADROOM_m = 2;
/** Straight pieces of half a turn; each corner lies outside the true arc, at most by 0.06 % of its radius. */
const HALF_TURN_STEPS = 48;
/** Taken off half the width, so that neither the grid of the polygon sums nor float noise closes a way that is just wide enough [m]. */
const GRID_SLACK_m = 1e-5;
/** How deep a doorway is looked for in the free floor [m]. */
const DOORSTEP_m = 1e-3;
/** Half a width that is found by halving is known to this [m]. */
const FOUND_TO_m = 1e-3;

/** The floor that must be reached from, and the doors that lead out. */
export interface Removal {
  /** Free floor in front of the cylinder, a closed ring. */
  readonly front: readonly PlanPoint[];
  readonly room: Space;
  readonly doors: readonly Door[];
  readonly others: readonly OtherCylinder[];
}

/** The widest thing that can be taken out, and where it is stopped. */
export interface Narrowest {
  /** Width that still gets through [m], to a millimetre, rounded down; 0: nothing does. */
  readonly width_m: number;
  /** Where a wider one is stopped; undefined where nothing gets through at all. */
  readonly at: PlanPoint | undefined;
}

/** How far the corners of a ring lie from the middle of the round end that it stands for [m]. */
const outOf_m = (radius_m: number): number => radius_m / Math.cos(Math.PI / HALF_TURN_STEPS / 2);

/** A straight piece with everything nearer to it than a radius: a ring that nowhere lies inside the true one. */
function thickened({ a, b }: Segment, radius_m: number): PlanPoint[] {
  const ahead_rad = distance_m(a, b) === 0 ? 0 : bearing_rad(a, b);
  const reach_m = outOf_m(radius_m);
  const half = (at: PlanPoint, middle_rad: number): PlanPoint[] => [
    polar(at, middle_rad - Math.PI / 2, radius_m),
    ...Array.from({ length: HALF_TURN_STEPS }, (_, i) => polar(at, middle_rad - Math.PI / 2 + (Math.PI * (i + 0.5)) / HALF_TURN_STEPS, reach_m)),
    polar(at, middle_rad + Math.PI / 2, radius_m),
  ];
  return [...half(b, ahead_rad), ...half(a, ahead_rad + Math.PI)];
}

/** What is left of a wall face between the doorways in it. */
function besideDoorways(face: Segment, doorways: readonly Segment[]): Segment[] {
  const length_m = distance_m(face.a, face.b);
  if (length_m === 0) return [];
  const along = (p: PlanPoint): number => ((p.x - face.a.x) * (face.b.x - face.a.x) + (p.y - face.a.y) * (face.b.y - face.a.y)) / length_m;
  const way_rad = bearing_rad(face.a, face.b);
  const on = doorways
    .filter((doorway) => [doorway.a, doorway.b].every((p) => distance_m(p, nearestOnSegment(p, face)) < 1e-3))
    .map(({ a, b }) => [Math.min(along(a), along(b)), Math.max(along(a), along(b))] as const)
    .sort(([a], [b]) => a - b);
  const left: Segment[] = [];
  let from_m = 0;
  for (const [start, end] of on) {
    if (start > from_m) left.push({ a: polar(face.a, way_rad, from_m), b: polar(face.a, way_rad, start) });
    from_m = Math.max(from_m, end);
  }
  if (from_m < length_m) left.push({ a: polar(face.a, way_rad, from_m), b: face.b });
  return left;
}

/** The doors of a room, of those of its level. */
export const doorsOfRoom = remembered((room: Space, doors: readonly Door[]): readonly Door[] => doors.filter(({ ref }) => ref.enclosure === room.enclosure.id));

/** What stands in a room, and the edges that a thing which is taken out must keep off. */
const edgesIn = remembered((room: Space, doors: readonly Door[]) => {
  const doorways = doors.flatMap((door) => door.doorways.slice(0, 1));
  const standing = room.solids.filter(({ bottom_m, top_m }) => bottom_m < HEADROOM_m && top_m > 0);
  return { standing, edges: [...room.walls.flatMap(({ segment }) => besideDoorways(segment, doorways)), ...standing.flatMap(({ footprint }) => sidesOf(footprint))] };
});

/** Where the middle of a round thing may stand in a room, walls and solids counted; kept by its radius. */
const roomShrunk = remembered((room: Space, doors: readonly Door[]): ((radius_m: number) => Region) => {
  const { standing, edges } = edgesIn(room, doors);
  const floor = differenceOf([room.outline, ...room.holes], standing.map(({ footprint }) => [footprint]));
  const known = new Map<number, Region>();
  return (radius_m) => {
    const shrunk = known.get(radius_m) ?? differenceOf(floor, edges.map((edge) => [thickened(edge, radius_m)]));
    known.set(radius_m, shrunk);
    return shrunk;
  };
});

/** From a doorway into its room [rad]. */
const inwardOf_rad = ({ a, b }: Segment, { walls }: Space): number =>
  walls.find(({ segment }) => [a, b].every((p) => distance_m(p, nearestOnSegment(p, segment)) < 1e-3))?.inward_rad ?? bearing_rad(a, b) + Math.PI / 2;

/** The strip along a doorway on the inner side of its wall. */
function doorstep(doorway: Segment, room: Space): PlanPoint[] {
  const { a, b } = doorway;
  const inward_rad = inwardOf_rad(doorway, room);
  return [polar(a, inward_rad, -DOORSTEP_m), polar(b, inward_rad, -DOORSTEP_m), polar(b, inward_rad, DOORSTEP_m), polar(a, inward_rad, DOORSTEP_m)];
}

/** Half the width of what is taken out, as it is counted [m]. */
const radiusFor_m = (width_m: number): number => Math.max(0, width_m / 2 - GRID_SLACK_m);

/** Doorways that let a thing of a width through. */
const doorwaysFor = (doors: readonly Door[], width_m: number): Segment[] => doors.filter((door) => doorWidth_m(door) >= width_m - 2 * GRID_SLACK_m).flatMap(({ doorways }) => doorways.slice(0, 1));

const meets = (one: Region, other: Region): boolean => intersectionOf(one, other).length > 0;

/** The parts of the floor that a thing of a width can stand on, those that it starts from and those with a door. */
function partsFor({ front, room, doors, others }: Removal, width_m: number): { readonly starts: readonly Region[]; readonly ends: readonly Region[] } {
  const radius_m = radiusFor_m(width_m);
  const free = differenceOf(
    roomShrunk(room, doors)(radius_m),
    others.map((other) => [thickened({ a: other.at, b: other.at }, other.radius_m + radius_m)]),
  );
  const parts = partsOf(free);
  const steps = doorwaysFor(doors, width_m).map((doorway) => [doorstep(doorway, room)]);
  return { starts: parts.filter((part) => meets(part, [front])), ends: parts.filter((part) => steps.some((step) => meets(part, step))) };
}

const doorWidth_m = ({ doorways: [inside] }: Door): number => (inside ? distance_m(inside.a, inside.b) : 0);

/** Whether some way is so wide that nothing has to be cut out of the floor to see it; no says nothing. */
export function isPlainlyWide({ room, front, doors, others }: Removal, width_m: number): boolean {
  const radius_m = radiusFor_m(width_m);
  const inTheWay = { ...edgesIn(room, doors), room, others, edgeRadius_m: outOf_m(radius_m), radiusBeside_m: (other: OtherCylinder) => outOf_m(other.radius_m + radius_m) };
  return doorwaysFor(doors, width_m).some((doorway) => leadsPlainly(front, doorway, inwardOf_rad(doorway, room), inTheWay));
}

/**
 * Whether a round thing of a width gets from the floor in front of a cylinder to a door of its room and through it.
 * Exact along straight walls and between corners but for 0.06 % of half the width, on the side of "no".
 */
export function hasWayOut(removal: Removal, width_m: number): boolean {
  const { starts, ends } = partsFor(removal, width_m);
  return starts.some((part) => ends.includes(part));
}

/** The same, told at once where the way is plain. */
export const canTakeOut = (removal: Removal, width_m: number): boolean => isPlainlyWide(removal, width_m) || hasWayOut(removal, width_m);

/** The nearest two places of two regions. */
function nearestPlaces(one: Region, other: Region): readonly [PlanPoint, PlanPoint] | undefined {
  let best: readonly [PlanPoint, PlanPoint] | undefined;
  let least_m = Infinity;
  const look = (from: Region, to: Region): void => {
    for (const corner of from.flat()) {
      for (const side of to.flatMap(sidesOf)) {
        const foot = nearestOnSegment(corner, side);
        const apart_m = distance_m(corner, foot);
        if (apart_m < least_m) [best, least_m] = [[corner, foot], apart_m];
      }
    }
  };
  look(one, other);
  look(other, one);
  return best;
}

/** How wide a thing gets out at most, for a width that does not, and where it is stopped. */
export function narrowestOf(removal: Removal, tooWide_m: number): Narrowest {
  let [fits_m, stuck_m] = [0, tooWide_m];
  while (stuck_m - fits_m > FOUND_TO_m) {
    const half_m = (fits_m + stuck_m) / 2;
    if (canTakeOut(removal, half_m)) fits_m = half_m;
    else stuck_m = half_m;
  }
  if (fits_m === 0) return { width_m: 0, at: undefined };
  const { starts, ends } = partsFor(removal, stuck_m);
  const [start] = starts;
  const doors = removal.doors.filter((door) => doorWidth_m(door) < stuck_m);
  const apart = start && ends.flatMap((end) => nearestPlaces(start, end) ?? []);
  if (apart?.[0] && apart[1]) return { width_m: fits_m, at: midpoint(apart[0], apart[1]) };
  // No free floor in front, or none of the doors is wide enough.
  const [door] = start ? doors.flatMap(({ doorways }) => doorways.slice(0, 1)) : [];
  return { width_m: fits_m, at: door ? midpoint(door.a, door.b) : removal.front[0] };
}
