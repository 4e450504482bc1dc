import { type BesideWalls, besideWalls, lengthAlong, nearestOnRing, wayAlong } from '#shared/geometry/along-ring';
import { type PlanPoint, distance_m } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { ringOf } from '#shared/model/plan';
import { enclosureAt } from './enclosure-at.ts';
import type { ToolView } from './tool.ts';

const NO_WALL = 'There is no wall to follow here. Point into a room, or empty “Follow wall at”.';
const NARROW = 'The walls stand too close here to be followed at this distance. Make the distance smaller.';

/** The ring beside the walls that is nearest to a place: along the outline of its room, or round a shaft in it. */
function ringBeside(view: ToolView, at: PlanPoint, away_m: number): BesideWalls | undefined {
  const enclosure = enclosureAt(view, at);
  if (!enclosure) return undefined;
  const rings = [enclosure.outline, ...enclosure.holes].flatMap((ring) => besideWalls(ringOf(ring), away_m) ?? []);
  const distanceTo_m = (ring: BesideWalls): number => {
    const on = nearestOnRing(ring, at);
    return on ? distance_m(on.at, at) : Number.MAX_VALUE;
  };
  return rings.sort((one, other) => distanceTo_m(one) - distanceTo_m(other))[0];
}

/** Where a run that follows the walls begins: on the line beside the nearest one. A sentence where there is none. */
export function startBeside(view: ToolView, at: PlanPoint, away_m: number): PlanPoint | string {
  const ring = ringBeside(view, at, away_m);
  const on = ring && nearestOnRing(ring, at);
  return on ? on.at : ring ? NARROW : NO_WALL;
}

/**
 * The places of a run that goes along the walls: square onto the line beside them, round their corners, as far as the
 * place pointed at, or as far as a typed length toward it. A sentence where there is no way.
 */
export function wayBeside(view: ToolView, from: PlanPoint, toward: PlanPoint, away_m: number, length_m: number | null): readonly PlanPoint[] | string {
  const ring = ringBeside(view, toward, away_m);
  if (!ring) return NO_WALL;
  const begins = nearestOnRing(ring, from);
  const ends = nearestOnRing(ring, toward);
  if (!begins || !ends) return NARROW;
  const way = length_m === null ? wayAlong(ring, begins, ends) : lengthAlong(ring, begins, ends, length_m);
  if (!way) return NARROW;
  return distance_m(from, begins.at) <= SAME_PLACE_m ? way : [begins.at, ...way];
}
