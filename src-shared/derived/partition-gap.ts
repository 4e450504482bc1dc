import { sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, midpoint } from '../geometry/point.ts';
import { touchesFloor } from './solids.ts';
import type { Solid, Space } from './derived.ts';
import { floorAt_m } from './spaces.ts';

/** What a partition leaves open. */
export interface PartitionGap {
  /** Under it [m]; negative where it reaches below the floor of the space. */
  readonly under_m: number;
  /** Its top to the lowest ceiling over it [m]; negative where it reaches higher; undefined while that ceiling is unknown. */
  readonly over_m: number | undefined;
  /** Where the ceiling over it is lowest. */
  readonly at: PlanPoint;
  readonly ceiling_m: number | undefined;
}

/**
 * The gaps under and over a partition. The least of each counts: over it the lowest ceiling over its corners and sides and
 * that of every ceiling zone that it touches, under it the lowest floor of the space.
 */
export function partitionGapOf(space: Space, { footprint, bottom_m, top_m }: Solid): PartitionGap {
  const places = sidesOf(footprint).flatMap(({ a, b }) => [a, midpoint(a, b)]);
  const floor_m = Math.max(...places.map((p) => floorAt_m(space, p) ?? space.floor_m));
  const ceilings = places.map((at) => ({ at, ceiling_m: space.ceilingAt_m(at) }));
  const zones = space.kind === 'room' ? Object.values(space.enclosure.ceilingZones).filter(({ outline }) => touchesFloor(footprint, outline, [])) : [];
  const [lowest = { at: places[0] ?? { x: 0, y: 0 }, ceiling_m: undefined }] = ceilings.toSorted((a, b) => (a.ceiling_m ?? -Infinity) - (b.ceiling_m ?? -Infinity));
  const zone_m = Math.min(...zones.map(({ height_m }) => height_m));
  const ceiling_m = lowest.ceiling_m === undefined ? undefined : Math.min(lowest.ceiling_m, zone_m);
  return { under_m: bottom_m - floor_m, over_m: ceiling_m === undefined ? undefined : ceiling_m - top_m, at: lowest.at, ceiling_m };
}
