import type { RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf, nodeOf } from './lookup.ts';
import { clearNetwork } from './new-network.ts';
import { clearNodes, nozzleAt, otherEnd, pipesAt, refuseShortPipes } from './pipe-joins.ts';

/**
 * Takes a node out: two pipes that meet there become one straight pipe, an open end goes with its pipe.
 * Refuses a node with a nozzle, the source, a branch, two pipes of different size or make, and two whose other ends
 * are joined already.
 */
export const removeNode = command('Remove pipe end', (draft, ref: RefOf<'node'>) => {
  const network = networkOf(draft, ref.network);
  const node = nodeOf(draft, ref);
  const nozzle = nozzleAt(network, node.id);
  if (nozzle) refuse(`Nozzle “${nozzle.name}” is here. Delete or move it first.`);
  const [first, second, ...more] = pipesAt(network, node.id);
  if (network.source === node.id && first) refuse('The pipe of this network begins here. Delete the pipe instead.');
  if (more.length > 0) refuse('Pipes branch here. Delete the branch instead.');
  if (!first) {
    delete network.nodes[node.id];
    if (network.source === node.id) network.source = null;
  } else if (!second) {
    const other = otherEnd(first, node.id);
    delete network.pipes[first.id];
    clearNodes(network, [node.id, other]);
  } else {
    if (first.size !== second.size || first.schedule !== second.schedule || first.material !== second.material || first.joint !== second.joint) {
      refuse('The two pipes that meet here are not alike. Make them alike first, or delete one.');
    }
    const end = otherEnd(second, node.id);
    if (pipesAt(network, otherEnd(first, node.id)).some((pipe) => otherEnd(pipe, otherEnd(first, node.id)) === end)) refuse('The other ends of these pipes are joined already.');
    first.measured_m = null;
    if (first.from === node.id) first.from = end;
    else first.to = end;
    delete network.pipes[second.id];
    delete network.nodes[node.id];
    refuseShortPipes(network, new Set([end]));
  }
  clearNetwork(draft, network);
});
