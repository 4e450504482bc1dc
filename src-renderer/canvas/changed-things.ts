import type { Derived, DerivedNetwork, DerivedNozzle, Space } from '#shared/derived/derived';
import { type Level, type Network, type Plan, refKey } from '#shared/model/plan';

/** Entries of two records that are not the very same object; what is in only one of them counts. */
function changedIds<T>(before: Readonly<Record<string, T>> | undefined, after: Readonly<Record<string, T>> | undefined): string[] {
  if (before === after) return [];
  const ids = new Set([...Object.keys(before ?? {}), ...Object.keys(after ?? {})]);
  return [...ids].filter((id) => before?.[id] !== after?.[id]);
}

function changedOnLevel(id: string, before: Level | undefined, after: Level | undefined): string[] {
  return [
    ...changedIds(before?.enclosures, after?.enclosures).map((each) => refKey({ kind: 'enclosure', level: id, id: each })),
    ...changedIds(before?.obstructions, after?.obstructions).map((each) => refKey({ kind: 'obstruction', level: id, id: each })),
    ...changedIds(before?.devices, after?.devices).map((each) => refKey({ kind: 'device', level: id, id: each })),
    ...changedIds(before?.adjoining, after?.adjoining).map((each) => refKey({ kind: 'adjoining', level: id, id: each })),
    ...changedIds(before?.dimensions, after?.dimensions).map((each) => refKey({ kind: 'dimension', level: id, id: each })),
    ...changedIds(before?.notes, after?.notes).map((each) => refKey({ kind: 'note', level: id, id: each })),
    ...changedIds(before?.underlays, after?.underlays).map((each) => refKey({ kind: 'underlay', level: id, id: each })),
  ];
}

function changedInNetwork(id: string, before: Network | undefined, after: Network | undefined): string[] {
  const nodes = new Set(changedIds(before?.nodes, after?.nodes));
  const touched = <T>(records: Readonly<Record<string, T>> | undefined, holds: (thing: T) => boolean): string[] =>
    Object.entries(records ?? {}).flatMap(([each, thing]) => (holds(thing) ? [each] : []));
  const pipes = new Set([
    ...changedIds(before?.pipes, after?.pipes),
    ...touched(before?.pipes, ({ from, to }) => nodes.has(from) || nodes.has(to)),
    ...touched(after?.pipes, ({ from, to }) => nodes.has(from) || nodes.has(to)),
  ]);
  const nozzles = new Set([
    ...changedIds(before?.nozzles, after?.nozzles),
    ...touched(before?.nozzles, ({ node }) => nodes.has(node)),
    ...touched(after?.nozzles, ({ node }) => nodes.has(node)),
  ]);
  const named = (kind: 'node' | 'pipe' | 'nozzle' | 'cylinder' | 'support', ids: Iterable<string>): string[] => [...ids].map((each) => refKey({ kind, network: id, id: each }));
  return [
    ...named('node', nodes),
    ...named('pipe', pipes),
    ...named('nozzle', nozzles),
    ...named('support', changedIds(before?.supports, after?.supports)),
    ...named('cylinder', changedIds(before?.cylinders, after?.cylinders)),
    ...(before?.source !== after?.source || before?.assembly !== after?.assembly ? named('cylinder', Object.keys(after?.cylinders ?? {})) : []),
  ];
}

/**
 * Keys of all things that are drawn differently in two plans: those that changed and those that hang on them
 * (a pipe on a moved node). Plans share what a change left alone, so that only what differs is looked at.
 */
export function changedThings(before: Plan, after: Plan): string[] {
  if (before === after) return [];
  return [
    ...changedIds(before.levels, after.levels).flatMap((id) => changedOnLevel(id, before.levels[id], after.levels[id])),
    ...changedIds(before.networks, after.networks).flatMap((id) => changedInNetwork(id, before.networks[id], after.networks[id])),
  ];
}

/** Whether a nozzle stands, blows and is hemmed in just as before. */
const isSameNozzle = (a: DerivedNozzle, b: DerivedNozzle): boolean =>
  a.nozzle === b.nozzle && a.at === b.at && a.space === b.space && a.profile === b.profile && a.blockers.length === b.blockers.length && a.blockers.every((solid, i) => solid === b.blockers[i]);

/** Key under which what a space's nozzles cover is drawn. */
export const coverageKey = (space: Space): string => `coverage/${space.key}`;

/** Key under which a nozzle's jets are drawn. */
export const jetsKey = (nozzle: DerivedNozzle): string => `jets/${refKey(nozzle.ref)}`;

/** Nozzles of networks that are not the very same object in another plan, by their keys: in the others none has changed. */
function changedNozzles({ networks }: Derived, others: ReadonlySet<DerivedNetwork>): ReadonlyMap<string, DerivedNozzle> {
  const changed = networks.filter((network) => !others.has(network));
  return new Map(changed.flatMap(({ nozzles }) => nozzles.map((nozzle): [string, DerivedNozzle] => [refKey(nozzle.ref), nozzle])));
}

/** What differs between two derived plans at all: ids of networks, and of levels with what stands on them. */
export interface Touched {
  readonly networks: ReadonlySet<string>;
  readonly levels: ReadonlySet<string>;
}

/** Networks and levels that are not the very same object in both plans. */
export function touchedBetween(before: Derived, after: Derived): Touched {
  const same = new Set<object>([...before.networks, ...before.levels]);
  return {
    networks: new Set(after.networks.flatMap((network) => (same.has(network) ? [] : [network.ref.id]))),
    levels: new Set(after.levels.flatMap((each) => (same.has(each) ? [] : [each.level.id]))),
  };
}

/**
 * Keys of what is drawn differently though it was not changed itself: the jets of a nozzle in front of which a rack was
 * moved, what a space's nozzles cover.
 */
export function changedConsequences(before: Derived, after: Derived): string[] {
  if (before === after) return [];
  const earlier = changedNozzles(before, new Set(after.networks));
  const later = changedNozzles(after, new Set(before.networks));
  const keys = new Set<string>();
  const touch = (nozzle: DerivedNozzle): void => {
    keys.add(jetsKey(nozzle));
    if (nozzle.space) keys.add(coverageKey(nozzle.space));
  };
  for (const [key, nozzle] of later) {
    const same = earlier.get(key);
    if (same && isSameNozzle(same, nozzle)) continue;
    touch(nozzle);
    if (same) touch(same);
  }
  for (const [key, nozzle] of earlier) if (!later.has(key)) touch(nozzle);
  if (before.spaces !== after.spaces) {
    const spaces = new Set(before.spaces);
    for (const space of after.spaces) if (!spaces.has(space)) keys.add(coverageKey(space));
  }
  return [...keys];
}
