import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { along3 } from '../geometry/segment3.ts';
import type { PipeNode, Ref, RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf, nodeIn, pipeOf } from './lookup.ts';
import { addNode, shareOnPipe, splitPipeAt } from './pipe-joins.ts';
import { soundPoint3 } from './sound-value.ts';

/**
 * Builds a union or coupling into a pipe at a place on it: the pipe becomes two, and the part stands between them.
 * Refuses a place that is not on the pipe or at one of its ends.
 */
export const insertPart = command('Insert fitting', (draft, ref: RefOf<'pipe'>, at: PlanPoint3, part: Extract<PipeNode['part'], 'union' | 'coupling'>): readonly Ref[] => {
  const network = networkOf(draft, ref.network);
  const pipe = pipeOf(draft, ref);
  const [a, b] = [nodeIn(network, pipe.from).at, nodeIn(network, pipe.to).at];
  const share = distance3_m(a, b) > 0 ? shareOnPipe(a, b, soundPoint3(at)) : undefined;
  if (share === undefined) return refuse('This place is not on the pipe, or too near its end.');
  const node = addNode(draft, network, along3({ a, b }, share));
  nodeIn(network, node).part = part;
  splitPipeAt(draft, network, pipe, node);
  return [{ kind: 'node', network: ref.network, id: node }];
});
