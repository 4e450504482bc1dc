import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Network, RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf, nodeIn, pipeOf } from './lookup.ts';
import { isUpright } from './pipe-columns.ts';
import { otherEnd, pipesAt, refuseShortPipes } from './pipe-joins.ts';
import { soundCoordinate_m } from './sound-value.ts';

/** How far the nodes of runs rise, with those that pipe without a riser or drop between joins to them: a run is not bent by lifting a piece of it. */
function rises(network: Network, named: ReadonlySet<string>, z: number): Map<string, number> {
  const rise = new Map([...named].map((node) => [node, z - nodeIn(network, node).at.z]));
  for (const [node, by_m] of rise) {
    if (Math.abs(by_m) <= SAME_PLACE_m) continue;
    for (const pipe of pipesAt(network, node)) {
      const next = otherEnd(pipe, node);
      if (rise.has(next) || isUpright(network, pipe)) continue;
      if (network.source === next) refuse('The pipe begins at the cylinders at this height. Put a riser or drop in between first.');
      rise.set(next, by_m);
    }
  }
  return rise;
}

/**
 * Brings runs to a height; risers and drops at their ends become longer or shorter, and runs that join them at their
 * height rise or fall with them. Upright pipes among those named are left as they are.
 * @param z_m middle of the pipe above the finished floor [m]
 * Refuses when only upright pipes are named, when a riser or drop would have no length, and when the run
 * is joined to the cylinders at its height.
 */
export const setPipeHeight = command('Set height of pipe', (draft, refs: readonly RefOf<'pipe'>[], z_m: number) => {
  const z = soundCoordinate_m(z_m);
  const runs = refs.filter((ref) => !isUpright(networkOf(draft, ref.network), pipeOf(draft, ref)));
  if (runs.length === 0) refuse('An upright pipe has no height of its own. Choose a run, or move an end.');
  const named = new Map<string, Set<string>>();
  for (const ref of runs) {
    const { from, to } = pipeOf(draft, ref);
    const nodes = named.get(ref.network) ?? new Set<string>();
    named.set(ref.network, nodes.add(from).add(to));
  }
  for (const [id, nodes] of named) {
    const network = networkOf(draft, id);
    const risen = rises(network, nodes, z);
    for (const [node, by_m] of risen) {
      const { at } = nodeIn(network, node);
      at.z = nodes.has(node) ? z : soundCoordinate_m(at.z + by_m);
    }
    refuseShortPipes(network, new Set(risen.keys()));
  }
});
