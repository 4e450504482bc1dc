import RBush from 'rbush';
import type { Box } from '../geometry/outline.ts';
import { pipeBox } from './clash.ts';
import { LOOK_AROUND_m, type PipeContacts, type PipeEntry, type PipeGroup, type ThingBox, contactsOf } from './clash-contacts.ts';
import { type ClashPipe, clashPipesOf } from './clash-pipe.ts';
import { type StandingThing, standingBox, standingByLevel } from './clash-standing.ts';
import type { Derived, DerivedNetwork } from './derived.ts';
import { type Aligned, type Realigned, realign } from './realign.ts';
import { remembered } from './remember.ts';

/** A network as the last pass left it. */
interface NetworkPass extends Aligned<ClashPipe, PipeEntry> {
  readonly group: PipeGroup;
  readonly found: readonly PipeContacts[];
}

/** A level as the last pass left it, with indexes of all that stands and runs on it. */
interface LevelPass {
  readonly things: Aligned<StandingThing, ThingBox>;
  readonly thingTree: RBush<ThingBox>;
  readonly networks: ReadonlyMap<string, NetworkPass>;
  readonly pipeTree: RBush<PipeEntry>;
  readonly widest_m: number;
}

/** More changes than this at once are loaded anew, which is faster. */
const MANY = 1000;

const NONE = { keys: [], entries: [] };
const emptyLevel = (): LevelPass => ({ things: NONE, thingTree: new RBush(), networks: new Map(), pipeTree: new RBush(), widest_m: 0 });

/** An entry for a pipe, its box written out: spread objects are slow to make by the ten thousand. */
function pipeEntry(pipe: ClashPipe, order: number, group: PipeGroup): PipeEntry {
  const { minX, minY, maxX, maxY } = pipeBox(pipe, 0);
  return { minX, minY, maxX, maxY, key: pipe, order, group, found: undefined };
}

function thingEntry(thing: StandingThing, order: number): ThingBox {
  const { minX, minY, maxX, maxY } = standingBox(thing);
  return { minX, minY, maxX, maxY, key: thing, order };
}

const widened = ({ minX, minY, maxX, maxY }: Box, by_m: number): Box => ({ minX: minX - by_m, minY: minY - by_m, maxX: maxX + by_m, maxY: maxY + by_m });

/** Takes what has gone out of an index and puts in what has come. */
function mend<E extends Box>(tree: RBush<E>, gone: readonly E[], come: readonly E[], all: () => readonly E[]): void {
  if (gone.length + come.length > MANY) {
    tree.clear();
    tree.load([...all()]);
    return;
  }
  for (const entry of gone) tree.remove(entry);
  for (const entry of come) tree.insert(entry);
}

/** A network with an entry for each pipe. */
interface Run extends Realigned<ClashPipe, PipeEntry> {
  readonly group: PipeGroup;
  readonly before: NetworkPass | undefined;
}

/** Every network of a level in line with its pipes, and all entries that have gone or come. */
function realignPipes(last: LevelPass, networks: readonly DerivedNetwork[]) {
  const gone: PipeEntry[] = [];
  const come: PipeEntry[] = [];
  const runs = new Map<string, Run>();
  const left = new Map(last.networks);
  for (const [order, network] of networks.entries()) {
    const known = left.get(network.ref.id);
    // A network that has changed its place among the others is another one.
    const before = known?.group.order === order ? known : undefined;
    if (before) left.delete(network.ref.id);
    const group = before?.group ?? { order };
    const run = realign<ClashPipe, PipeEntry>(before ?? NONE, clashPipesOf(network), (pipe, at) => pipeEntry(pipe, at, group));
    for (const entry of run.gone) gone.push(entry);
    for (const entry of run.come) come.push(entry);
    runs.set(network.ref.id, { ...run, group, before });
  }
  for (const { entries } of left.values()) for (const entry of entries) gone.push(entry);
  return { runs, gone, come };
}

/** What was found of each pipe of a network: the very same list where nothing was asked anew. */
function foundOf({ entries, before, isInPlace }: Run, asked: readonly PipeEntry[]): readonly PipeContacts[] {
  if (!before || !isInPlace) return entries.flatMap((entry) => entry.found ?? []);
  if (asked.length === 0) return before.found;
  const found = before.found.slice();
  for (const entry of asked) if (entry.found) found[entry.order] = entry.found;
  return found;
}

/** Pipes that have come and those near anything that has gone or come; after many changes every pipe, which is faster than to look for them. */
function askedOf({ pipeTree }: LevelPass, changes: readonly (readonly Box[])[], come: readonly PipeEntry[], runs: readonly Run[], reach_m: number): Iterable<PipeEntry> {
  if (changes.reduce((sum, each) => sum + each.length, 0) > MANY) return runs.flatMap(({ entries }) => entries);
  const asked = new Set(come);
  for (const change of changes) for (const changed of change) for (const entry of pipeTree.search(widened(changed, reach_m))) asked.add(entry);
  return asked;
}

/** Brings a level up to date: only pipes that changed, or that something near which changed, are asked what they are near to. */
function passLevel(last: LevelPass, networks: readonly DerivedNetwork[], standing: readonly StandingThing[], widest_m: number): LevelPass {
  const things = realign<StandingThing, ThingBox>(last.things, standing, thingEntry);
  const { runs, gone, come } = realignPipes(last, networks);
  mend(last.thingTree, things.gone, things.come, () => things.entries);
  mend(last.pipeTree, gone, come, () => [...runs.values()].flatMap(({ entries }) => entries));

  const asked = askedOf(last, [gone, come, things.gone, things.come], come, [...runs.values()], Math.max(widest_m, last.widest_m));
  const byGroup = new Map<PipeGroup, PipeEntry[]>();
  for (const entry of asked) {
    entry.found = contactsOf(entry, last.thingTree, last.pipeTree, widest_m);
    const others = byGroup.get(entry.group);
    if (others) others.push(entry);
    else byGroup.set(entry.group, [entry]);
  }
  const now = [...runs].map(([id, run]): [string, NetworkPass] => [id, { group: run.group, keys: run.keys, entries: run.entries, found: foundOf(run, byGroup.get(run.group) ?? []) }]);
  return { things, thingTree: last.thingTree, networks: new Map(now), pipeTree: last.pipeTree, widest_m };
}

const wanted_m = ({ profile }: DerivedNetwork): number => Math.max(0, profile?.limits.pipeClearance_m?.value ?? 0);
const NOTHING: readonly StandingThing[] = [];

/** A pass that keeps what it found for the next one. What it answers depends on nothing but what it is asked about. */
function keepingPass(): (derived: Derived) => readonly (readonly PipeContacts[])[] {
  let levels: ReadonlyMap<string, LevelPass> = new Map();
  return ({ networks, solids, spaces }) => {
    const widest_m = Math.max(0, ...networks.map(wanted_m)) + LOOK_AROUND_m;
    const standing = standingByLevel(solids, spaces);
    levels = new Map(
      [...new Set(networks.map(({ level }) => level.id))].map((level) => [
        level,
        passLevel(levels.get(level) ?? emptyLevel(), networks.filter((network) => network.level.id === level), standing.get(level) ?? NOTHING, widest_m),
      ]),
    );
    return networks.map(({ ref, level }) => levels.get(level.id)?.networks.get(ref.id)?.found ?? []);
  };
}

/**
 * What every pipe of a plan is near to, network by network. What was found of a pipe stands, the very same object, for as
 * long as it and what is near it are the same, and so does the list of a network, so that a drag asks only about the pipe
 * or the thing that it touches, however large its network is.
 */
export const clashPass = remembered(keepingPass());
