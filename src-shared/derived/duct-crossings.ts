import { isInside, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, bearing_rad, distance_m, midpoint, planPoint, polar } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m, meetingOf } from '../geometry/segment.ts';
import type { Level, Opening, RefOf } from '../model/plan.ts';
import { openingFace } from './behind-opening.ts';
import type { Solid, Space, WallFace } from './derived.ts';
import { rememberedPart } from './remember.ts';

/** A damper that is drawn in a wall. */
export interface Damper {
  readonly ref: RefOf<'opening'>;
  readonly opening: Opening;
}

/** A place where a duct goes through a wall of an enclosure. */
export interface DuctCrossing {
  readonly wall: RefOf<'wall'>;
  /** Width of the duct on the wall face. */
  readonly at: Segment;
  /** Dampers at that place, of this enclosure or of the one behind the wall. */
  readonly dampers: readonly Damper[];
}

/** A duct goes through a wall when it is on both sides of it by this much [m]. */
const THROUGH_m = 0.02;
/** Narrower than this a duct only touches a wall's end [m]. */
const SLIVER_m = 0.005;
/** A damper is at a crossing when it is no farther off than a wall is thick [m]. */
const THICKEST_WALL_m = 0.6;
/** Faces of one wall run the same way, within this [rad]. */
const ALIKE_rad = Math.PI / 12;

/** Where a footprint covers a wall face, as stretches of it. */
function coveredOf({ a, b }: Segment, footprint: Solid['footprint']): Segment[] {
  const length_m = distance_m(a, b);
  const along_rad = bearing_rad(a, b);
  const cuts = sidesOf(footprint).flatMap((side) => {
    const met = meetingOf({ a, b }, side);
    return met ? [distance_m(a, met)] : [];
  });
  const marks = [...new Set([0, ...cuts, length_m])].sort((one, other) => one - other);
  const on = (along_m: number): PlanPoint => polar(planPoint(a.x, a.y), along_rad, along_m);
  return marks.flatMap((from_m, i) => {
    const to_m = marks[i + 1];
    if (to_m === undefined || to_m - from_m < SLIVER_m || !isInside(on((from_m + to_m) / 2), footprint)) return [];
    return [{ a: on(from_m), b: on(to_m) }];
  });
}

function isThrough({ inward_rad }: WallFace, at: Segment, footprint: Solid['footprint']): boolean {
  const middle = midpoint(at.a, at.b);
  return isInside(polar(middle, inward_rad, THROUGH_m), footprint) && isInside(polar(middle, inward_rad, -THROUGH_m), footprint);
}

/** Heights of an enclosure that agent fills: its room and its protected voids, each from below to above; open above while the height is unknown. */
const filledOf = (spaces: readonly Space[]): (readonly [bottom_m: number, top_m: number])[] =>
  spaces.filter(({ isProtected }) => isProtected).map(({ floor_m, tallest_m }) => [floor_m, tallest_m ?? Infinity]);

const isWithin = ({ bottom_m, top_m }: { readonly bottom_m: number; readonly top_m: number }, heights: readonly (readonly [number, number])[]): boolean => heights.some(([low_m, high_m]) => top_m > low_m && bottom_m < high_m);

/** Every damper of a level with its place on the plan. */
const dampersOf = rememberedPart((enclosures: Level['enclosures'], level: string) =>
  Object.values(enclosures).flatMap((enclosure) =>
    Object.values(enclosure.openings).flatMap((opening) => {
      const face = opening.kind === 'damper' ? openingFace(enclosure, opening) : undefined;
      return face ? [{ ref: { kind: 'opening', level, enclosure: enclosure.id, id: opening.id } as const, opening, face }] : [];
    }),
  ),
);

const sameWay = (one: Segment, other: Segment): boolean => Math.abs(Math.sin(bearing_rad(one.a, one.b) - bearing_rad(other.a, other.b))) <= Math.sin(ALIKE_rad);

/**
 * Where a duct goes through the walls of an enclosure, at a height that agent fills. A duct that only reaches a wall goes
 * through none.
 * @param duct    a solid of the level
 * @param spaces  the room of the enclosure and its voids
 */
export function ductCrossingsOf(duct: Solid, spaces: readonly Space[], level: Level): DuctCrossing[] {
  const [room] = spaces;
  if (!room || !isWithin(duct, filledOf(spaces))) return [];
  const dampers = dampersOf(level.enclosures, level.id);
  return room.walls.flatMap((face) =>
    coveredOf(face.segment, duct.footprint)
      .filter((at) => isThrough(face, at, duct.footprint))
      .map((at): DuctCrossing => ({
        wall: face.ref,
        at,
        dampers: dampers
          .filter(({ opening, face: own }) => {
            const isNear = distanceToSegment_m(midpoint(own.a, own.b), at) <= THICKEST_WALL_m && sameWay(own, at);
            return isNear && duct.top_m > opening.bottom_m && duct.bottom_m < opening.bottom_m + opening.height_m;
          })
          .map(({ ref, opening }) => ({ ref, opening })),
      })),
  );
}

/** The ducts that go through the walls of an enclosure, each with the places where. */
export function ductsThrough(spaces: readonly Space[], level: Level): { readonly duct: Solid; readonly crossings: readonly DuctCrossing[] }[] {
  const ducts = new Set(spaces.flatMap(({ solids }) => solids.filter(({ obstruction }) => obstruction.kind === 'duct')));
  return [...ducts].flatMap((duct) => {
    const crossings = ductCrossingsOf(duct, spaces, level);
    return crossings.length > 0 ? [{ duct, crossings }] : [];
  });
}
