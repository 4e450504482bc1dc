import type { Network } from './plan.ts';

/**
 * The run that a pipe is part of: every pipe from one branch, nozzle, source or end to the next, turns included.
 * @returns pipe ids, the one asked for among them; empty when it has gone
 */
export function pipesOfRun(network: Network, pipeId: string): readonly string[] {
  if (!Object.hasOwn(network.pipes, pipeId)) return [];
  const ends = new Set(Object.values(network.nozzles).map(({ node }) => node));
  const byNode = new Map<string, string[]>();
  for (const { id, from, to } of Object.values(network.pipes)) {
    for (const node of [from, to]) byNode.set(node, [...(byNode.get(node) ?? []), id]);
  }
  const run = new Set([pipeId]);
  for (const id of run) {
    const pipe = network.pipes[id];
    for (const node of pipe ? [pipe.from, pipe.to] : []) {
      const here = byNode.get(node) ?? [];
      if (here.length === 2 && node !== network.source && !ends.has(node)) for (const next of here) run.add(next);
    }
  }
  return [...run];
}
