import type { PlanPoint3 } from '../geometry/point.ts';
import type { Network, Pipe } from './plan.ts';

/** A support holds the pipe whose axis is this near [m]. */
const HELD_m = 0.005;

/** Whether a coordinate lies far outside those of both ends: mostly that is all there is to tell. */
const isBeside = (at: number, a: number, b: number): boolean => at < Math.min(a, b) - 2 * HELD_m || at > Math.max(a, b) + 2 * HELD_m;

/** How far along a pipe a place lies, from its `from` end, as a share of its length; undefined when the pipe does not run there. */
export function shareAlong(network: Network, pipe: Pipe, at: PlanPoint3): number | undefined {
  const [a, b] = [network.nodes[pipe.from]?.at, network.nodes[pipe.to]?.at];
  if (!a || !b || isBeside(at.x, a.x, b.x) || isBeside(at.y, a.y, b.y) || isBeside(at.z, a.z, b.z)) return undefined;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const dz = b.z - a.z;
  const square_m2 = dx * dx + dy * dy + dz * dz;
  const share = Math.min(1, Math.max(0, ((at.x - a.x) * dx + (at.y - a.y) * dy + (at.z - a.z) * dz) / square_m2));
  const off_m = Math.hypot(a.x + dx * share - at.x, a.y + dy * share - at.y, a.z + dz * share - at.z);
  return off_m <= HELD_m ? share : undefined;
}

/** The pipe that runs through a place: the one that a support there holds. */
export const heldPipe = (network: Network, at: PlanPoint3): Pipe | undefined => Object.values(network.pipes).find((pipe) => shareAlong(network, pipe, at) !== undefined);
