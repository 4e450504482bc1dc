import type { Box } from '../geometry/outline.ts';
import { type SolidFloor, type SolidWall, solidFloorOf, solidWallsOf } from './clash-bounds.ts';
import { type SolidCeiling, solidCeilingOf } from './clash-ceiling.ts';
import type { DerivedLevel, Solid, Space } from './derived.ts';
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
 * Solids, ceilings, floors and walls of a level, in this order. A thing is the very same object for as long as it stands
 * unchanged, and all of it while the level does not change.
 */
export const standingOf = remembered(({ level: { id }, solids, spaces }: DerivedLevel): readonly StandingThing[] => {
  const rooms = spaces.filter(({ kind }) => kind === 'room');
  const standing: StandingThing[] = [];
  for (const solid of solids) if (isThere(solid)) standing.push(solidThing(solid));
  if (rooms.length === 0) return standing;
  const bounding = boundingOf(rooms, lastBounding.get(id));
  lastBounding.set(id, bounding);
  for (const thing of bounding.things) standing.push(thing);
  return standing;
});
