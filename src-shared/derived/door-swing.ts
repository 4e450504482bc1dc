import RBush from 'rbush';
import { turnTo_rad } from '../geometry/angle.ts';
import { type Box, type Outline, boundsOf } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, midpoint, polar } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m, rayHit_m } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Opening, RefOf } from '../model/plan.ts';
import type { Space } from './derived.ts';
import { remembered } from './remember.ts';

/** The quarter circle that a door leaf sweeps from shut to square open. */
export interface LeafSweep {
  readonly hinge: PlanPoint;
  /** From the hinge along the shut leaf, and along the open one, a quarter turn apart [rad]. */
  readonly shut_rad: number;
  readonly open_rad: number;
  readonly width_m: number;
}

/** A door of a room. */
export interface Door {
  readonly ref: RefOf<'opening'>;
  /** As the user reads it: "Door" of "Room 204". */
  readonly name: string;
  readonly room: string;
  /** Its width on the wall face of its room, and on that of the room behind the wall where one is drawn. */
  readonly doorways: readonly Segment[];
  /** undefined: it does not swing. */
  readonly sweep: LeafSweep | undefined;
}

/** Rooms whose faces are farther apart than this have no wall in common [m]. */
const WALL_m = 0.6;

/** The rooms of a level, found by place. */
interface RoomIndex {
  /** Rooms with a wall whose box touches a box. */
  near(box: Box): Space[];
}

function indexOf(rooms: readonly Space[]): RoomIndex {
  const tree = new RBush<Box & { readonly room: Space }>();
  tree.load(rooms.map((room) => ({ ...boundsOf(room.walls.flatMap(({ segment: { a, b } }) => [a, b])), room })));
  return { near: (box) => tree.search(box).map(({ room }) => room) };
}

/** How thick the wall is at a door [m], where a room is drawn behind it. */
function wallThickness_m(middle: PlanPoint, out_rad: number, room: Space, rooms: RoomIndex): number | undefined {
  const from = polar(middle, out_rad, -SAME_PLACE_m);
  // What is hit farther away is no wall of this door.
  const to = polar(middle, out_rad, WALL_m + 2 * SAME_PLACE_m);
  let least_m = Infinity;
  for (const other of rooms.near(boundsOf([from, to]))) {
    if (other === room) continue;
    for (const { segment } of other.walls) least_m = Math.min(least_m, rayHit_m(from, out_rad, segment) ?? Infinity);
  }
  least_m -= SAME_PLACE_m;
  return least_m <= WALL_m ? Math.max(0, least_m) : undefined;
}

function doorOf(opening: Opening, room: Space, rooms: RoomIndex): Door[] {
  const ring = [room.enclosure.outline, ...room.enclosure.holes].find((corners) => corners.some(({ id }) => id === opening.wall));
  const at = ring?.findIndex(({ id }) => id === opening.wall) ?? -1;
  const from = ring?.[at];
  const to = ring?.[(at + 1) % (ring.length || 1)];
  const face = room.walls.find(({ ref }) => ref.id === opening.wall);
  if (!from || !to || !face) return [];
  const wall_rad = bearing_rad(from, to);
  const [start, end] = [-1, 1].map((side) => polar(from, wall_rad, opening.along_m + (side * opening.width_m) / 2));
  if (!start || !end) return [];
  const out_rad = face.inward_rad + Math.PI;
  const thick_m = wallThickness_m(midpoint(start, end), out_rad, room, rooms);
  const outer = (place: PlanPoint): PlanPoint => polar(place, out_rad, thick_m ?? 0);
  const inside = { a: start, b: end };
  const swingsIn = opening.swing === 'in';
  const atStart = opening.hinge === 'start';
  const hinge = atStart ? start : end;
  return [
    {
      ref: { kind: 'opening', level: room.level.id, enclosure: room.enclosure.id, id: opening.id },
      name: opening.name,
      room: room.name,
      doorways: thick_m === undefined ? [inside] : [inside, { a: outer(start), b: outer(end) }],
      sweep:
        opening.swing === 'none'
          ? undefined
          : {
              hinge: swingsIn ? hinge : outer(hinge),
              shut_rad: atStart ? wall_rad : wall_rad + Math.PI,
              open_rad: swingsIn ? face.inward_rad : out_rad,
              width_m: opening.width_m,
            },
    },
  ];
}

/** The doors of a room. */
const doorsIn = remembered((room: Space, rooms: RoomIndex): readonly Door[] =>
  Object.values(room.enclosure.openings)
    .filter(({ kind }) => kind === 'door')
    .flatMap((opening) => doorOf(opening, room, rooms)),
);

/** The doors of every level, by level id. One that swings out of its room hangs on the far face of the wall where a room is drawn there. */
export const doorsByLevel = remembered((spaces: readonly Space[]): ReadonlyMap<string, readonly Door[]> => {
  const roomsOn = new Map<string, Space[]>();
  for (const space of spaces) {
    if (space.kind !== 'room') continue;
    const known = roomsOn.get(space.level.id);
    if (known) known.push(space);
    else roomsOn.set(space.level.id, [space]);
  }
  const byLevel = new Map<string, readonly Door[]>();
  for (const [level, rooms] of roomsOn) {
    const index = indexOf(rooms);
    const doors = rooms.flatMap((room) => doorsIn(room, index));
    if (doors.length > 0) byLevel.set(level, doors);
  }
  return byLevel;
});

/** Distance from a place to the nearest place that a leaf sweeps [m]; 0 inside the sweep. */
export function distanceToSweep_m(p: PlanPoint, { hinge, shut_rad, open_rad, width_m }: LeafSweep): number {
  const along = (angle_rad: number): number => (p.x - hinge.x) * Math.cos(angle_rad) + (p.y - hinge.y) * Math.sin(angle_rad);
  if (along(shut_rad) >= 0 && along(open_rad) >= 0) return Math.max(0, distance_m(p, hinge) - width_m);
  const leafAt = (angle_rad: number): Segment => ({ a: hinge, b: polar(hinge, angle_rad, width_m) });
  return Math.min(distanceToSegment_m(p, leafAt(shut_rad)), distanceToSegment_m(p, leafAt(open_rad)));
}

/** Distance from a place to a door's sweep or doorway, whichever is nearer [m]. */
export const distanceToDoor_m = (p: PlanPoint, { doorways, sweep }: Door): number =>
  Math.min(...doorways.map((doorway) => distanceToSegment_m(p, doorway)), sweep ? distanceToSweep_m(p, sweep) : Infinity);

const STEPS = 24;

/** The sweep as a closed ring for showing: from the hinge to the shut leaf's tip, round the arc and back. */
export const sweepOutline = ({ hinge, shut_rad, open_rad, width_m }: LeafSweep): Outline => {
  const turn_rad = turnTo_rad(shut_rad, open_rad);
  return [hinge, ...Array.from({ length: STEPS + 1 }, (_, i) => polar(hinge, shut_rad + (turn_rad * i) / STEPS, width_m))];
};
