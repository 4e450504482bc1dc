import type { Draft } from 'immer';
import { type PlanPoint3, distance_m } from '../geometry/point.ts';
import { type Network, type Plan, type Ref, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf } from './lookup.ts';
import { networksOn, newNetwork } from './new-network.ts';
import { nextNozzleName } from './next-name.ts';
import { addNode, addPipe, findNode, findPipeThrough, joinAt, nozzleAt, pipesAt } from './pipe-joins.ts';
import { JOIN_m, soundAngle_rad, soundPoint3 } from './sound-value.ts';

/** An open pipe end over or under a place, on the same side of the floor: a drop can join the two. */
const findOpenEndOver = (network: Network, at: PlanPoint3) =>
  Object.values(network.nodes).find(
    (node) => distance_m(node.at, at) < JOIN_m && node.at.z < 0 === at.z < 0 && node.id !== network.source && pipesAt(network, node.id).length === 1 && !nozzleAt(network, node.id),
  );

/** How near the parts of a network come to a place on the plan [m]. */
const nearest_m = (network: Network, at: PlanPoint3): number =>
  Math.min(...Object.values(network.nodes).map((node) => distance_m(node.at, at)), ...Object.values(network.cylinders).map((cylinder) => distance_m(cylinder.at, at)), Number.MAX_VALUE);

/** Network of a nozzle when none is named: the one whose pipe is there, else the nearest of the level, else a new one. */
function networkFor(draft: Draft<Plan>, levelId: string, at: PlanPoint3): Network {
  const onLevel = networksOn(draft, levelId);
  const touched = onLevel.find((network) => findNode(network, at) ?? findPipeThrough(network, at) ?? findOpenEndOver(network, at));
  const [near] = onLevel.map((network) => ({ network, distance_m: nearest_m(network, at) })).sort((a, b) => a.distance_m - b.distance_m);
  const found = touched ?? near?.network;
  return found ? networkOf(draft, found.id) : newNetwork(draft, levelId);
}

/** Node for a nozzle: pipe that is there is joined, an open end over or under it gets a drop, else it stands free. */
function nodeFor(draft: Draft<Plan>, network: Network, at: PlanPoint3): string {
  const open = findNode(network, at) ? undefined : findOpenEndOver(network, at);
  if (!open) return joinAt(draft, network, at);
  const pipe = pipesAt(network, open.id)[0];
  const node = addNode(draft, network, { x: open.at.x, y: open.at.y, z: at.z });
  if (pipe) addPipe(draft, network, open.id, node, pipe);
  return node;
}

/**
 * Places a nozzle: on the pipe end that is there, under or over an open end (a drop then joins the two), or free.
 * It is called N1, N2 and so on, under the floor U1, U2.
 * @param networkId network that feeds it; null for the one whose pipe is there, else the nearest of the level, else a new one
 * @param at        orifice [m], z above the finished floor
 * @param holes_rad directions of its holes [rad], counter-clockwise from east
 * @param levelId   level of the nozzle when no network is named; the plan's first unless given
 * Refuses a place that has a nozzle already, and a plan without unit profile.
 */
export const addNozzle = command('Add nozzle', (draft, networkId: string | null, at: PlanPoint3, holes_rad: readonly number[], levelId?: string): readonly Ref[] => {
  const place = soundPoint3(at);
  const network = networkId === null ? networkFor(draft, levelId ?? Object.keys(draft.levels)[0] ?? '', place) : networkOf(draft, networkId);
  if (holes_rad.length > 360) refuse('A nozzle has 360 holes at most.');
  const node = nodeFor(draft, network, place);
  const other = nozzleAt(network, node);
  if (other) refuse(`Nozzle “${other.name}” is already here.`);
  const id = takeId(draft, 'nozzle');
  network.nozzles[id] = {
    id,
    name: nextNozzleName(draft, place.z),
    node,
    holes_rad: holes_rad.map(soundAngle_rad),
    rotation_rad: 0,
    tilt_rad: 0,
    orificeArea_m2: null,
    serves: null,
  };
  return [{ kind: 'nozzle', network: network.id, id }];
});
