import type { Ref, RefOf } from '../model/plan.ts';
import { pipeOutside_m, pipeSizeRank } from '../profile/pipe-table.ts';
import { feet_m } from '../units/convert.ts';
import { command, refuse } from './command.ts';
import { networkOf, nodeIn } from './lookup.ts';
import { addNode, addPipe, otherEnd, pipesAt } from './pipe-joins.ts';
import { JOIN_m } from './sound-value.ts';
import { stubHit } from './stub-hits.ts';

/** From the middle of the tee down to the drain [m]. */
const DRAIN_m = feet_m(4 / 12);
const LARGE_DRAIN_m = feet_m(6 / 12);

/**
 * Lets water out of low pipe. Under each turn a short pipe hangs straight down to a drain; each end of pipe becomes one.
 * Refuses a turn without pipe straight up from it, an end that pipe goes on from, and a drain that would run into something.
 */
export const addDrains = command('Add drain', (draft, ref: RefOf<'network'>, turns: readonly string[], ends: readonly string[]): readonly Ref[] => {
  const network = networkOf(draft, ref.id);
  for (const id of ends) {
    const end = nodeIn(network, id);
    if (pipesAt(network, id).length !== 1) refuse('Pipe goes on from here. Choose a place where it ends.');
    end.part = 'drain';
  }
  return turns.map((id): Ref => {
    const turn = nodeIn(network, id);
    const pipes = pipesAt(network, id);
    const upper = pipes.find((pipe) => {
      const { at } = nodeIn(network, otherEnd(pipe, id));
      return at.z - turn.at.z >= JOIN_m && Math.hypot(at.x - turn.at.x, at.y - turn.at.y) <= (at.z - turn.at.z) * Math.tan(Math.PI / 180);
    });
    if (!upper || pipes.length !== 2) return refuse('A drain hangs where a pipe from straight above turns. Draw it by hand here.');
    const length_m = pipeSizeRank(upper.size) > pipeSizeRank('2') ? LARGE_DRAIN_m : DRAIN_m;
    const end = { x: turn.at.x, y: turn.at.y, z: turn.at.z - length_m };
    const hit = stubHit(draft, network, { a: turn.at, b: end }, pipeOutside_m(upper.size) / 2, id);
    if (hit) refuse(`The drain would run into ${hit}. Raise the pipe first.`);
    const node = addNode(draft, network, end);
    nodeIn(network, node).part = 'drain';
    if (turn.part === 'street-elbow') turn.part = null;
    const pipe = addPipe(draft, network, id, node, upper) ?? refuse('There is pipe here already.');
    return { kind: 'pipe', network: network.id, id: pipe };
  });
});
