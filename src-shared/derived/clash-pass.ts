import RBush from 'rbush';
import type { Box } from '../geometry/outline.ts';
import { pipeBox } from './clash.ts';
import { LOOK_AROUND_m, type PipeContacts, type PipeEntry, type PipeGroup, type ThingBox, contactsOf } from './clash-contacts.ts';
import { type ClashPipe, clashPipesOf } from './clash-pipe.ts';
import { type StandingThing, standingBox, standingOf } from './clash-standing.ts';
import type { Derived, DerivedNetwork } from './derived.ts';
import { placesThatDiffer } from './places-that-differ.ts';
import { type Aligned, type Realigned, realign } from './realign.ts';
import { remembered, sameList } from './remember.ts';

/** A network as the last pass left it. */
interface NetworkPass extends Aligned<ClashPipe, PipeEntry> {
  readonly network: DerivedNetwork;
  readonly group: PipeGroup;
  readonly found: readonly PipeContacts[];
}

/** A level as the last pass left it, with indexes of all that stands and runs on it. */
interface LevelPass {
  readonly things: Aligned<StandingThing, ThingBox>;
  readonly thingTree: RBush<ThingBox>;
  /** In the order of the plan. */
  readonly networks: readonly NetworkPass[];
  readonly pipeTree: RBush<PipeEntry>;
  readonly widest_m: number;
}

/** More changes than this at once are loaded anew, which is faster. */
const MANY = 1000;

const NONE = { keys: [], entries: [] };
const emptyLevel = (): LevelPass => ({ things: NONE, thingTree: new RBush(), networks: [], pipeTree: new RBush(), widest_m: 0 });

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

/** A network that has changed, with an entry for each pipe. */
interface Run extends Realigned<ClashPipe, PipeEntry> {
  readonly network: DerivedNetwork;
  readonly group: PipeGroup;
  readonly before: NetworkPass | undefined;
}

/** Every network of a level that is another one than before in line with its pipes, and all entries that have gone or come. */
function realignPipes(last: LevelPass, networks: readonly DerivedNetwork[]) {
  const gone: PipeEntry[] = [];
  const come: PipeEntry[] = [];
  const runs: Run[] = [];
  const leave = ({ entries }: NetworkPass): void => {
    for (const entry of entries) gone.push(entry);
  };
  for (let order = 0; order < networks.length; order += 1) {
    const [network, there] = [networks[order], last.networks[order]];
    if (!network || there?.network === network) continue;
    // A network that has changed its place among the others is another one.
    const before = there?.network.ref.id === network.ref.id ? there : undefined;
    if (there && !before) leave(there);
    const group = before?.group ?? { order };
    const run = realign<ClashPipe, PipeEntry>(before ?? NONE, clashPipesOf(network), (pipe, at) => pipeEntry(pipe, at, group));
    for (const entry of run.gone) gone.push(entry);
    for (const entry of run.come) come.push(entry);
    runs.push({ ...run, network, group, before });
  }
  for (const there of last.networks.slice(networks.length)) leave(there);
  return { runs, gone, come };
}

/** What was found of each pipe of a network: the very same list where nothing was asked anew. */
function foundOf(entries: readonly PipeEntry[], before: readonly PipeContacts[] | undefined, asked: readonly PipeEntry[]): readonly PipeContacts[] {
  if (!before) return entries.flatMap((entry) => entry.found ?? []);
  if (asked.length === 0) return before;
  const found = before.slice();
  for (const entry of asked) if (entry.found) found[entry.order] = entry.found;
  return found;
}

/** Pipes that have come and those near anything that has gone or come; after many changes every pipe, which is faster than to look for them. */
function askedOf({ pipeTree }: LevelPass, changes: readonly (readonly Box[])[], come: readonly PipeEntry[], reach_m: number): Iterable<PipeEntry> {
  if (changes.reduce((sum, each) => sum + each.length, 0) > MANY) return pipeTree.all();
  const asked = new Set(come);
  for (const change of changes) for (const changed of change) for (const entry of pipeTree.search(widened(changed, reach_m))) asked.add(entry);
  return asked;
}

const NOBODY: readonly PipeEntry[] = [];

/** Brings a level up to date: only pipes that changed, or that something near which changed, are asked what they are near to. */
function passLevel(last: LevelPass, networks: readonly DerivedNetwork[], standing: readonly StandingThing[], widest_m: number): LevelPass {
  const things = realign<StandingThing, ThingBox>(last.things, standing, thingEntry);
  const { runs, gone, come } = realignPipes(last, networks);
  const now: NetworkPass[] = last.networks.slice(0, networks.length);
  for (const { network, group, keys, entries, before, isInPlace } of runs) now[group.order] = { network, group, keys, entries, found: before && isInPlace ? before.found : NOT_ASKED };
  mend(last.thingTree, things.gone, things.come, () => things.entries);
  mend(last.pipeTree, gone, come, () => now.flatMap(({ entries }) => entries));

  const byOrder = new Map<number, PipeEntry[]>();
  for (const entry of askedOf(last, [gone, come, things.gone, things.come], come, Math.max(widest_m, last.widest_m))) {
    entry.found = contactsOf(entry, last.thingTree, last.pipeTree, widest_m);
    const others = byOrder.get(entry.group.order);
    if (others) others.push(entry);
    else byOrder.set(entry.group.order, [entry]);
  }
  for (const order of new Set([...runs.map(({ group }) => group.order), ...byOrder.keys()])) {
    const pass = now[order];
    if (pass) now[order] = { ...pass, found: foundOf(pass.entries, pass.found === NOT_ASKED ? undefined : pass.found, byOrder.get(order) ?? NOBODY) };
  }
  return { things, thingTree: last.thingTree, networks: now, pipeTree: last.pipeTree, widest_m };
}

/** Stands for what was found of a network that is to be put together anew. */
const NOT_ASKED: readonly PipeContacts[] = [];

const wanted_m = ({ profile }: DerivedNetwork): number => Math.max(0, profile?.limits.pipeClearance_m?.value ?? 0);
const NOTHING: readonly StandingThing[] = [];

/** Where a network stands among those of its level. */
interface Stand {
  readonly level: string;
  readonly order: number;
}

/** A plan as the last pass left it. */
interface PlanPass extends Pick<Derived, 'networks'> {
  readonly around: Derived['levels'];
  readonly levels: ReadonlyMap<string, LevelPass>;
  readonly stands: readonly Stand[];
  readonly widest_m: number;
  readonly found: readonly (readonly PipeContacts[])[];
}

/** The networks that changed, where nothing else has that a pass follows from; undefined: look at every network. */
function changedNetworks(last: PlanPass | undefined, { networks, levels }: Derived): readonly number[] | undefined {
  if (last?.around !== levels || last.networks.length !== networks.length) return undefined;
  const changed = placesThatDiffer(networks, last.networks);
  const isInStep = (i: number): boolean => {
    const [now, before] = [networks[i], last.networks[i]];
    return now?.ref.id === before?.ref.id && now?.level.id === before?.level.id && now?.profile === before?.profile;
  };
  return changed.every(isInStep) ? changed : undefined;
}

/** Brings the levels with changed networks up to date, and leaves every other as it is. */
function passChanged(last: PlanPass, { networks, levels: around }: Derived, changed: readonly number[]): PlanPass {
  const levels = new Map(last.levels);
  const found = last.found.slice();
  for (const level of new Set(changed.map((i) => last.stands[i]?.level))) {
    const before = level === undefined ? undefined : last.levels.get(level);
    if (level === undefined || !before) continue;
    const on = before.networks.map(({ network }) => network);
    for (const i of changed) {
      const [stand, network] = [last.stands[i], networks[i]];
      if (stand?.level === level && network) on[stand.order] = network;
    }
    const there = around.find((each) => each.level.id === level);
    const now = passLevel(before, on, there ? standingOf(there) : NOTHING, last.widest_m);
    levels.set(level, now);
    for (const [i, stand] of last.stands.entries()) if (stand.level === level) found[i] = now.networks[stand.order]?.found ?? [];
  }
  return { around, networks, levels, stands: last.stands, widest_m: last.widest_m, found };
}

/** Brings every level up to date. */
function passAll(last: PlanPass | undefined, { networks, levels: around }: Derived): PlanPass {
  const widest_m = networks.reduce((most_m, network) => Math.max(most_m, wanted_m(network)), 0) + LOOK_AROUND_m;
  const byLevel = new Map<string, DerivedNetwork[]>();
  const stands = networks.map((network): Stand => {
    const level = network.level.id;
    const others = byLevel.get(level);
    if (others) return { level, order: others.push(network) - 1 };
    byLevel.set(level, [network]);
    return { level, order: 0 };
  });
  const standing = new Map(around.map((level) => [level.level.id, level]));
  const levels = new Map(
    [...byLevel].map(([level, on]): [string, LevelPass] => {
      const there = standing.get(level);
      return [level, passLevel(last?.levels.get(level) ?? emptyLevel(), on, there ? standingOf(there) : NOTHING, widest_m)];
    }),
  );
  const found = stands.map(({ level, order }) => levels.get(level)?.networks[order]?.found ?? []);
  return { around, networks, levels, stands, widest_m, found: sameList(last?.found, found) };
}

/** A pass that keeps what it found for the next one. What it answers depends on nothing but what it is asked about. */
function keepingPass(): (derived: Derived) => readonly (readonly PipeContacts[])[] {
  let last: PlanPass | undefined;
  return (derived) => {
    const changed = changedNetworks(last, derived);
    last = last && changed ? passChanged(last, derived, changed) : passAll(last, derived);
    return last.found;
  };
}

/**
 * What every pipe of a plan is near to, network by network. What was found of a pipe stands, the very same object, for as
 * long as it and what is near it are the same, and so does the list of a network, so that a drag asks only about the pipe
 * or the thing that it touches, however large its network is.
 */
export const clashPass = remembered(keepingPass());
