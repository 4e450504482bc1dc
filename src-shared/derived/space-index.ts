import RBush from 'rbush';
import { isInsideRegion } from '../geometry/inside.ts';
import type { Box } from '../geometry/outline.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Nozzle } from '../model/plan.ts';
import type { Space } from './derived.ts';
import { remembered } from './remember.ts';
import { floorAt_m } from './spaces.ts';

/** The spaces of a level, found by place. */
export interface SpaceIndex {
  /**
   * The space that a place belongs to; undefined when no enclosure is around it on the plan. Walls count as inside;
   * of several enclosures the smallest counts. Below the finished floor it is the under-floor void, above the room's
   * ceiling the ceiling void, where the enclosure has them; else the room, even for a place above its ceiling,
   * so that the height is what gets reported.
   */
  findAt(at: PlanPoint3): Space | undefined;
  /** A space by enclosure and kind. */
  find(serves: NonNullable<Nozzle['serves']>): Space | undefined;
}

interface SpaceBox extends Box {
  readonly room: Space;
  readonly order: number;
}

/** Whether a height lies between floor and ceiling of a space, touching included; an unknown face stops nothing. */
export const isWithinHeight = (space: Space, at: PlanPoint3): boolean =>
  at.z >= (floorAt_m(space, at) ?? -Infinity) - LENGTH_SLACK_m && at.z <= (space.ceilingAt_m(at) ?? Infinity) + LENGTH_SLACK_m;

/** Builds the index of a level's spaces. */
export const spaceIndexOf = remembered((spaces: readonly Space[]): SpaceIndex => {
  const byKey = new Map(spaces.map((space) => [space.key, space]));
  const find: SpaceIndex['find'] = ({ enclosure, space }) => byKey.get(`${enclosure}/${space}`);
  const index = new RBush<SpaceBox>();
  index.load(spaces.flatMap((room, order) => (room.kind === 'room' ? [{ ...room.bounds, room, order }] : [])));
  return {
    find,
    findAt(at) {
      const around = { minX: at.x - SAME_PLACE_m, minY: at.y - SAME_PLACE_m, maxX: at.x + SAME_PLACE_m, maxY: at.y + SAME_PLACE_m };
      const room = index
        .search(around)
        .filter((box) => isInsideRegion(at, box.room.outline, box.room.holes))
        .sort((a, b) => a.room.area_m2 - b.room.area_m2 || a.order - b.order)[0]?.room;
      if (!room) return undefined;
      const ceiling_m = room.ceilingAt_m(at);
      const enclosure = room.enclosure.id;
      if (at.z < -LENGTH_SLACK_m) return find({ enclosure, space: 'under-floor' }) ?? room;
      if (ceiling_m !== undefined && at.z > ceiling_m + LENGTH_SLACK_m) return find({ enclosure, space: 'ceiling-void' }) ?? room;
      return room;
    },
  };
});
