import { type PlanPoint, bearing_rad, distance_m, midpoint, polar } from '#shared/geometry/point';
import { distanceToSegment_m } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { type PlacedWall, leftOf_m } from './level-things.ts';
import type { Sketch, ToolView } from './tool.ts';
import { lengthText } from './typed-place.ts';

/** What is pointed at within this distance of a wall goes to it [m]. */
export const WALL_PULL_m = 0.6;

/** A place, and the wall that it is at. */
export interface WallPlace {
  readonly at: PlanPoint;
  readonly wall: PlacedWall | undefined;
  /** Along the wall from its start [m]; 0 away from walls. */
  readonly along_m: number;
}

/** The wall nearest to a place and less than `reach_m` from it; of several as near the first one. */
export function nearestWall(walls: readonly PlacedWall[], at: PlanPoint, reach_m: number): PlacedWall | undefined {
  let nearest: PlacedWall | undefined;
  let least = reach_m;
  for (const wall of walls) {
    const away = distanceToSegment_m(at, wall.segment);
    if (away >= least) continue;
    least = away;
    nearest = wall;
  }
  return nearest;
}

/** Distance along a wall, kept clear of its ends [m]; the middle where the wall is too short for that. */
export function keptWithin_m({ segment: { a, b } }: PlacedWall, along_m: number, clear_m: number): number {
  const length_m = distance_m(a, b);
  return length_m > 2 * clear_m ? Math.min(length_m - clear_m, Math.max(clear_m, along_m)) : length_m / 2;
}

/**
 * A place beside a wall, on the side where the pointer is, and the direction from the wall to it.
 * @param clear_m  kept free of both ends of the wall
 * @param off_m  how far the place stands off the wall, on its inner and on its outer side
 */
export function besideWall(wall: PlacedWall, along_m: number, side: PlanPoint, clear_m: number, off_m: { readonly inside: number; readonly outside: number }): WallPlace & { readonly away_rad: number } {
  const { a, b } = wall.segment;
  const kept_m = keptWithin_m(wall, along_m, clear_m);
  const direction_rad = bearing_rad(a, b);
  const isInside = leftOf_m(side, wall.segment) >= -SAME_PLACE_m;
  const away_rad = direction_rad + (isInside ? Math.PI / 2 : -Math.PI / 2);
  return { at: polar(polar(a, direction_rad, kept_m), away_rad, isInside ? off_m.inside : off_m.outside), wall, along_m: kept_m, away_rad };
}

/** The line from the start of a wall to what is at it, with its length. */
export function fromStart(view: ToolView, wall: PlacedWall, foot: PlanPoint, along_m: number): Required<Pick<Sketch, 'lines' | 'labels'>> {
  const { a } = wall.segment;
  return { lines: [{ places: [a, foot], dashed: true }], labels: [{ at: midpoint(a, foot), text: `${lengthText(view, along_m)} from start` }] };
}
