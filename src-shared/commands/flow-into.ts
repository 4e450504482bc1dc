import type { Network, Pipe } from '../model/plan.ts';
import { otherEnd, pipesAt } from './pipe-joins.ts';

/** The pipe that brings the agent to a node, found from the source outwards; undefined at the source and where no agent comes. */
export function pipeInto(network: Network, node: string): Pipe | undefined {
  if (network.source === null || network.source === node) return undefined;
  const seen = new Set([network.source]);
  let reached = [network.source];
  while (reached.length > 0) {
    const next: string[] = [];
    for (const from of reached) {
      for (const pipe of pipesAt(network, from)) {
        const to = otherEnd(pipe, from);
        if (to === node) return pipe;
        if (seen.has(to)) continue;
        seen.add(to);
        next.push(to);
      }
    }
    reached = next;
  }
  return undefined;
}
