import type { Draft } from 'immer';
import type { Network, Nozzle, Plan } from '../model/plan.ts';
import { nodeIn } from './lookup.ts';
import { isUpright } from './pipe-columns.ts';
import { addNode, addPipe, mergeNode, otherEnd, pipesAt, refuseShortPipes } from './pipe-joins.ts';
import { JOIN_m, soundCoordinate_m } from './sound-value.ts';

/**
 * Brings a nozzle to a height. Its drop grows or shrinks; one that hangs straight on a run gets a drop, so that
 * the run stays level; one that comes up to its run loses its drop.
 */
export function setHeight(draft: Draft<Plan>, network: Network, nozzle: Nozzle, height_m: number): void {
  const z = soundCoordinate_m(height_m);
  const node = nodeIn(network, nozzle.node);
  if (node.at.z === z) return;
  const pipes = pipesAt(network, node.id);
  const run = pipes.find((pipe) => !isUpright(network, pipe));
  if (run) {
    if (Math.abs(node.at.z - z) < JOIN_m) return;
    const end = addNode(draft, network, { ...node.at, z });
    addPipe(draft, network, node.id, end, run);
    nozzle.node = end;
    return;
  }
  node.at = { x: node.at.x, y: node.at.y, z };
  const above = pipes.map((pipe) => nodeIn(network, otherEnd(pipe, node.id))).find((other) => Math.abs(other.at.z - z) < JOIN_m);
  if (above) mergeNode(network, node.id, above.id);
  else refuseShortPipes(network, new Set([node.id]));
}
