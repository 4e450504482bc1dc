import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { segmentToOverFace_m } from '../geometry/over-face.ts';
import { segmentToPrism_m } from '../geometry/prism.ts';
import { type Segment3, distanceBetween3_m } from '../geometry/segment3.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Direction3, direction3 } from '../geometry/vector3.ts';
import { inches_m } from '../units/convert.ts';
import type { ClashThing, PipeContacts } from './clash-contacts.ts';
import { remembered } from './remember.ts';

/** Reach of a wrench from the axis of the pipe, common practice [m]. */
export const WRENCH_m = inches_m(6);
/** Half the thickness of its handle, common practice [m]. */
const HANDLE_m = inches_m(0.5);
/** From the node to where the wrench grips the pipe, common practice: just outside the fitting [m]. */
const GRIP_m = inches_m(2);
/** Directions that are tried: 5° apart, closer at the wrench's end than its handle is thick, so that nothing slips between two. */
const DIRECTIONS = 72;
/** Distances are worked out at least this well [m]. */
const FLOAT_NOISE_m = 1e-9;

/** How far a wrench can be swung around a threaded joint. */
export interface WrenchRoom {
  /** The widest unbroken range of directions that are free [rad]; 2π when all are. */
  readonly free_rad: number;
  readonly at: PlanPoint3;
  /** What is in its way, that nearest to the joint first. */
  readonly inTheWay: readonly ClashThing[];
}

function reach_m(handle: Segment3, thing: ClashThing): number {
  switch (thing.kind) {
    case 'solid':
      return segmentToPrism_m(handle, thing.solid);
    case 'floor':
      return segmentToPrism_m(handle, thing.floor.prism);
    case 'wall':
      return segmentToPrism_m(handle, thing.wall.prism);
    case 'ceiling':
      return Math.min(Infinity, ...thing.ceiling.faces.map((face) => segmentToOverFace_m(handle, face)));
    case 'pipe':
      return distanceBetween3_m(handle, { a: thing.pipe.from, b: thing.pipe.to }) - thing.pipe.outside_m / 2;
  }
}

/** Two directions square to a way and to each other. */
function squareTo({ x, y, z }: Direction3): readonly [Direction3, Direction3] {
  const u = Math.abs(z) < 0.9 ? { x: -y, y: x, z: 0 } : { x: 0, y: -z, z: y };
  const length = Math.hypot(u.x, u.y, u.z);
  const one = { x: u.x / length, y: u.y / length, z: u.z / length };
  return [one, { x: y * one.z - z * one.y, y: z * one.x - x * one.z, z: x * one.y - y * one.x }];
}

/** Room for a wrench at both ends of a pipe. */
export const wrenchRoomsOf = remembered((near: PipeContacts) => ({ from: roomAt(near, 'from'), to: roomAt(near, 'to') }));

/**
 * Room for a wrench at the threaded joint at one end of a pipe. The wrench grips the pipe 2 in from the node, or at the
 * middle of a shorter pipe, and its handle, 1 in thick, reaches 6 in from the axis, square to it. Every 5° around the
 * axis it is tried against solids, walls, slabs above and below, and other pipe; pipe that meets this one is not in its
 * way. The answer is the widest range between free directions, which is never more than there is.
 */
function roomAt(near: PipeContacts, end: 'from' | 'to'): WrenchRoom {
  const { pipe } = near;
  const node = pipe[end];
  const far = end === 'from' ? pipe.to : pipe.from;
  const way = direction3(node, far, SAME_PLACE_m);
  const off_m = Math.min(GRIP_m, distance3_m(node, far) / 2);
  const at = way ? { x: node.x + way.x * off_m, y: node.y + way.y * off_m, z: node.z + way.z * off_m } : node;
  const things = [...near.contacts, ...near.beside].flatMap(({ thing, clearance_m }) => {
    const away_m = clearance_m + pipe.outside_m / 2 < WRENCH_m + HANDLE_m ? reach_m({ a: at, b: at }, thing) : Infinity;
    return away_m < WRENCH_m + HANDLE_m ? [{ thing, away_m }] : [];
  });
  if (!way || things.length === 0) return { free_rad: 2 * Math.PI, at, inTheWay: [] };
  const [u, v] = squareTo(way);
  const handles = Array.from({ length: DIRECTIONS }, (_, i): Segment3 => {
    const [cos, sin] = [Math.cos((2 * Math.PI * i) / DIRECTIONS) * WRENCH_m, Math.sin((2 * Math.PI * i) / DIRECTIONS) * WRENCH_m];
    return { a: at, b: { x: at.x + cos * u.x + sin * v.x, y: at.y + cos * u.y + sin * v.y, z: at.z + cos * u.z + sin * v.z } };
  });
  const free = handles.map(() => true);
  const inTheWay = things
    .filter(({ thing }) => block(free, handles, thing))
    .sort((a, b) => a.away_m - b.away_m)
    .map(({ thing }) => thing);
  const blocked = free.indexOf(false);
  if (blocked < 0) return { free_rad: 2 * Math.PI, at, inTheWay: [] };
  let [longest, run] = [0, 0];
  for (let i = 1; i <= DIRECTIONS; i += 1) {
    run = free[(blocked + i) % DIRECTIONS] ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return { free_rad: (Math.max(0, longest - 1) * 2 * Math.PI) / DIRECTIONS, at, inTheWay };
}

/**
 * Marks the directions in which a thing is in the way, and tells whether there is any. From one direction to another no
 * place of the handle moves farther than its end does: so far from the limit, the directions between are like this one.
 */
function block(free: boolean[], handles: readonly Segment3[], thing: ClashThing): boolean {
  let isInTheWay = false;
  const look = (first: number, last: number): void => {
    const middle = Math.floor((first + last) / 2);
    const handle = handles[middle];
    if (first > last || !handle) return;
    const over_m = reach_m(handle, thing) - HANDLE_m;
    const alike = Math.floor((2 * Math.asin(Math.min(1, Math.max(0, Math.abs(over_m) - FLOAT_NOISE_m) / (2 * WRENCH_m))) * DIRECTIONS) / (2 * Math.PI));
    const [from, to] = [Math.max(first, middle - alike), Math.min(last, middle + alike)];
    if (over_m < 0) {
      isInTheWay = true;
      free.fill(false, from, to + 1);
    }
    look(first, from - 1);
    look(to + 1, last);
  };
  look(0, handles.length - 1);
  return isInTheWay;
}
