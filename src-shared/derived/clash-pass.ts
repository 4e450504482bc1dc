import RBush from 'rbush';
import type { Box } from '../geometry/outline.ts';
import { pipeBox } from './clash.ts';
import { solidFloorOf, solidWallsOf } from './clash-bounds.ts';
import { solidCeilingOf } from './clash-ceiling.ts';
import { LOOK_AROUND_m, type PipeContacts, type PipeEntry, type StandingThing, type ThingBox, contactsOf } from './clash-contacts.ts';
import { type ClashPipe, clashPipesOf } from './clash-pipe.ts';
import type { Derived, DerivedNetwork, Solid, Space } from './derived.ts';
import { type Realigned, realign } from './realign.ts';
import { remembered, sameList } from './remember.ts';


const solidThing = remembered((solid: Solid): StandingThing => ({ kind: 'solid', solid }));
const ceilingThing = remembered((ceiling: ReturnType<typeof solidCeilingOf>): StandingThing => ({ kind: 'ceiling', ceiling }));
const floorThing = remembered((floor: ReturnType<typeof solidFloorOf>): StandingThing => ({ kind: 'floor', floor }));
const wallThing = remembered((wall: ReturnType<typeof solidWallsOf>[number]): StandingThing => ({ kind: 'wall', wall }));

const boxOf = (thing: StandingThing): Box => {
  switch (thing.kind) {
    case 'solid':
      return thing.solid.bounds;
    case 'ceiling':
      return thing.ceiling.bounds;
    case 'floor':
      return thing.floor.bounds;
    case 'wall':
      return thing.wall.bounds;
  }
};

const widened = ({ minX, minY, maxX, maxY }: Box, by_m: number): Box => ({ minX: minX - by_m, minY: minY - by_m, maxX: maxX + by_m, maxY: maxY + by_m });

/** A level as the last pass left it. */
interface LevelPass {
  readonly things: readonly ThingBox[];
  readonly thingTree: RBush<ThingBox>;
  readonly pipes: readonly PipeEntry[];
  readonly pipeTree: RBush<PipeEntry>;
  /** Enclosure and walls of every room, in order: while they are the same, so is what bounds the rooms. */
  readonly shapes: readonly object[];
  readonly bounding: readonly StandingThing[];
  readonly widest_m: number;
}

const emptyLevel = (): LevelPass => ({ things: [], thingTree: new RBush(), pipes: [], pipeTree: new RBush(), shapes: [], bounding: [], widest_m: 0 });

/** Takes what has gone out of an index and puts in what has come; an index that is mostly new is built anew. */
function mend<E extends Box>(tree: RBush<E>, { entries, gone, come }: Realigned<E & { order: number }>): void {
  if (come.length + gone.length > entries.length / 4) {
    tree.clear();
    tree.load([...entries]);
    return;
  }
  for (const entry of gone) tree.remove(entry);
  for (const entry of come) tree.insert(entry);
}

/** Brings a level up to date: only pipes that changed, or that something near which changed, are asked what they are near to. */
function passLevel(last: LevelPass, pipes: readonly ClashPipe[], solids: readonly Solid[], rooms: readonly Space[], widest_m: number): LevelPass {
  const shapes = sameList(last.shapes, rooms.flatMap(({ enclosure, walls }) => [enclosure, walls]));
  const bounding =
    shapes === last.shapes
      ? last.bounding
      : [...rooms.map((room) => ceilingThing(solidCeilingOf(room))), ...rooms.map((room) => floorThing(solidFloorOf(room))), ...solidWallsOf(rooms).map((wall) => wallThing(wall))];
  const standing = realign(last.things, ({ thing }) => thing, [...solids.map((solid) => solidThing(solid)), ...bounding], (thing): ThingBox => ({ ...boxOf(thing), thing, order: 0 }));
  const run = realign(last.pipes, ({ pipe }) => pipe, pipes, (pipe): PipeEntry => ({ ...pipeBox(pipe, 0), pipe, order: 0, found: undefined }));
  mend(last.thingTree, standing);
  mend(last.pipeTree, run);
  const reach_m = Math.max(widest_m, last.widest_m);
  const asked = new Set(run.come);
  if (asked.size < run.entries.length) {
    for (const changed of [...run.gone, ...run.come, ...standing.gone, ...standing.come]) for (const entry of last.pipeTree.search(widened(changed, reach_m))) asked.add(entry);
  }
  for (const entry of asked) entry.found = contactsOf(entry, last.thingTree, last.pipeTree, widest_m);
  return { ...last, things: standing.entries, pipes: run.entries, shapes, bounding, widest_m };
}

const byLevel = <T>(things: readonly T[], levelOf: (thing: T) => string): ReadonlyMap<string, readonly T[]> => {
  const levels = new Map<string, T[]>();
  for (const thing of things) {
    const others = levels.get(levelOf(thing));
    if (others) others.push(thing);
    else levels.set(levelOf(thing), [thing]);
  }
  return levels;
};

const wanted_m = ({ profile }: DerivedNetwork): number => Math.max(0, profile?.limits.pipeClearance_m?.value ?? 0);

/** A pass that keeps what it found for the next one. What it answers depends on nothing but what it is asked about. */
function keepingPass(): (derived: Derived) => readonly (readonly PipeContacts[])[] {
  let levels: ReadonlyMap<string, LevelPass> = new Map();
  let lists: ReadonlyMap<string, readonly PipeContacts[]> = new Map();
  return ({ networks, solids, spaces }) => {
    const widest_m = Math.max(0, ...networks.map(wanted_m)) + LOOK_AROUND_m;
    const on = byLevel(networks, ({ level }) => level.id);
    const solidsOn = byLevel(solids, ({ ref }) => ref.level);
    const roomsOn = byLevel(spaces.filter(({ kind }) => kind === 'room'), ({ level }) => level.id);
    const next = new Map<string, LevelPass>();
    for (const [level, those] of on) {
      const pipes = those.length === 1 && those[0] ? clashPipesOf(those[0]) : those.flatMap((network) => clashPipesOf(network));
      next.set(level, passLevel(levels.get(level) ?? emptyLevel(), pipes, solidsOn.get(level) ?? [], roomsOn.get(level) ?? [], widest_m));
    }
    const taken = new Map<string, number>();
    const found = new Map<string, readonly PipeContacts[]>();
    for (const { ref, level } of networks) {
      const entries = next.get(level.id)?.pipes ?? [];
      const from = taken.get(level.id) ?? 0;
      let to = from;
      while (entries[to]?.pipe.ref.network === ref.id) to += 1;
      taken.set(level.id, to);
      found.set(ref.id, sameList(lists.get(ref.id), entries.slice(from, to).flatMap((entry) => entry.found ?? [])));
    }
    [levels, lists] = [next, found];
    return networks.map(({ ref }) => found.get(ref.id) ?? []);
  };
}

/**
 * What every pipe of a plan is near to, network by network. What was found of a pipe stands, the very same object, for as
 * long as it and what is near it are the same, and so does the list of a network, so that a drag asks only about the pipe
 * or the thing that it touches, however large its network is.
 */
export const clashPass = remembered(keepingPass());
