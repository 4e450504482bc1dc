import { digestOf } from './digest.ts';
import type { Enclosure, Level, Network, Plan, Ref } from './plan.ts';
import { refKey } from './plan.ts';

const sorted = (_: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))) : value;

/** A short text that is another one whenever the thing is, whatever the order of its fields. */
const digestOfThing = (thing: unknown): string => digestOf(JSON.stringify(thing, sorted) ?? '');

const known = new WeakMap<object, string>();

/** The same, kept for a thing that can no longer change. */
function keptDigest(thing: object): string {
  const last = known.get(thing);
  if (last !== undefined) return last;
  const digest = digestOfThing(thing);
  if (Object.isFrozen(thing)) known.set(thing, digest);
  return digest;
}

type Digests = Record<string, string>;

function addEach(into: Digests, things: Readonly<Record<string, { readonly id: string }>>, ref: (id: string) => Ref): void {
  for (const thing of Object.values(things)) into[refKey(ref(thing.id))] = keptDigest(thing);
}

const enclosureAlone = ({ openings: _, ceilingZones: __, ...own }: Enclosure): object => own;

/** Digest of everything that is drawn on a level, by key. */
export function digestsOfLevel(level: Level): Digests {
  const found: Digests = {};
  const on = { level: level.id };
  for (const enclosure of Object.values(level.enclosures)) {
    found[refKey({ kind: 'enclosure', ...on, id: enclosure.id })] = digestOfThing(enclosureAlone(enclosure));
    addEach(found, enclosure.openings, (id) => ({ kind: 'opening', ...on, enclosure: enclosure.id, id }));
    addEach(found, enclosure.ceilingZones, (id) => ({ kind: 'ceiling-zone', ...on, enclosure: enclosure.id, id }));
  }
  addEach(found, level.obstructions, (id) => ({ kind: 'obstruction', ...on, id }));
  addEach(found, level.devices, (id) => ({ kind: 'device', ...on, id }));
  addEach(found, level.adjoining, (id) => ({ kind: 'adjoining', ...on, id }));
  addEach(found, level.dimensions, (id) => ({ kind: 'dimension', ...on, id }));
  addEach(found, level.notes, (id) => ({ kind: 'note', ...on, id }));
  return found;
}

const networkAlone = ({ cylinders: _, nodes: __, pipes: ___, nozzles: ____, supports: _____, ...own }: Network): object => own;

/** Digest of a network and of all its parts, by key. */
export function digestsOfNetwork(network: Network): Digests {
  const found: Digests = { [refKey({ kind: 'network', id: network.id })]: digestOfThing(networkAlone(network)) };
  const of = { network: network.id };
  addEach(found, network.cylinders, (id) => ({ kind: 'cylinder', ...of, id }));
  addEach(found, network.nodes, (id) => ({ kind: 'node', ...of, id }));
  addEach(found, network.pipes, (id) => ({ kind: 'pipe', ...of, id }));
  addEach(found, network.nozzles, (id) => ({ kind: 'nozzle', ...of, id }));
  addEach(found, network.supports, (id) => ({ kind: 'support', ...of, id }));
  return found;
}

/** Digest of every thing of a plan by its key; floor plans under it and what is only said about the job are left out. */
export const thingDigests = ({ levels, networks }: Pick<Plan, 'levels' | 'networks'>): Digests =>
  Object.assign({}, ...Object.values(levels).map(digestsOfLevel), ...Object.values(networks).map(digestsOfNetwork));

/** Keys that are new, gone or different in `after`. */
export const changedKeys = (before: Readonly<Digests>, after: Readonly<Digests>): string[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((key) => before[key] !== after[key]);
