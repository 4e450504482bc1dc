import type { Network } from '../model/plan.ts';
import type { Fitting, PipePath } from './derived.ts';
import { type PipeTree, wayUp } from './pipe-tree.ts';

/**
 * The way of the agent to each nozzle that it reaches, in the order of the plan.
 * Elbows are the bends on the way, odd ones and odd legs of tees included; tees are the tees and crosses it passes,
 * straight through or round the corner. A tee with a dirt trap parts nothing: it counts as the elbow that it stands for, or not at all where the agent goes straight on.
 * @param lengths_m length of every pipe, drops as they are [m]
 */
export function pipePathsOf(network: Network, tree: PipeTree, fittings: readonly Fitting[], lengths_m: ReadonlyMap<string, number>): PipePath[] {
  const byNode = new Map<string, Fitting[]>();
  for (const fitting of fittings) byNode.set(fitting.node, [...(byNode.get(fitting.node) ?? []), fitting]);
  return Object.values(network.nozzles).flatMap(({ id, node }): PipePath[] => {
    if (!tree.reached.has(node)) return [];
    const way = wayUp(tree, node);
    const pipes = way.pipes.reverse();
    const onWay = new Set(pipes);
    const passed = way.nodes.flatMap((each) => byNode.get(each) ?? []);
    const takes = ({ pipes: at }: Fitting): boolean => onWay.has(at.at(-1) ?? '');
    return [
      {
        nozzle: id,
        nodes: way.nodes.reverse(),
        pipes,
        length_m: pipes.reduce((sum, pipe) => sum + (lengths_m.get(pipe) ?? 0), 0),
        elbows: passed.filter((fitting) => fitting.kind === 'elbow-90' || fitting.kind === 'elbow-45' || (fitting.isTrap && fitting.turn_rad > 0) || (fitting.kind === 'odd-bend' && takes(fitting))).length,
        tees: passed.filter(({ kind, isTrap }) => (kind === 'tee' && !isTrap) || kind === 'cross').length,
      },
    ];
  });
}
