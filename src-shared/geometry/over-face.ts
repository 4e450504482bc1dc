import { type Outline, isInside, sidesOf } from './outline.ts';
import { type PlanPoint, type PlanPoint3, distance_m } from './point.ts';
import { type Segment, meetingOf, nearestOnSegment } from './segment.ts';
import { type Segment3, along3, distanceBetween3_m } from './segment3.ts';

/** A level or sloped face over a part of the plan, with everything above it solid: a ceiling seen from below. */
export interface OverFace {
  /** Outlines and holes of the part, wound either way; what lies in an odd number of them belongs to it. */
  readonly rings: readonly Outline[];
  /** A place on the face. */
  readonly at: PlanPoint3;
  /** Rise of the face per metre east and per metre north. */
  readonly east: number;
  readonly north: number;
}

/** Height of the face's plane over a place [m]. */
export const faceHeight_m = ({ at, east, north }: OverFace, p: PlanPoint): number => at.z + east * (p.x - at.x) + north * (p.y - at.y);

/** Distance of a segment below the face's plane, square to it [m]; negative when a part of it is above. It is never more than that to the solid. */
export const belowPlane_m = ({ a, b }: Segment3, face: OverFace): number =>
  Math.min(faceHeight_m(face, a) - a.z, faceHeight_m(face, b) - b.z) / Math.hypot(1, face.east, face.north);

const isWithin = (p: PlanPoint, rings: readonly Outline[]): boolean => rings.filter((ring) => isInside(p, ring)).length % 2 === 1;

/** Whether a segment passes over the part of the plan; touching counts. */
export const passesOver = (way: Segment, rings: readonly Outline[]): boolean =>
  isWithin(way.a, rings) || isWithin(way.b, rings) || rings.some((ring) => sidesOf(ring).some((side) => meetingOf(way, side) !== undefined));

/** The part of a segment on or above the plane of a face. */
function partAbove(axis: Segment3, face: OverFace): Segment3 | undefined {
  const from_m = axis.a.z - faceHeight_m(face, axis.a);
  const to_m = axis.b.z - faceHeight_m(face, axis.b);
  if (from_m < 0 && to_m < 0) return undefined;
  if (from_m >= 0 && to_m >= 0) return axis;
  const crossing = along3(axis, from_m / (from_m - to_m));
  return from_m >= 0 ? { a: axis.a, b: crossing } : { a: crossing, b: axis.b };
}

/**
 * Least distance from a segment to the solid above a face [m]; 0 when they touch or the segment runs inside.
 * Apart, it is between an end of the segment and the face or one of the solid's upright sides, or between the segment
 * and one of their edges.
 */
export function segmentToOverFace_m(axis: Segment3, face: OverFace): number {
  const above = partAbove(axis, face);
  if (above && passesOver(above, face.rings)) return 0;
  const ends = [axis.a, axis.b];
  const top_m = Math.max(axis.a.z, axis.b.z);
  const onFace = ({ x, y }: PlanPoint): PlanPoint3 => ({ x, y, z: faceHeight_m(face, { x, y }) });
  let least_m = Infinity;
  const square2 = 1 + face.east ** 2 + face.north ** 2;
  for (const p of ends) {
    const drop_m = (faceHeight_m(face, p) - p.z) / square2;
    const foot = { x: p.x - face.east * drop_m, y: p.y - face.north * drop_m };
    if (isWithin(foot, face.rings)) least_m = Math.min(least_m, Math.abs(drop_m) * Math.sqrt(square2));
  }
  for (const side of face.rings.flatMap(sidesOf)) {
    const a = onFace(side.a);
    least_m = Math.min(
      least_m,
      distanceBetween3_m(axis, { a, b: onFace(side.b) }),
      distanceBetween3_m(axis, { a, b: { ...a, z: Math.max(a.z, top_m) } }),
    );
    for (const p of ends) {
      const foot = nearestOnSegment(p, side);
      if (p.z >= faceHeight_m(face, foot)) least_m = Math.min(least_m, distance_m(p, foot));
    }
  }
  return least_m;
}
