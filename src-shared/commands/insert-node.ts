import type { PlanPoint3 } from '../geometry/point.ts';
import { along3 } from '../geometry/segment3.ts';
import type { Ref, RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf, nodeIn, pipeOf } from './lookup.ts';
import { addNode, splitPipeAt } from './pipe-joins.ts';
import { JOIN_m, soundPoint3 } from './sound-value.ts';

/**
 * Puts a node into a pipe, at the place of the pipe nearest to the one given: the pipe becomes two.
 * Refuses a place at an end of the pipe.
 */
export const insertNode = command('Insert pipe end', (draft, ref: RefOf<'pipe'>, at: PlanPoint3): readonly Ref[] => {
  const network = networkOf(draft, ref.network);
  const pipe = pipeOf(draft, ref);
  const p = soundPoint3(at);
  const [a, b] = [nodeIn(network, pipe.from).at, nodeIn(network, pipe.to).at];
  const [dx, dy, dz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const length_m = Math.hypot(dx, dy, dz);
  const share = ((p.x - a.x) * dx + (p.y - a.y) * dy + (p.z - a.z) * dz) / length_m ** 2;
  if (!(share * length_m >= JOIN_m && (1 - share) * length_m >= JOIN_m)) refuse('There is a pipe end here already.');
  const node = addNode(draft, network, along3({ a, b }, share));
  splitPipeAt(draft, network, pipe, node);
  return [{ kind: 'node', network: ref.network, id: node }];
});
