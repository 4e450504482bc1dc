import { isCounterClockwise } from '#shared/geometry/outline';
import { bearing_rad } from '#shared/geometry/point';
import { type Enclosure, ringOf } from '#shared/model/plan';
import { compassName } from '#shared/derived/datum';

/** What a wall is made of, in the user's words. */
export const CONSTRUCTION = { unknown: 'Not yet known', block: 'Block', concrete: 'Concrete', 'stud-gypsum': 'Stud and gypsum', panel: 'Panel', glass: 'Glass', other: 'Other' } as const;

/** How far up a wall goes, in the user's words. */
export const REACHES = { unknown: 'Not yet known', slab: 'The slab', ceiling: 'The ceiling only' } as const;

/**
 * Side of the room on which an outer wall stands: "north", "south-west"; undefined for the wall of a shaft.
 * @param corner  id of the corner that the wall starts from
 */
export function wallSide({ outline }: Pick<Enclosure, 'outline'>, corner: string): string | undefined {
  const index = outline.findIndex(({ id }) => id === corner);
  const a = outline[index];
  const b = outline[(index + 1) % outline.length];
  if (!a || !b) return undefined;
  return compassName(bearing_rad(a, b) + (isCounterClockwise(ringOf(outline)) ? -Math.PI / 2 : Math.PI / 2));
}
