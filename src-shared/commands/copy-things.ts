import type { Draft } from 'immer';
import { type Enclosure, type Network, type Plan, type Ref, type RefOf, takeId } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { command, refuse } from './command.ts';
import { cylinderOf, dimensionOf, enclosureOf, levelOf, networkOf, nodeIn, noteOf, nozzleOf, obstructionOf, openingOf, ceilingZoneOf, pipeOf, underlayOf } from './lookup.ts';
import { type Mapping, mapEnclosure, mappedRing, nodesOfRefs, wholeRefs } from './map-things.ts';
import { nextName, nextNozzleName, nextObstructionName, nextOpeningName } from './next-name.ts';
import { addNode } from './pipe-joins.ts';
import { alongWithin_m, wallLines } from './rings.ts';
import { JOIN_m, soundFilePoint, soundPoint, soundPoint3 } from './sound-value.ts';

/** A copy of a part of the plan that shares nothing with it. */
const copyOf = <T>(part: T): T => JSON.parse(JSON.stringify(part));

function copyEnclosure(draft: Draft<Plan>, source: Enclosure, mapping: Mapping): Enclosure {
  const copy = copyOf(source);
  copy.id = takeId(draft, 'enclosure');
  copy.name = nextName(draft, 'enclosure', 'Room ');
  const walls = new Map<string, string>();
  for (const corner of [copy.outline, ...copy.holes].flat()) {
    const id = takeId(draft, 'corner');
    walls.set(corner.id, id);
    corner.id = id;
  }
  copy.openings = {};
  copy.ceilingZones = {};
  for (const opening of Object.values(source.openings)) {
    const id = takeId(draft, 'opening');
    copy.openings[id] = { ...copyOf(opening), id, wall: walls.get(opening.wall) ?? refuse(`“${opening.name}” has lost its wall. Delete it first.`) };
  }
  for (const zone of Object.values(source.ceilingZones)) {
    const id = takeId(draft, 'zone');
    copy.ceilingZones[id] = { ...copyOf(zone), id };
  }
  mapEnclosure(copy, mapping);
  return copy;
}

function copyOpening(draft: Draft<Plan>, ref: RefOf<'opening'>, dx: number, dy: number): Ref {
  const source = openingOf(draft, ref);
  const enclosure = enclosureOf(draft, ref.level, ref.enclosure);
  const line = wallLines(enclosure).get(source.wall) ?? refuse(`“${source.name}” has lost its wall. Delete it first.`);
  const shift_m = ((line.b.x - line.a.x) * dx + (line.b.y - line.a.y) * dy) / Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
  const id = takeId(draft, 'opening');
  enclosure.openings[id] = { ...copyOf(source), id, name: nextOpeningName(draft, source.kind), along_m: alongWithin_m(source, line, source.along_m + shift_m) };
  return { ...ref, id };
}

/** Copies a thing of a level; undefined for a part of a network. */
function copyLevelThing(draft: Draft<Plan>, ref: Ref, mapping: Mapping, dx: number, dy: number): Ref | undefined {
  switch (ref.kind) {
    case 'enclosure': {
      const copy = copyEnclosure(draft, enclosureOf(draft, ref.level, ref.id), mapping);
      levelOf(draft, ref.level).enclosures[copy.id] = copy;
      return { ...ref, id: copy.id };
    }
    case 'obstruction': {
      const source = obstructionOf(draft, ref);
      const id = takeId(draft, 'obstruction');
      levelOf(draft, ref.level).obstructions[id] = { ...copyOf(source), id, name: nextObstructionName(draft, source.kind), footprint: mappedRing(source.footprint, mapping) };
      return { ...ref, id };
    }
    case 'ceiling-zone': {
      const source = ceilingZoneOf(draft, ref);
      const id = takeId(draft, 'zone');
      const name = nextName(draft, 'ceiling-zone', 'Zone ');
      enclosureOf(draft, ref.level, ref.enclosure).ceilingZones[id] = { id, name, outline: mappedRing(source.outline, mapping), height_m: source.height_m };
      return { ...ref, id };
    }
    case 'dimension': {
      const { a, b, offset_m } = dimensionOf(draft, ref);
      const id = takeId(draft, 'dimension');
      levelOf(draft, ref.level).dimensions[id] = { id, a: soundPoint(mapping.point(a)), b: soundPoint(mapping.point(b)), offset_m };
      return { ...ref, id };
    }
    case 'note': {
      const { at, text } = noteOf(draft, ref);
      const id = takeId(draft, 'note');
      levelOf(draft, ref.level).notes[id] = { id, at: soundPoint(mapping.point(at)), text };
      return { ...ref, id };
    }
    case 'underlay': {
      const source = underlayOf(draft, ref);
      const id = takeId(draft, 'underlay');
      levelOf(draft, ref.level).underlays[id] = { ...copyOf(source), id, locked: false, at: soundFilePoint(mapping.point(source.at)) };
      return { ...ref, id };
    }
    case 'cylinder':
      return copyCylinder(draft, networkOf(draft, ref.network), networkOf(draft, ref.network), cylinderOf(draft, ref).id, mapping);
    case 'opening':
      return copyOpening(draft, ref, dx, dy);
    case 'corner':
    case 'wall':
      return refuse('A wall or corner cannot be copied on its own. Choose the enclosure.');
    default:
      return undefined;
  }
}

function copyCylinder(draft: Draft<Plan>, from: Network, into: Network, id: string, mapping: Mapping): Ref {
  const source = from.cylinders[id] ?? refuse('This cylinder is no longer in the plan.');
  const copy = takeId(draft, 'cylinder');
  into.cylinders[copy] = { ...copyOf(source), id: copy, name: nextName(draft, 'cylinder', 'C'), at: soundPoint(mapping.point(source.at)) };
  return { kind: 'cylinder', network: into.id, id: copy };
}

/** What of a network is copied. */
interface Chosen {
  readonly nodes: ReadonlySet<string>;
  readonly nozzles: ReadonlySet<string>;
}

/** Copies nodes with the pipes between them and the chosen nozzles. */
function copyParts(draft: Draft<Plan>, from: Network, into: Network, { nodes, nozzles }: Chosen, mapping: Mapping): Ref[] {
  const copies = new Map<string, string>();
  for (const id of nodes) {
    const { at } = nodeIn(from, id);
    copies.set(id, addNode(draft, into, soundPoint3({ ...mapping.point(at), z: at.z })));
  }
  const created: Ref[] = [];
  for (const pipe of Object.values(from.pipes)) {
    const [start, end] = [copies.get(pipe.from), copies.get(pipe.to)];
    if (!start || !end) continue;
    const id = takeId(draft, 'pipe');
    into.pipes[id] = { ...copyOf(pipe), id, from: start, to: end };
    created.push({ kind: 'pipe', network: into.id, id });
  }
  for (const nozzle of Object.values(from.nozzles)) {
    const node = copies.get(nozzle.node);
    if (!node || !nozzles.has(nozzle.id)) continue;
    const id = takeId(draft, 'nozzle');
    into.nozzles[id] = { ...copyOf(nozzle), id, node, name: nextNozzleName(draft, nodeIn(into, node).at.z) };
    created.push({ kind: 'nozzle', network: into.id, id });
  }
  return created.length > 0 ? created : [...copies.values()].map((id): Ref => ({ kind: 'node', network: into.id, id }));
}

function copyNetwork(draft: Draft<Plan>, source: Network, mapping: Mapping): Ref {
  const id = takeId(draft, 'network');
  const assembly = source.assembly.map((part) => ({ ...copyOf(part), id: takeId(draft, 'part') }));
  draft.networks[id] = { id, name: nextName(draft, 'network', 'Network '), level: source.level, profile: source.profile, source: null, cylinders: {}, assembly, nodes: {}, pipes: {}, nozzles: {} };
  const copy = networkOf(draft, id);
  for (const cylinder of Object.keys(source.cylinders)) copyCylinder(draft, source, copy, cylinder, mapping);
  const order = Object.keys(source.nodes);
  copyParts(draft, source, copy, { nodes: new Set(order), nozzles: new Set(Object.keys(source.nozzles)) }, mapping);
  // Nodes are copied in their order, so the source is found by its place in it.
  copy.source = source.source === null ? null : (Object.keys(copy.nodes)[order.indexOf(source.source)] ?? null);
  return { kind: 'network', id };
}

/**
 * Copies everything named, shifted. Copies have ids and names of their own; pipe is copied where both its ends are,
 * into the same network, a whole network into a new one.
 * @param dx east [m]  @param dy north [m]
 * Refuses a shift of nothing, for the copy would hide behind the first, and a wall or corner on its own.
 */
export const copyThings = command((plan: Plan, refs: readonly Ref[], _dx: number, _dy: number) => `Copy ${thingsInSentence(plan, refs)}`, (draft, refs: readonly Ref[], dx: number, dy: number): readonly Ref[] => {
  if (!Number.isFinite(dx) || !Number.isFinite(dy)) refuse('This distance is not a number.');
  if (Math.hypot(dx, dy) < JOIN_m) refuse('The copy would lie on the first. Choose another place for it.');
  const mapping: Mapping = { point: ({ x, y }) => ({ x: x + dx, y: y + dy }), direction: (angle_rad) => angle_rad, isMirrored: false, isShift: true };
  const created: Ref[] = [];
  const parts: Ref[] = [];
  for (const ref of wholeRefs(refs)) {
    const copy = ref.kind === 'network' ? copyNetwork(draft, networkOf(draft, ref.id), mapping) : copyLevelThing(draft, ref, mapping, dx, dy);
    if (copy) created.push(copy);
    else parts.push(ref);
  }
  const nozzles = new Set(parts.flatMap((ref) => (ref.kind === 'nozzle' ? [nozzleOf(draft, ref).id] : [])));
  for (const ref of parts) if (ref.kind === 'pipe') pipeOf(draft, ref);
  for (const [id, nodes] of nodesOfRefs(draft, parts)) {
    const network = networkOf(draft, id);
    created.push(...copyParts(draft, network, network, { nodes, nozzles }, mapping));
  }
  return created;
});
