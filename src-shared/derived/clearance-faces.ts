import { normalAngle_rad } from '../geometry/angle.ts';
import { isInsideRegion, sideOfOutline } from '../geometry/inside.ts';
import { sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, type PlanPoint3, bearing_rad, distance_m, planPoint } from '../geometry/point.ts';
import { type Segment, nearestOnSegment } from '../geometry/segment.ts';
import type { RefOf } from '../model/plan.ts';
import type { Solid, Space } from './derived.ts';
import { remembered } from './remember.ts';
import { isThere } from './solids.ts';
import { floorAt_m } from './spaces.ts';

/** A face that a nozzle must stand clear of: a finished wall, or the side of a thing as high as the space. */
export interface ClearanceFace {
  readonly ref: RefOf<'wall' | 'obstruction'>;
  readonly segment: Segment;
  /** Direction into the free space, square to the face [rad]. */
  readonly inward_rad: number;
  /** As a sentence names it: "the west wall", "a wall of a shaft", "Column 3". */
  readonly name: string;
}

/** A thing that ends this near to floor and ceiling is as high as the space [m]: less than any joint on site. */
const JOINT_m = 1e-3;

/**
 * Whether a solid fills the height of a space, floor to ceiling, within a millimetre; the ceiling is the lowest over
 * its corners. While the ceiling is unknown, a thing that stands on the floor and rises above `orifice_m` counts.
 * @param orifice_m height that it must rise above while the ceiling is unknown [m]
 */
export function isFullHeight(space: Space, solid: Solid, orifice_m: number): boolean {
  const known = heightsIn(space);
  const rise = known.get(solid) ?? riseOf(space, solid);
  known.set(solid, rise);
  return rise === 'over-orifice' ? solid.top_m > orifice_m : rise === 'full';
}

/** How a solid rises in a space: through its height, or only as far as it comes over an orifice while the ceiling is unknown. */
type Rise = 'full' | 'less' | 'over-orifice';

/** Kept by space: every nozzle in it asks. */
const heightsIn = remembered((_: Space): Map<Solid, Rise> => new Map());

function riseOf(space: Space, solid: Solid): Rise {
  if (!isThere(solid)) return 'less';
  const { footprint, bottom_m, top_m } = solid;
  const floors = footprint.map((corner) => floorAt_m(space, corner) ?? space.floor_m);
  if (bottom_m > Math.max(...floors) + JOINT_m) return 'less';
  const ceilings = footprint.map((corner) => space.ceilingAt_m(corner));
  if (ceilings.includes(undefined)) return 'over-orifice';
  return top_m >= Math.min(...ceilings.map((ceiling_m) => ceiling_m ?? Infinity)) - JOINT_m ? 'full' : 'less';
}

const COMPASS = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'];
const wallName = (inward_rad: number): string =>
  `the ${COMPASS[Math.round(normalAngle_rad(inward_rad + Math.PI) / (Math.PI / 4)) % COMPASS.length]} wall`;

const wallFacesOf = remembered((space: Space): readonly ClearanceFace[] => {
  const outer = new Set(space.enclosure.outline.map(({ id }) => id));
  return space.walls.map(({ ref, segment, inward_rad }) => ({
    ref,
    segment,
    inward_rad,
    name: outer.has(ref.id) ? wallName(inward_rad) : 'a wall of a shaft',
  }));
});

/** Faces of a space that a nozzle must stand clear of: all walls, and the sides of things as high as the space. */
export const governingFaces = (space: Space, orifice_m: number): readonly ClearanceFace[] => [
  ...wallFacesOf(space),
  ...space.solids
    .filter((solid) => isFullHeight(space, solid, orifice_m))
    .flatMap((solid) =>
      sidesOf(solid.footprint).map((segment) => ({
        ref: solid.ref,
        segment,
        inward_rad: bearing_rad(segment.a, segment.b) - Math.PI / 2,
        name: solid.obstruction.name || 'an obstruction',
      })),
    ),
];

/** The face nearest to a place. */
export interface NearestFace extends ClearanceFace {
  /** Place on the face nearest to the one asked about. */
  readonly at: PlanPoint;
  /** Plan distance to it [m], ≥ 0; 0 for a place outside the space or inside a thing as high as the space. */
  readonly distance_m: number;
}

/** The nearest face that a nozzle at a place must stand clear of; undefined for a space without walls. */
export function nearestClearanceFace(space: Space, at: PlanPoint3): NearestFace | undefined {
  let best: ClearanceFace | undefined;
  let least_m = Infinity;
  for (const face of governingFaces(space, at.z)) {
    const far_m = distance_m(at, nearestOnSegment(at, face.segment));
    if (!best || far_m < least_m) [best, least_m] = [face, far_m];
  }
  if (!best) return undefined;
  const place = nearestOnSegment(at, best.segment);
  const nearest: NearestFace = { ...best, at: planPoint(place.x, place.y), distance_m: least_m };
  const isBuried =
    !isInsideRegion(at, space.outline, space.holes) ||
    space.solids.some((solid) => isFullHeight(space, solid, at.z) && sideOfOutline(at, solid.footprint) === 'inside');
  return isBuried ? { ...nearest, distance_m: 0 } : nearest;
}
