import type { RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf, nodeIn, pipeOf } from './lookup.ts';
import { isUpright } from './pipe-columns.ts';
import { refuseShortPipes } from './pipe-joins.ts';
import { soundCoordinate_m } from './sound-value.ts';

/**
 * Brings runs to a height; risers and drops at their ends become longer or shorter. Upright pipes among those named
 * are left as they are.
 * @param z_m middle of the pipe above the finished floor [m]
 * Refuses when only upright pipes are named, and when a riser or drop would have no length.
 */
export const setPipeHeight = command('Set height of pipe', (draft, refs: readonly RefOf<'pipe'>[], z_m: number) => {
  const z = soundCoordinate_m(z_m);
  const runs = refs.filter((ref) => !isUpright(networkOf(draft, ref.network), pipeOf(draft, ref)));
  if (runs.length === 0) refuse('An upright pipe has no height of its own. Choose a run, or move an end.');
  const moved = new Map<string, Set<string>>();
  for (const ref of runs) {
    const { from, to } = pipeOf(draft, ref);
    const nodes = moved.get(ref.network) ?? new Set<string>();
    moved.set(ref.network, nodes.add(from).add(to));
  }
  for (const [id, nodes] of moved) {
    const network = networkOf(draft, id);
    for (const node of nodes) nodeIn(network, node).at.z = z;
    refuseShortPipes(network, nodes);
  }
});
