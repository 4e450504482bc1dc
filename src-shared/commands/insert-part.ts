import { along3 } from '../geometry/segment3.ts';
import type { Ref, RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf, nodeIn, pipeOf } from './lookup.ts';
import { addNode, splitPipeAt } from './pipe-joins.ts';
import { JOIN_m } from './sound-value.ts';

/**
 * Builds a union or coupling into a pipe: the pipe becomes two, joined there.
 * @param along_m from the pipe's `from` end to its middle [m]
 * Refuses a place at or beyond an end of the pipe.
 */
export const insertPart = command(
  (_plan, _ref: RefOf<'pipe'>, _along_m: number, part: 'union' | 'coupling') => `Insert ${part}`,
  (draft, ref, along_m, part): readonly Ref[] => {
    const network = networkOf(draft, ref.network);
    const pipe = pipeOf(draft, ref);
    const [a, b] = [nodeIn(network, pipe.from).at, nodeIn(network, pipe.to).at];
    const length_m = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
    if (!(along_m >= JOIN_m && along_m <= length_m - JOIN_m)) refuse('It must stand between the two ends of the pipe.');
    const node = addNode(draft, network, along3({ a, b }, along_m / length_m));
    splitPipeAt(draft, network, pipe, node);
    nodeIn(network, node).part = part;
    return [{ kind: 'node', network: ref.network, id: node }];
  },
);
