import { turnTo_rad } from '../geometry/angle.ts';
import { momentsOf } from '../geometry/moments.ts';
import { type Box, type Outline, boundsOf, signedArea_m2 } from '../geometry/outline.ts';
import { bearing_rad, distance_m, type PlanPoint } from '../geometry/point.ts';
import { SAME_PLACE_m, SLIVER_m2 } from '../geometry/tolerance.ts';
import type { Corner, Enclosure } from '../model/plan.ts';
import { type Ceiling, ceilingOf } from './ceiling.ts';
import type { ConvexCorner, WallFace } from './derived.ts';
import { type Region, differenceOf, fillOf } from './polygon-sums.ts';
import { rememberedPart } from './remember.ts';

/** What an enclosure and the voids under and over it have in common. */
export interface EnclosureShape {
  /** Closed ring, counter-clockwise; holes are clockwise. */
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly walls: readonly WallFace[];
  readonly convexCorners: readonly ConvexCorner[];
  readonly bounds: Box;
  /** Floor without holes. */
  readonly floor: Region;
  readonly area_m2: number;
  readonly ceiling: Ceiling;
}

/** Corners that turn less than this are float noise on a straight wall [rad]. */
const STRAIGHT_rad = 1e-6;

/**
 * The walls of one ring with the room on their left: an outline is walked counter-clockwise, a hole clockwise.
 * Corners on top of the next one have no wall and are left out.
 */
function facesOf(corners: readonly Corner[], walk: 'outline' | 'hole', ref: { readonly level: string; readonly enclosure: string }): WallFace[] {
  const apart = corners.filter((corner, i) => distance_m(corner, corners[(i + 1) % corners.length] ?? corner) > SAME_PLACE_m);
  const places: PlanPoint[] = apart.map(({ x, y }) => ({ x, y }));
  const isReversed = signedArea_m2(places) > 0 !== (walk === 'outline');
  const faces = apart.map(({ id }, i): WallFace => {
    const here = places[i] ?? { x: 0, y: 0 };
    const next = places[(i + 1) % places.length] ?? here;
    const segment = isReversed ? { a: next, b: here } : { a: here, b: next };
    return { ref: { kind: 'wall', ...ref, id }, segment, inward_rad: bearing_rad(segment.a, segment.b) + Math.PI / 2 };
  });
  return isReversed ? faces.reverse() : faces;
}

/** The corners between the faces of one ring where the room turns by less than half a turn. */
const convexCornersOf = (faces: readonly WallFace[]): ConvexCorner[] =>
  faces.flatMap((face, i) => {
    const before = faces.at(i - 1);
    if (!before || before === face) return [];
    return turnTo_rad(before.inward_rad, face.inward_rad) > STRAIGHT_rad ? [{ at: face.segment.a, faces: [before, face] as const }] : [];
  });

/** Derives walls, corners, floor and ceiling of an enclosure on a level. */
export const shapeOf = rememberedPart((enclosure: Enclosure, level: string): EnclosureShape => {
  const ref = { level, enclosure: enclosure.id };
  const rings = [facesOf(enclosure.outline, 'outline', ref), ...enclosure.holes.map((hole) => facesOf(hole, 'hole', ref))];
  const [outline = [], ...holes] = rings.map((faces) => faces.map(({ segment }) => segment.a));
  const floor = differenceOf(fillOf([outline]), [fillOf(holes)]);
  const drawn_m2 = momentsOf([outline, ...holes]).area_m2;
  const summed_m2 = momentsOf(floor).area_m2;
  // The corners as drawn give the area without the grid of the polygon sums, but only while no ring crosses another.
  const area_m2 = Math.max(0, Math.abs(drawn_m2 - summed_m2) < SLIVER_m2 ? drawn_m2 : summed_m2);
  return {
    outline,
    holes,
    walls: rings.flat(),
    convexCorners: rings.flatMap(convexCornersOf),
    bounds: boundsOf(outline),
    floor,
    area_m2,
    ceiling: ceilingOf(enclosure, floor, area_m2),
  };
});
