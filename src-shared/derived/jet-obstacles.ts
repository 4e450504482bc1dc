import { sideOfOutline } from '../geometry/inside.ts';
import { sidesOf } from '../geometry/outline.ts';
import { bearing_rad } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { RefOf } from '../model/plan.ts';
import type { HungNozzle, Solid } from './derived.ts';

/** A straight face that stops a jet at the height of the orifice. */
export interface JetObstacle {
  readonly ref: RefOf<'wall' | 'obstruction'>;
  readonly segment: Segment;
  /** Direction out of the face into the free space, square to it [rad]. */
  readonly front_rad: number;
  /** The orifice touches it: it stops only jets that blow at it. */
  readonly isTouched: boolean;
}

/** The blocker that an orifice is inside of, not just touching. */
export const buriedIn = ({ at, blockers }: HungNozzle): Solid | undefined =>
  at && blockers.find(({ footprint }) => sideOfOutline(at, footprint) === 'inside');

/** Everything that may stop a nozzle's jets at the height of its orifice: the walls of its space and the sides of its blockers. */
export function jetObstaclesOf({ at, space, blockers }: HungNozzle): JetObstacle[] {
  if (!at || !space) return [];
  const obstacle = (ref: JetObstacle['ref'], segment: Segment, front_rad: number): JetObstacle => ({
    ref,
    segment,
    front_rad,
    isTouched: distanceToSegment_m(at, segment) <= SAME_PLACE_m,
  });
  return [
    ...space.walls.map(({ ref, segment, inward_rad }) => obstacle(ref, segment, inward_rad)),
    ...blockers.flatMap(({ ref, footprint }) =>
      sidesOf(footprint).map((segment) => obstacle(ref, segment, bearing_rad(segment.a, segment.b) - Math.PI / 2)),
    ),
  ];
}
