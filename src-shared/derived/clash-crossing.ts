import { faceHeight_m } from '../geometry/over-face.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { direction3 } from '../geometry/vector3.ts';
import type { SolidCeiling } from './clash-ceiling.ts';
import { ASSUMED_THICK_m, type SolidFloor, type SolidWall } from './clash-bounds.ts';
import type { ClashPipe } from './clash-pipe.ts';
import { inFrontOf_m } from './wall-runs.ts';

/** A crossing is square to what is crossed, or off it by no more than 30°: a sleeve still takes it. */
const SQUARE = Math.cos(Math.PI / 6);
const STRAIGHT = Math.cos(Math.PI / 180);

/** Whether another pipe that meets this one at a node goes straight on from it there, within one degree. */
export function goesOn(pipe: ClashPipe, at: 'from' | 'to', joined: readonly ClashPipe[]): boolean {
  const here = pipe[at];
  const back = direction3(here, at === 'from' ? pipe.to : pipe.from, SAME_PLACE_m);
  return joined.some((other) => {
    if (other.from !== here && other.to !== here) return false;
    const away = direction3(here, other.from === here ? other.to : other.from, SAME_PLACE_m);
    return back !== undefined && away !== undefined && back.x * away.x + back.y * away.y + back.z * away.z <= -STRAIGHT;
  });
}

/**
 * Whether a pipe goes through a layer from one side to the other.
 * @param depths  how far each end of the pipe lies behind the near face of the layer [m]; negative before it
 * @param square  cosine of the angle between the pipe and the way straight through the layer
 */
function goesThrough(pipe: ClashPipe, depths: readonly [from: number, to: number], square: number, thick_m: number, joined: readonly ClashPipe[]): boolean {
  if (Math.abs(square) < SQUARE) return false;
  const [from_m, to_m] = depths;
  const [near, far] = from_m <= to_m ? (['from', 'to'] as const) : (['to', 'from'] as const);
  const isBefore = Math.min(from_m, to_m) <= SAME_PLACE_m || goesOn(pipe, near, joined);
  const isBehind = Math.max(from_m, to_m) >= thick_m - SAME_PLACE_m || goesOn(pipe, far, joined);
  return isBefore && isBehind;
}

/**
 * Whether a pipe crosses a wall, floor or ceiling as P29 judges it, and does not run into it: it goes through it from one
 * side to the other, square to it or no more than 30° off. An end within the wall or slab is no crossing unless pipe goes
 * straight on there; pipe along a wall or slab, in it, is none, and neither is a slanting one.
 */
export function crosses(pipe: ClashPipe, layer: { readonly wall: SolidWall } | { readonly floor: SolidFloor } | { readonly ceiling: SolidCeiling }, joined: readonly ClashPipe[]): boolean {
  const way = direction3(pipe.from, pipe.to, SAME_PLACE_m);
  if (!way) return false;
  if ('wall' in layer) {
    const { face, thick_m } = layer.wall;
    const square = way.x * Math.cos(face.inward_rad) + way.y * Math.sin(face.inward_rad);
    return goesThrough(pipe, [-inFrontOf_m(pipe.from, face), -inFrontOf_m(pipe.to, face)], square, thick_m, joined);
  }
  if ('floor' in layer) {
    const { top_m } = layer.floor.prism;
    return goesThrough(pipe, [top_m - pipe.from.z, top_m - pipe.to.z], way.z, ASSUMED_THICK_m, joined);
  }
  return (
    Math.abs(way.z) >= SQUARE && layer.ceiling.faces.every((face) => goesThrough(pipe, [pipe.from.z - faceHeight_m(face, pipe.from), pipe.to.z - faceHeight_m(face, pipe.to)], way.z, ASSUMED_THICK_m, joined))
  );
}
