import type { DerivedNozzle, Space, WallFace } from '#shared/derived/derived';
import { axisAngle_rad } from '#shared/geometry/angle';
import { type PlanPoint, distance_m } from '#shared/geometry/point';
import { nearestOnSegment } from '#shared/geometry/segment';

/** A distance that is read while a nozzle is moved. */
export interface LiveDistance {
  readonly from: PlanPoint;
  /** Foot on the finished face. */
  readonly to: PlanPoint;
  readonly length_m: number;
}

/** Two walls this far from parallel fix a place [rad]. */
const APART_rad = Math.PI / 6;

/** Distances to the two walls that fix a place in a space: the nearest one, and the nearest that runs another way. */
export function governingWalls(at: PlanPoint, space: Pick<Space, 'walls'>): LiveDistance[] {
  const measured = space.walls
    .map((face) => ({ face, to: nearestOnSegment(at, face.segment) }))
    .map(({ face, to }) => ({ face, to, length_m: distance_m(at, to) }))
    .sort((a, b) => a.length_m - b.length_m);
  const first = measured[0];
  if (!first) return [];
  const second = measured.find(({ face }) => axisAngle_rad(first.face.inward_rad, face.inward_rad) > APART_rad && isSquare(at, face));
  return [first, ...(second ? [second] : [])].map(({ to, length_m }) => ({ from: at, to, length_m }));
}

/** Whether the foot of a place on a face lies within the face, so that a tape can be held square to it. */
function isSquare(at: PlanPoint, { segment: { a, b } }: WallFace): boolean {
  const along = (at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y);
  return along >= 0 && along <= (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
}

/** How far the ceiling above a nozzle is from its orifice [m]; undefined while the ceiling is not known. */
export const ceilingDrop_m = ({ at, localCeiling_m }: Pick<DerivedNozzle, 'at' | 'localCeiling_m'>): number | undefined =>
  at && localCeiling_m !== undefined ? localCeiling_m - at.z : undefined;
