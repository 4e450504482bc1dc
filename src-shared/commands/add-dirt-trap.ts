import { angleBetween3_rad, direction3 } from '../geometry/vector3.ts';
import type { Ref, RefOf } from '../model/plan.ts';
import { pipeOutside_m, pipeSizeRank } from '../profile/pipe-table.ts';
import { feet_m } from '../units/convert.ts';
import { command, refuse } from './command.ts';
import { pipeInto } from './flow-into.ts';
import { networkOf, nodeIn, nodeOf } from './lookup.ts';
import { addNode, addPipe, nozzleAt, otherEnd, pipesAt } from './pipe-joins.ts';
import { JOIN_m } from './sound-value.ts';
import { stubHit } from './stub-hits.ts';

/** From the middle of the tee to the cap [m]: with a made tee at least 2 in (50 mm) of pipe is left to catch dirt; larger tees take up more. */
const TRAP_m = feet_m(4 / 12);
const LARGE_TRAP_m = feet_m(6 / 12);
/** A made tee takes up this much of a crooked turn [rad]: one degree. */
const AS_MADE_rad = Math.PI / 180;

/**
 * Puts a dirt trap at a turn: the pipe that comes in goes straight on by 4 in (6 in above NPS 2) to a capped end, so
 * that the elbow becomes a tee. A supply that comes down goes on down, one that rises goes on up.
 * Refuses a place that is no square turn of two pipes, and one where the trap would run into something.
 */
export const addDirtTrap = command('Add dirt trap', (draft, ref: RefOf<'node'>): readonly Ref[] => {
  const network = networkOf(draft, ref.network);
  const turn = nodeOf(draft, ref);
  const inlet = pipeInto(network, turn.id) ?? refuse('No pipe brings agent to this place. Join it to the cylinders first.');
  const pipes = pipesAt(network, turn.id);
  const outlet = pipes.find(({ id }) => id !== inlet.id);
  if (!outlet || pipes.length > 2 || nozzleAt(network, turn.id)) return refuse('A dirt trap goes where one pipe turns into another. Choose an elbow.');
  const [before, after] = [nodeIn(network, otherEnd(inlet, turn.id)).at, nodeIn(network, otherEnd(outlet, turn.id)).at];
  const [on, away] = [direction3(before, turn.at, JOIN_m), direction3(turn.at, after, JOIN_m)];
  if (!on || !away) return refuse('A pipe here has no length. Delete it and draw it again.');
  const bend_rad = angleBetween3_rad(on, away);
  if (bend_rad <= AS_MADE_rad) refuse('The pipe runs straight on here. Choose the elbow before the nozzle.');
  if (Math.abs(bend_rad - Math.PI / 2) > AS_MADE_rad) refuse('This turn is not square, so no made tee fits here. Make it a square turn first.');
  const length_m = pipeSizeRank(inlet.size) > pipeSizeRank('2') ? LARGE_TRAP_m : TRAP_m;
  const end = { x: turn.at.x + on.x * length_m, y: turn.at.y + on.y * length_m, z: turn.at.z + on.z * length_m };
  const hit = stubHit(draft, network, { a: turn.at, b: end }, pipeOutside_m(inlet.size) / 2, turn.id);
  if (hit) refuse(`The dirt trap would run into ${hit}. Move the turn away from it first.`);
  const node = addNode(draft, network, end);
  const cap = nodeIn(network, node);
  cap.part = 'dirt-trap';
  if (turn.part === 'street-elbow') turn.part = null;
  const pipe = addPipe(draft, network, turn.id, node, inlet) ?? refuse('There is pipe here already.');
  return [{ kind: 'pipe', network: network.id, id: pipe }];
});
