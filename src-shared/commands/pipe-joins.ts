import { type Draft, current, isDraft } from 'immer';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { type Network, type Pipe, type Plan, takeId } from '../model/plan.ts';
import { refuse } from './command.ts';
import { nodeIn } from './lookup.ts';
import { JOIN_m, soundPoint3 } from './sound-value.ts';

/** A network as it stands now. Searching it is far cheaper than searching a draft, which wraps everything that is looked at; what was found is then changed in the draft. */
export const asItStands = (network: Network): Network => (isDraft(network) ? current(network) : network);

/** What was found of a network as it stands, in the network itself. */
const inDraft = <T extends { readonly id: string }>(record: Readonly<Record<string, T>>, found: T | undefined): T | undefined => found && record[found.id];

/** Pipes that end at a node. */
export const pipesAt = (network: Network, node: string): Pipe[] =>
  Object.values(asItStands(network).pipes).flatMap((pipe) => (pipe.from === node || pipe.to === node ? (inDraft(network.pipes, pipe) ?? []) : []));

/** The end of a pipe that is not this one. */
export const otherEnd = ({ from, to }: Pipe, node: string): string => (from === node ? to : from);

/** The nozzle at a node. */
export const nozzleAt = (network: Network, node: string) => inDraft(network.nozzles, Object.values(asItStands(network).nozzles).find((nozzle) => nozzle.node === node));

/** The node at a place, within `JOIN_m`. */
export const findNode = (network: Network, at: PlanPoint3, except?: string) =>
  inDraft(network.nodes, Object.values(asItStands(network).nodes).find((node) => Math.abs(node.at.x - at.x) < JOIN_m && node.id !== except && distance3_m(node.at, at) < JOIN_m));

/** Whether a coordinate lies between two others, or nearly so: most pipes are sorted out by this alone. */
const isBetween = (p: number, a: number, b: number): boolean => (p > a - JOIN_m || p > b - JOIN_m) && (p < a + JOIN_m || p < b + JOIN_m);

/** Share of the way along a pipe at which a place lies on it, ends left out; undefined when it does not. */
export function shareOnPipe(a: PlanPoint3, b: PlanPoint3, p: PlanPoint3): number | undefined {
  if (!isBetween(p.x, a.x, b.x) || !isBetween(p.y, a.y, b.y)) return undefined;
  const length_m = distance3_m(a, b);
  if (length_m < 2 * JOIN_m) return undefined;
  const along_m = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y) + (p.z - a.z) * (b.z - a.z)) / length_m;
  if (along_m < JOIN_m || along_m > length_m - JOIN_m) return undefined;
  const share = along_m / length_m;
  const foot = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, z: a.z + (b.z - a.z) * share };
  return distance3_m(foot, p) < JOIN_m ? share : undefined;
}

/** The pipe on which a place lies, its ends left out. */
export function findPipeThrough(network: Network, at: PlanPoint3, except?: string): Pipe | undefined {
  const { pipes, nodes } = asItStands(network);
  const found = Object.values(pipes).find(({ from, to }) => {
    const a = nodes[from]?.at;
    const b = nodes[to]?.at;
    return a && b && from !== except && to !== except && shareOnPipe(a, b, at) !== undefined;
  });
  return inDraft(network.pipes, found);
}

/** Makes a node of its own at a place. */
export function addNode(draft: Draft<Plan>, network: Network, at: PlanPoint3): string {
  const id = takeId(draft, 'node');
  network.nodes[id] = { part: null, id, at: soundPoint3(at) };
  return id;
}

/** What pipes are made of, apart from where they lie. */
export type PipeMake = Pick<Pipe, 'size' | 'schedule' | 'material' | 'joint' | 'insulation_m'>;

/** Lays a pipe between two nodes, and answers its id; undefined when one lies there already. */
export function addPipe(draft: Draft<Plan>, network: Network, from: string, to: string, { size, schedule, material, joint, insulation_m }: PipeMake): string | undefined {
  if (from === to || pipesAt(network, from).some((pipe) => otherEnd(pipe, from) === to)) return undefined;
  const id = takeId(draft, 'pipe');
  network.pipes[id] = { id, from, to, size, schedule, material, joint, insulation_m, measured_m: null };
  return id;
}

/** Cuts a pipe in two at a node that lies on it, and answers the new second half. */
export function splitPipeAt(draft: Draft<Plan>, network: Network, pipe: Pipe, node: string): string | undefined {
  const end = pipe.to;
  pipe.to = node;
  // What was measured was the whole.
  pipe.measured_m = null;
  return addPipe(draft, network, node, end, pipe);
}

/** A node at a place: the one that is there, one cut into the pipe that passes there, or a new one. `onSplit` hears of cut pipes. */
export function joinAt(draft: Draft<Plan>, network: Network, at: PlanPoint3, onSplit?: (whole: string, half: string) => void): string {
  const known = findNode(network, at);
  if (known) return known.id;
  const pipe = findPipeThrough(network, at);
  const node = addNode(draft, network, at);
  if (pipe) {
    const half = splitPipeAt(draft, network, pipe, node);
    if (half) onSplit?.(pipe.id, half);
  }
  return node;
}

/** Refuses when a pipe at one of the nodes has lost its length. */
export function refuseShortPipes(network: Network, nodes: ReadonlySet<string>): void {
  const still = asItStands(network);
  for (const { from, to } of Object.values(still.pipes)) {
    if (!nodes.has(from) && !nodes.has(to)) continue;
    if (distance3_m(nodeIn(still, from).at, nodeIn(still, to).at) < JOIN_m) refuse('A pipe would have no length there.');
  }
}

/**
 * Lets a node take the place of another: its pipes and its nozzle go over, pipes without length and doubled
 * pipes go. Refuses when both have a nozzle.
 */
export function mergeNode(network: Network, node: string, into: string): void {
  const nozzle = nozzleAt(network, node);
  const other = nozzleAt(network, into);
  if (nozzle && other) refuse(`Nozzle “${other.name}” is already there.`);
  if (nozzle) nozzle.node = into;
  for (const pipe of pipesAt(network, node)) {
    const end = otherEnd(pipe, node);
    const isDoubled = pipesAt(network, into).some((each) => each.id !== pipe.id && otherEnd(each, into) === end);
    if (end === into || isDoubled) delete network.pipes[pipe.id];
    else if (pipe.from === node) pipe.from = into;
    else pipe.to = into;
  }
  if (network.source === node) network.source = into;
  delete network.nodes[node];
}

/** Joins a node that was moved to what it now touches: another node, or a pipe that it then cuts. Answers the node that is left. */
export function joinMoved(draft: Draft<Plan>, network: Network, node: string): string {
  const { at } = nodeIn(network, node);
  const touched = findNode(network, at, node);
  if (touched) {
    mergeNode(network, node, touched.id);
    return touched.id;
  }
  const pipe = findPipeThrough(network, at, node);
  if (pipe) splitPipeAt(draft, network, pipe, node);
  return node;
}

/** Takes nodes away that hold neither pipe nor nozzle, and a source that has gone. */
export function clearNodes(network: Network, nodes: Iterable<string>): void {
  for (const node of nodes) {
    if (!Object.hasOwn(network.nodes, node) || pipesAt(network, node).length > 0 || nozzleAt(network, node)) continue;
    delete network.nodes[node];
    if (network.source === node) network.source = null;
  }
}
