import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Direction3, angleBetween3_rad, direction3, opposite3 } from '../geometry/vector3.ts';
import type { Network, Pipe } from '../model/plan.ts';
import { refuse } from './command.ts';
import { nodeIn } from './lookup.ts';
import { otherEnd, pipesAt } from './pipe-joins.ts';

/** What fittings take up of a crooked run [rad]: one degree. A run that falls lies within it of level. */
const AS_MADE_rad = Math.PI / 180;

/** How far something moves [m]. */
export interface Shift {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const directionOf = (network: Network, { from, to }: Pipe): Direction3 | undefined => direction3(nodeIn(network, from).at, nodeIn(network, to).at, SAME_PLACE_m);

const isAlong = (direction: Direction3, axis: Direction3): boolean =>
  Math.min(angleBetween3_rad(direction, axis), angleBetween3_rad(direction, opposite3(axis))) <= AS_MADE_rad;

/** The three directions in which the pipes of a network run: upright, and the two square ones of its longest level run at the moved places, else anywhere. */
function axesOf(network: Network, moved: ReadonlySet<string>): readonly Direction3[] {
  let best: { readonly x: number; readonly y: number; readonly weight: number } | undefined;
  for (const pipe of Object.values(network.pipes)) {
    const [a, b] = [nodeIn(network, pipe.from).at, nodeIn(network, pipe.to).at];
    const run_m = Math.hypot(b.x - a.x, b.y - a.y);
    if (run_m <= Math.abs(b.z - a.z)) continue;
    const weight = run_m + (moved.has(pipe.from) || moved.has(pipe.to) ? 1e6 : 0);
    if (!best || weight > best.weight) best = { x: (b.x - a.x) / run_m, y: (b.y - a.y) / run_m, weight };
  }
  const { x, y } = best ?? { x: 1, y: 0 };
  return [{ x, y, z: 0 }, { x: -y, y: x, z: 0 }, { x: 0, y: 0, z: 1 }];
}

/** Nodes that have to move in a direction when others do: pipe that does not run along it takes its far end with it. */
function takenAlong(network: Network, moved: ReadonlySet<string>, axis: Direction3): Set<string> {
  const taken = new Set(moved);
  for (const node of taken) {
    for (const pipe of pipesAt(network, node)) {
      const direction = directionOf(network, pipe);
      if (!direction || !isAlong(direction, axis)) taken.add(otherEnd(pipe, node));
    }
  }
  return taken;
}

/**
 * Where everything goes when places of a network move and every pipe is to keep its direction: runs along the move
 * become longer or shorter, what lies across it goes with it as far as it is joined without such a run between.
 * @param moved  nodes that move by the whole shift
 * @returns how far each node moves; those that stay are left out
 * Refuses when the pipe would have to leave the cylinders, turn back on itself, or lose its length.
 */
export function stretchOf(network: Network, moved: ReadonlySet<string>, shift: Shift, least_m: number): Map<string, Shift> {
  const shifts = new Map<string, Shift>();
  for (const axis of axesOf(network, moved)) {
    const by_m = shift.x * axis.x + shift.y * axis.y + shift.z * axis.z;
    if (Math.abs(by_m) <= SAME_PLACE_m / 1000) continue;
    for (const node of takenAlong(network, moved, axis)) {
      if (node === network.source && !moved.has(node)) {
        refuse('The pipe would have to leave the cylinders: it is joined to them square to this move. Put a turn in between, or move this place alone.');
      }
      const so = shifts.get(node) ?? { x: 0, y: 0, z: 0 };
      shifts.set(node, { x: so.x + axis.x * by_m, y: so.y + axis.y * by_m, z: so.z + axis.z * by_m });
    }
  }
  // Whoever moves the whole way moves exactly so far, without the noise of its parts.
  for (const node of moved) if (shifts.has(node)) shifts.set(node, shift);
  refuseTurnedBack(network, shifts, least_m);
  return shifts;
}

function refuseTurnedBack(network: Network, shifts: ReadonlyMap<string, Shift>, least_m: number): void {
  const still: Shift = { x: 0, y: 0, z: 0 };
  for (const pipe of Object.values(network.pipes)) {
    const [one, other] = [shifts.get(pipe.from) ?? still, shifts.get(pipe.to) ?? still];
    const before = directionOf(network, pipe);
    if (!before || (one.x === other.x && one.y === other.y && one.z === other.z)) continue;
    const [a, b] = [nodeIn(network, pipe.from).at, nodeIn(network, pipe.to).at];
    const after = { x: b.x + other.x - a.x - one.x, y: b.y + other.y - a.y - one.y, z: b.z + other.z - a.z - one.z };
    const along_m = after.x * before.x + after.y * before.y + after.z * before.z;
    if (Math.abs(along_m) < least_m) refuse('A pipe would have no length there.');
    if (along_m < 0) refuse('A pipe would turn back on itself there. Move it less far, or delete the pipe first.');
    const crooked_rad = Math.acos(Math.min(1, along_m / Math.hypot(after.x, after.y, after.z)));
    if (crooked_rad > AS_MADE_rad) refuse('A pipe would lie askew there. Move this place along one of its pipes.');
  }
}

/** The nodes that follow a node, away from the source, with it. */
export function downstreamOf(network: Network, node: string): Set<string> {
  const seen = new Set<string>();
  const towards = new Map<string, string>();
  if (network.source !== null) {
    seen.add(network.source);
    for (const here of seen) {
      for (const pipe of pipesAt(network, here)) {
        const next = otherEnd(pipe, here);
        if (seen.has(next)) continue;
        seen.add(next);
        towards.set(next, here);
      }
    }
  }
  const following = new Set([node]);
  for (const here of following) for (const [next, before] of towards) if (before === here) following.add(next);
  return following;
}
