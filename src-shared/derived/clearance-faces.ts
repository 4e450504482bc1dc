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
  if (!isThere(solid)) return false;
  const { footprint, bottom_m, top_m } = solid;
  const floors = footprint.map((corner) => floorAt_m(space, corner) ?? space.floor_m);
  if (bottom_m > Math.max(...floors) + JOINT_m) return false;
  const ceilings = footprint.map((corner) => space.ceilingAt_m(corner));
  if (ceilings.includes(undefined)) return top_m > orifice_m;
  return top_m >= Math.min(...ceilings.map((ceiling_m) => ceiling_m ?? Infinity)) - JOINT_m;
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
  let nearest: NearestFace | undefined;
  for (const face of governingFaces(space, at.z)) {
    const place = nearestOnSegment(at, face.segment);
    const far_m = distance_m(at, place);
    if (!nearest || far_m < nearest.distance_m) nearest = { ...face, at: planPoint(place.x, place.y), distance_m: far_m };
  }
  if (!nearest) return undefined;
  const isBuried =
    !isInsideRegion(at, space.outline, space.holes) ||
    space.solids.some((solid) => isFullHeight(space, solid, at.z) && sideOfOutline(at, solid.footprint) === 'inside');
  return isBuried ? { ...nearest, distance_m: 0 } : nearest;
}
