import type { Solid, Space } from './derived.ts';
import { partitionGapOf } from './partition-gap.ts';
import { isThere } from './solids.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';

/** Agent passes freely over or under a thing that leaves this much, 18 in [m] (common practice). */
export const OPEN_GAP_m = 0.4572;

/** Whether a solid leaves less than 18 in under the ceiling over it; it counts as doing so while that ceiling is unknown. */
function isShutAbove(space: Space, solid: Solid): boolean {
  const { over_m } = partitionGapOf(space, solid);
  return over_m === undefined || over_m < OPEN_GAP_m - LENGTH_SLACK_m;
}

/**
 * Whether a solid divides the space like a wall, so that no nozzle serves both sides of it: a partition that leaves less
 * than 18 in (457 mm, common practice) under the ceiling, and less than that under itself.
 */
export const dividesSpace = (space: Space, solid: Solid): boolean =>
  solid.obstruction.kind === 'partition' && isThere(solid) && partitionGapOf(space, solid).under_m < OPEN_GAP_m - LENGTH_SLACK_m && isShutAbove(space, solid);

/**
 * Whether a beam parts the ceiling into bays for an orifice: its underside is below the orifice, and it leaves less than
 * 18 in under the ceiling, as beams that bear it do even where less of them is drawn.
 * @param orifice_m  height of the orifice [m]
 */
export const partsBays = (space: Space, solid: Solid, orifice_m: number): boolean =>
  solid.obstruction.kind === 'beam' && solid.bottom_m < orifice_m && isShutAbove(space, solid);
