import type { Box } from '../geometry/outline.ts';
import { type SolidFloor, type SolidWall, solidFloorOf, solidWallsOf } from './clash-bounds.ts';
import { type SolidCeiling, solidCeilingOf } from './clash-ceiling.ts';
import type { Derived, Solid, Space } from './derived.ts';
import { remembered, sameList } from './remember.ts';
import { isThere } from './solids.ts';

/** What stands still around the pipe of a level. */
export type StandingThing =
  | { readonly kind: 'solid'; readonly solid: Solid }
  | { readonly kind: 'ceiling'; readonly ceiling: SolidCeiling }
  | { readonly kind: 'floor'; readonly floor: SolidFloor }
  | { readonly kind: 'wall'; readonly wall: SolidWall };

const solidThing = remembered((solid: Solid): StandingThing => ({ kind: 'solid', solid }));
const ceilingThing = remembered((ceiling: SolidCeiling): StandingThing => ({ kind: 'ceiling', ceiling }));
const floorThing = remembered((floor: SolidFloor): StandingThing => ({ kind: 'floor', floor }));
const wallThing = remembered((wall: SolidWall): StandingThing => ({ kind: 'wall', wall }));

/** Box of a thing on the plan. */
export function standingBox(thing: StandingThing): Box {
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
}

interface Bounding {
  /** Enclosure and walls of every room, in order: while they are the same, so is what bounds the rooms. */
  readonly shapes: readonly object[];
  readonly things: readonly StandingThing[];
}

/** What bounds the rooms of a level. */
function boundingOf(rooms: readonly Space[], last: Bounding | undefined): Bounding {
  const shapes = sameList(last?.shapes, rooms.flatMap(({ enclosure, walls }) => [enclosure, walls]));
  if (last?.shapes === shapes) return last;
  const things = [...rooms.map((room) => ceilingThing(solidCeilingOf(room))), ...rooms.map((room) => floorThing(solidFloorOf(room))), ...solidWallsOf(rooms).map((wall) => wallThing(wall))];
  return { shapes, things };
}

const lastBounding = new Map<string, Bounding>();

/**
 * Solids, ceilings, floors and walls by level id, in this order. A thing is the very same object for as long as it stands
 * unchanged, and all of it while no level changes.
 */
export const standingByLevel = remembered((solids: Derived['solids'], spaces: Derived['spaces']): ReadonlyMap<string, readonly StandingThing[]> => {
  const levels = new Map<string, StandingThing[]>();
  const on = (level: string): StandingThing[] => {
    const things = levels.get(level) ?? [];
    levels.set(level, things);
    return things;
  };
  for (const solid of solids.filter(isThere)) on(solid.ref.level).push(solidThing(solid));
  const rooms = spaces.filter(({ kind }) => kind === 'room');
  for (const level of new Set(rooms.map((room) => room.level.id))) {
    const bounding = boundingOf(rooms.filter((room) => room.level.id === level), lastBounding.get(level));
    lastBounding.set(level, bounding);
    on(level).push(...bounding.things);
  }
  return levels;
});
