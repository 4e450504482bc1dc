import type { Draft } from 'immer';
import { heldPipe } from '../model/held-pipe.ts';
import { type Network, type Nozzle, type Plan, type Ref, type Support, takeId } from '../model/plan.ts';
import { refuse } from './command.ts';
import { copyOf } from './copy-of.ts';
import { cylinderOf, networkOf, nodeIn, nozzleOf } from './lookup.ts';
import { type Mapping, mapCylinder, mapManifold, nodesOfRefs } from './map-things.ts';
import { nextName, nextNozzleName } from './next-name.ts';
import { addNode } from './pipe-joins.ts';
import { soundPoint3 } from './sound-value.ts';

function copyCylinder(draft: Draft<Plan>, from: Network, into: Network, id: string, mapping: Mapping): Ref {
  const source = from.cylinders[id] ?? refuse('This cylinder is no longer in the plan.');
  const copy = takeId(draft, 'cylinder');
  const cylinder = { ...copyOf(source), id: copy, name: nextName(draft, 'cylinder', 'C') };
  mapCylinder(cylinder, mapping);
  into.cylinders[copy] = cylinder;
  return { kind: 'cylinder', network: into.id, id: copy };
}

/** What of a network is copied. */
interface Chosen {
  readonly cylinders: readonly string[];
  readonly nodes: ReadonlySet<string>;
  readonly nozzles: ReadonlySet<string>;
}

/** Enclosures that were copied along, each under the id of the first. */
export type CopiedEnclosures = ReadonlyMap<string, string>;

/** What a copied nozzle serves: the copy of the enclosure where there is one, and nothing of another level. */
function servedBy({ serves }: Nozzle, isOnLevel: boolean, enclosures: CopiedEnclosures): Nozzle['serves'] {
  const copied = serves && enclosures.get(serves.enclosure);
  return serves && copied ? { ...serves, enclosure: copied } : isOnLevel ? serves : null;
}

/** Whether a support holds a pipe whose both ends are copied. */
function isOnPipeBetween(from: Network, support: Support, copies: ReadonlyMap<string, string>): boolean {
  const pipe = heldPipe(from, support.at);
  return pipe !== undefined && copies.has(pipe.from) && copies.has(pipe.to);
}

/** Copies cylinders, nodes with the pipes between them, and the chosen nozzles; a network without a source gets that of the first. */
function copyParts(draft: Draft<Plan>, from: Network, into: Network, { cylinders, nodes, nozzles }: Chosen, mapping: Mapping, enclosures: CopiedEnclosures): Ref[] {
  const standing = cylinders.map((id) => copyCylinder(draft, from, into, id, mapping));
  const copies = new Map<string, string>();
  for (const id of nodes) {
    const { at, part } = nodeIn(from, id);
    const copy = addNode(draft, into, soundPoint3({ ...mapping.point(at), z: at.z }));
    nodeIn(into, copy).part = part;
    copies.set(id, copy);
  }
  const created: Ref[] = [];
  for (const pipe of Object.values(from.pipes)) {
    const [start, end] = [copies.get(pipe.from), copies.get(pipe.to)];
    if (!start || !end) continue;
    const id = takeId(draft, 'pipe');
    into.pipes[id] = { ...copyOf(pipe), id, from: start, to: end, measured_m: null };
    created.push({ kind: 'pipe', network: into.id, id });
  }
  for (const nozzle of Object.values(from.nozzles)) {
    const node = copies.get(nozzle.node);
    if (!node || !nozzles.has(nozzle.id)) continue;
    const id = takeId(draft, 'nozzle');
    into.nozzles[id] = { ...copyOf(nozzle), id, node, serves: servedBy(nozzle, into.level === from.level, enclosures), name: nextNozzleName(draft, nodeIn(into, node).at.z) };
    created.push({ kind: 'nozzle', network: into.id, id });
  }
  for (const support of Object.values(from.supports)) {
    if (!isOnPipeBetween(from, support, copies)) continue;
    const id = takeId(draft, 'support');
    into.supports[id] = { ...copyOf(support), id, at: soundPoint3({ ...mapping.point(support.at), z: support.at.z }) };
  }
  if (into.source === null && from.source !== null) into.source = copies.get(from.source) ?? null;
  return [...standing, ...(created.length > 0 ? created : [...copies.values()].map((id): Ref => ({ kind: 'node', network: into.id, id })))];
}

/** A network without pipe that is fed and assembled like another. */
function likeNetwork(draft: Draft<Plan>, source: Network, level: string): Network {
  const id = takeId(draft, 'network');
  const assembly = source.assembly.map((part) => ({ ...copyOf(part), id: takeId(draft, 'part') }));
  draft.networks[id] = { manifold: null, installation: copyOf(source.installation), id, name: nextName(draft, 'network', 'Network '), level, profile: source.profile, source: null, cylinders: {}, assembly, nodes: {}, pipes: {}, nozzles: {}, supports: {}, release: null };
  return networkOf(draft, id);
}

/** Copies a whole network onto a level. */
export function copyNetwork(draft: Draft<Plan>, source: Network, level: string, mapping: Mapping, enclosures: CopiedEnclosures): Ref {
  const copy = likeNetwork(draft, source, level);
  copy.manifold = copyOf(source.manifold);
  mapManifold(copy, mapping);
  copyParts(draft, source, copy, { cylinders: Object.keys(source.cylinders), nodes: new Set(Object.keys(source.nodes)), nozzles: new Set(Object.keys(source.nozzles)) }, mapping, enclosures);
  return { kind: 'network', id: copy.id };
}

/** What references to parts of networks choose, network by network. */
function chosenParts(draft: Draft<Plan>, parts: readonly Ref[]): Map<string, Chosen> {
  const nodes = nodesOfRefs(draft, parts);
  const cylinders = parts.flatMap((ref) => (ref.kind === 'cylinder' ? [{ network: ref.network, id: cylinderOf(draft, ref).id }] : []));
  const nozzles = new Set(parts.flatMap((ref) => (ref.kind === 'nozzle' ? [nozzleOf(draft, ref).id] : [])));
  const networks = new Set([...nodes.keys(), ...cylinders.map(({ network }) => network)]);
  return new Map(
    [...networks].map((id) => [id, { cylinders: cylinders.filter(({ network }) => network === id).map((cylinder) => cylinder.id), nodes: nodes.get(id) ?? new Set<string>(), nozzles }]),
  );
}

/**
 * Copies parts of networks: pipe where both its ends are chosen. They stay in their network, but a cylinder with the
 * pipe that begins on it, and what comes onto another level, make a network of their own.
 * @param onto level that the copies come onto; null leaves each on its own
 */
export function copyNetworkParts(draft: Draft<Plan>, parts: readonly Ref[], onto: string | null, mapping: Mapping, enclosures: CopiedEnclosures): Ref[] {
  return [...chosenParts(draft, parts)].flatMap(([id, chosen]) => {
    const network = networkOf(draft, id);
    const level = onto ?? network.level;
    const isFed = chosen.cylinders.length > 0 && network.source !== null && chosen.nodes.has(network.source);
    return copyParts(draft, network, isFed || level !== network.level ? likeNetwork(draft, network, level) : network, chosen, mapping, enclosures);
  });
}
