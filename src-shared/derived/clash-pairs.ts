import RBush from 'rbush';
import { type Box, boundsOf } from '../geometry/outline.ts';
import { planPoint } from '../geometry/point.ts';
import { pipeBox, pipeToPipe_m } from './clash.ts';
import type { DerivedNetwork, DerivedPipe } from './derived.ts';
import { remembered } from './remember.ts';

/** A pipe with its clearance to another. */
export interface NearPipe {
  readonly pipe: DerivedPipe;
  /** As `pipeToPipe_m` measures it [m]. */
  readonly clearance_m: number;
}

interface PipeBox extends Box {
  readonly pipe: DerivedPipe;
  readonly order: number;
}

const pipeIndexOf = remembered(({ pipes }: DerivedNetwork): RBush<PipeBox> => {
  const index = new RBush<PipeBox>();
  index.load(pipes.map((pipe, order) => ({ ...pipeBox(pipe, 0), pipe, order })));
  return index;
});

/** Box around all pipe of a network on the plan; a network without pipe answers a box turned inside out. */
export const networkBox = remembered(
  ({ pipes }: DerivedNetwork): Box =>
    boundsOf(pipes.flatMap((pipe) => {
      const { minX, minY, maxX, maxY } = pipeBox(pipe, 0);
      return [planPoint(minX, minY), planPoint(maxX, maxY)];
    })),
);

/**
 * Pipes of a network no farther from a pipe of its level than `within_m`, in the order of the plan. Left out are the pipe
 * itself, those that share a node with it, and those that a single piece joins to it which is so short that they cannot
 * be farther apart.
 */
export function pipesNear(pipe: DerivedPipe, network: DerivedNetwork, within_m: number): NearPipe[] {
  const found = pipeIndexOf(network).search(pipeBox(pipe, within_m));
  if (found.length === 0) return [];
  const isOwn = network === pipe.network;
  const least_m = Math.min(pipe.from.z, pipe.to.z) - within_m - pipe.outside_m / 2;
  const most_m = Math.max(pipe.from.z, pipe.to.z) + within_m + pipe.outside_m / 2;
  const near: (NearPipe & { order: number })[] = [];
  for (const { pipe: other, order } of found) {
    if (isOwn && (other.ref.id === pipe.ref.id || meet(pipe, other))) continue;
    const beyond_m = other.outside_m / 2;
    if (Math.max(other.from.z, other.to.z) + beyond_m < least_m || Math.min(other.from.z, other.to.z) - beyond_m > most_m) continue;
    const clearance_m = pipeToPipe_m(pipe, other);
    if (clearance_m <= within_m) near.push({ pipe: other, clearance_m, order });
  }
  const joined = isOwn && near.length > 0 ? joinedBriefly(pipe, within_m) : undefined;
  const apart = joined ? near.filter(({ pipe: other }) => !joined.has(other.ref.id)) : near;
  return apart.sort((a, b) => a.order - b.order).map(({ pipe: other, clearance_m }) => ({ pipe: other, clearance_m }));
}

/** Whether two pipes of a network share a node. */
const meet = ({ pipe: one }: DerivedPipe, { pipe: other }: DerivedPipe): boolean => [one.from, one.to].some((node) => node === other.from || node === other.to);

/** Ids of the pipes that are joined to a pipe by one piece no longer than what must lie between them. */
function joinedBriefly(pipe: DerivedPipe, within_m: number): Set<string> {
  const atNode = pipesByNode(pipe.network);
  const joined = new Set<string>();
  for (const node of [pipe.pipe.from, pipe.pipe.to]) {
    for (const beside of atNode.get(node) ?? []) {
      const far = beside.pipe.from === node ? beside.pipe.to : beside.pipe.from;
      for (const next of atNode.get(far) ?? []) {
        if (beside.length_m <= within_m + (pipe.outside_m + next.outside_m) / 2) joined.add(next.pipe.id);
      }
    }
  }
  return joined;
}

const pipesByNode = remembered(({ pipes }: DerivedNetwork): ReadonlyMap<string, readonly DerivedPipe[]> => {
  const byNode = new Map<string, DerivedPipe[]>();
  for (const pipe of pipes) {
    for (const node of [pipe.pipe.from, pipe.pipe.to]) {
      const others = byNode.get(node);
      if (others) others.push(pipe);
      else byNode.set(node, [pipe]);
    }
  }
  return byNode;
});
