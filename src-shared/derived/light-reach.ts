import { normalAngle_rad } from '../geometry/angle.ts';
import { momentsOf } from '../geometry/moments.ts';
import { type Outline, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, planPoint, polar } from '../geometry/point.ts';
import { poleOf } from '../geometry/pole.ts';
import { distanceToSegment_m } from '../geometry/segment.ts';
import { SAME_PLACE_m, SLIVER_m2 } from '../geometry/tolerance.ts';
import type { Space } from './derived.ts';
import { openFloor } from './least-over-floor.ts';
import { type Region, differenceOf, partsOf } from './polygon-sums.ts';
import { seenOf } from './sight.ts';
import type { SoundFloor } from './sound-ways.ts';

/** A light this near to a wall hangs on it [m]. */
const ON_WALL_m = 0.3;
/** The eye is drawn off its wall by this, so that the wall itself hides nothing of the room [m]. */
const OFF_WALL_m = 0.01;
/** Corners of the polygon inscribed in the circle of a light that faces every way. */
const ROUND_CORNERS = 96;

/** A light that warns. */
export interface AlarmLight {
  readonly at: PlanPoint;
  /** Where it faces [rad]; null: not known, then that of the wall it hangs on counts. */
  readonly facing_rad: number | null;
  /** Side of the square room that it serves from the middle of one side [m]. */
  readonly side_m: number;
}

/** A part of the floor that no light reaches. */
export interface UnlitFloor {
  readonly rings: Region;
  readonly area_m2: number;
  /** The place deepest inside it. */
  readonly worst: PlanPoint;
}

/** Where a light looks [rad]: as it is drawn, else square off the wall that it hangs on; undefined off every wall. */
function facingOf(space: Space, { at, facing_rad }: AlarmLight): number | undefined {
  if (facing_rad !== null) return normalAngle_rad(facing_rad);
  const [nearest] = space.walls.map(({ segment, inward_rad }) => ({ inward_rad, off_m: distanceToSegment_m(at, segment) })).sort((a, b) => a.off_m - b.off_m);
  return nearest && nearest.off_m <= ON_WALL_m ? nearest.inward_rad : undefined;
}

/** The square that a light on a wall serves; where it faces is not known, the circle within it that serves wherever it faces. */
function servedBy(at: PlanPoint, facing_rad: number | undefined, side_m: number): { readonly ring: Outline; readonly reach_m: number } {
  const half_m = side_m / 2;
  if (facing_rad === undefined) return { ring: Array.from({ length: ROUND_CORNERS }, (_, i) => polar(at, (2 * Math.PI * i) / ROUND_CORNERS, half_m)), reach_m: half_m };
  const corner = (along_m: number, aside_m: number): PlanPoint => polar(polar(at, facing_rad, along_m), facing_rad + Math.PI / 2, aside_m);
  return { ring: [corner(0, -half_m), corner(side_m, -half_m), corner(side_m, half_m), corner(0, half_m)], reach_m: Math.hypot(side_m, half_m) + OFF_WALL_m };
}

/**
 * The floor of a room that no alarm light reaches: outside the square of each, or out of its sight behind walls and things
 * as high as the room. Lower things hide nothing, for light comes back from walls and ceiling over them.
 */
export function unlitFloor(space: Space, floor: SoundFloor, lights: readonly AlarmLight[], height_m: number): UnlitFloor[] {
  const lit = lights.flatMap((light): Region[] => {
    if (light.side_m <= 0) return [];
    const facing_rad = facingOf(space, light);
    const eye = facing_rad === undefined ? planPoint(light.at.x, light.at.y) : polar(light.at, facing_rad, OFF_WALL_m);
    return [seenOf({ at: { ...eye, z: height_m }, space, blockers: [] }, servedBy(planPoint(light.at.x, light.at.y), facing_rad, light.side_m))];
  });
  return partsOf(differenceOf(openFloor(floor), lit)).flatMap((rings) => {
    const { area_m2 } = momentsOf(rings);
    const border_m = rings.flatMap(sidesOf).reduce((sum, { a, b }) => sum + distance_m(a, b), 0);
    // Slivers come from the grid of the polygon sums, slits of the eye's own distance from the wall.
    if (area_m2 < SLIVER_m2 || area_m2 < border_m * (SAME_PLACE_m + OFF_WALL_m)) return [];
    return [{ rings, area_m2, worst: poleOf(rings).at }];
  });
}
