import RBush from 'rbush';
import { type Box, type Outline, boundsOf } from '../geometry/outline.ts';
import { midpoint, polar } from '../geometry/point.ts';
import type { Prism } from '../geometry/prism.ts';
import { type Segment, rayHit_m } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Enclosure } from '../model/plan.ts';
import type { Space, WallFace } from './derived.ts';
import { rememberedPart } from './remember.ts';

/** A wall of a room as a solid: from its face outwards. */
export interface SolidWall {
  readonly enclosure: Enclosure;
  readonly face: WallFace;
  readonly prism: Prism;
  readonly bounds: Box;
  readonly thick_m: number;
  /** A room drawn behind it says how thick it is. */
  readonly isDrawn: boolean;
}

/** The slab under a room, or under its raised floor. */
export interface SolidFloor {
  readonly enclosure: Enclosure;
  readonly prism: Prism;
  readonly bounds: Box;
}

/** Rooms whose faces are farther apart than this have no wall in common [m]. */
const THICKEST_m = 0.6;
/** Walls and slabs of which nothing says how thick they are count as 8 in (common practice: a course of block) [m]. */
export const ASSUMED_THICK_m = 0.2032;

/** The slab that no pipe lies in: below the finished floor, or below the void under a raised floor, which pipe may pass. */
const floorOf = rememberedPart(
  (enclosure: Enclosure, outline: Outline, holes: readonly Outline[]): SolidFloor => {
    const top_m = -(enclosure.underFloor?.depth_m ?? 0);
    return { enclosure, prism: { footprint: outline, holes, bottom_m: top_m - ASSUMED_THICK_m, top_m }, bounds: boundsOf(outline) };
  },
);

/** The slab under a room. */
export const solidFloorOf = ({ enclosure, outline, holes }: Space): SolidFloor => floorOf(enclosure, outline, holes);

interface FaceBox extends Box {
  readonly room: Space;
  readonly segment: Segment;
}

const keptWalls = new WeakMap<WallFace, SolidWall>();

function wallOf(face: WallFace, room: Space, thick_m: number, isDrawn: boolean): SolidWall {
  const last = keptWalls.get(face);
  if (last && last.enclosure === room.enclosure && last.thick_m === thick_m) return last;
  const { a, b } = face.segment;
  const out_rad = face.inward_rad + Math.PI;
  const isCorner = (p: typeof a): boolean => room.convexCorners.some(({ at }) => at === p);
  // Walls that meet in a corner of the room fill the corner behind it too.
  const along_rad = face.inward_rad - Math.PI / 2;
  const start = isCorner(a) ? polar(a, along_rad, -thick_m) : a;
  const end = isCorner(b) ? polar(b, along_rad, thick_m) : b;
  const footprint = [start, end, polar(end, out_rad, thick_m), polar(start, out_rad, thick_m)];
  const made: SolidWall = {
    enclosure: room.enclosure,
    face,
    prism: { footprint, bottom_m: -(room.enclosure.underFloor?.depth_m ?? 0), top_m: (room.tallest_m ?? Infinity) + (room.enclosure.ceilingVoid?.depth_m ?? 0) },
    bounds: boundsOf(footprint),
    thick_m,
    isDrawn,
  };
  if (Object.isFrozen(room.enclosure)) keptWalls.set(face, made);
  return made;
}

/**
 * The walls of the rooms of a level as solids. A wall is as thick as it is to the face of another room drawn behind it, up
 * to 0.6 m, seen from its middle and from near its ends; else it counts as 8 in.
 */
export function solidWallsOf(rooms: readonly Space[]): SolidWall[] {
  const index = new RBush<FaceBox>();
  index.load(rooms.flatMap((room) => room.walls.map(({ segment }) => ({ ...boundsOf([segment.a, segment.b]), room, segment }))));
  return rooms.flatMap((room) =>
    room.walls.map((face) => {
      const { a, b } = face.segment;
      const out_rad = face.inward_rad + Math.PI;
      const middle = midpoint(a, b);
      const from = [middle, midpoint(a, midpoint(a, middle)), midpoint(b, midpoint(b, middle))].map((p) => polar(p, out_rad, -SAME_PLACE_m));
      const hits = from.flatMap((p) => {
        const box = boundsOf([p, polar(p, out_rad, THICKEST_m + SAME_PLACE_m)]);
        const near = { minX: box.minX - SAME_PLACE_m, minY: box.minY - SAME_PLACE_m, maxX: box.maxX + SAME_PLACE_m, maxY: box.maxY + SAME_PLACE_m };
        return index.search(near).flatMap((other) => (other.room === room ? [] : (rayHit_m(p, out_rad, other.segment) ?? [])));
      });
      const least_m = Math.min(...hits) - SAME_PLACE_m;
      const isDrawn = least_m <= THICKEST_m;
      return wallOf(face, room, isDrawn ? Math.max(0, least_m) : ASSUMED_THICK_m, isDrawn);
    }),
  );
}
