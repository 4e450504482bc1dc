import { isInsideOrOn } from '../geometry/inside.ts';
import { sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m } from '../geometry/point.ts';
import { rayHit_m } from '../geometry/segment.ts';
import type { Space } from './derived.ts';
import type { OtherCylinder } from './front-depth.ts';
import { isThere } from './solids.ts';

/** A gauge at the axis of its cylinder. */
export interface Gauge {
  readonly at: PlanPoint;
  readonly height_m: number;
  readonly facing_rad: number;
}

/** What ends the line of sight of a gauge. */
export interface SightEnd {
  readonly name: string;
  /** From the axis of its cylinder [m], ≥ 0. */
  readonly away_m: number;
}

/** How far a ray runs before it meets a circle [m]; undefined when it passes by. */
function circleHit_m({ at, facing_rad }: Gauge, other: OtherCylinder): number | undefined {
  const [dx, dy] = [other.at.x - at.x, other.at.y - at.y];
  const along = dx * Math.cos(facing_rad) + dy * Math.sin(facing_rad);
  const aside = Math.abs(dy * Math.cos(facing_rad) - dx * Math.sin(facing_rad));
  if (distance_m(at, other.at) < other.radius_m) return 0;
  return along < 0 || aside >= other.radius_m ? undefined : along - Math.sqrt(other.radius_m ** 2 - aside ** 2);
}

/** The first wall, solid at the height of the gauge, or other cylinder that a person who reads a gauge would have to look through. */
export function sightEndOf(gauge: Gauge, room: Space, others: readonly OtherCylinder[]): SightEnd | undefined {
  const { at, height_m, facing_rad } = gauge;
  const ends = [
    ...room.walls.map(({ segment }) => ({ name: 'the wall', away_m: rayHit_m(at, facing_rad, segment) })),
    ...room.solids
      .filter((solid) => isThere(solid) && solid.bottom_m <= height_m && solid.top_m >= height_m)
      .flatMap(({ footprint, obstruction }) => {
        const name = obstruction.name || 'an obstruction';
        if (isInsideOrOn(at, footprint)) return [{ name, away_m: 0 }];
        return sidesOf(footprint).map((side) => ({ name, away_m: rayHit_m(at, facing_rad, side) }));
      }),
    ...others.map((other) => ({ name: other.name, away_m: circleHit_m(gauge, other) })),
  ];
  return ends.flatMap(({ name, away_m }) => (away_m === undefined ? [] : [{ name, away_m }])).sort((a, b) => a.away_m - b.away_m)[0];
}
