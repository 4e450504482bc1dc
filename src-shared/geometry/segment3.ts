import type { PlanPoint3 } from './point.ts';

/** A straight piece in 3D from `a` to `b` [m], both ends included. */
export interface Segment3 {
  readonly a: PlanPoint3;
  readonly b: PlanPoint3;
}

const within01 = (value: number): number => Math.max(0, Math.min(1, value));

/** The place at `share` of the way from `a` (0) to `b` (1). */
export const along3 = ({ a, b }: Segment3, share: number): PlanPoint3 => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
  z: a.z + (b.z - a.z) * share,
});

/** Distance from a place to the nearest place of a segment in 3D [m], ≥ 0. */
export function distanceToSegment3_m(p: PlanPoint3, { a, b }: Segment3): number {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const uz = b.z - a.z;
  const length2 = ux * ux + uy * uy + uz * uz;
  const share = length2 === 0 ? 0 : within01(((p.x - a.x) * ux + (p.y - a.y) * uy + (p.z - a.z) * uz) / length2);
  return Math.hypot(p.x - a.x - ux * share, p.y - a.y - uy * share, p.z - a.z - uz * share);
}

/**
 * Least distance between two segments in 3D [m], ≥ 0, ends included; either may have no length.
 * It is either between an end of one and the other segment, or where the line square to both meets both within their length.
 */
export function distanceBetween3_m(first: Segment3, second: Segment3): number {
  const fromEnds_m = Math.min(
    distanceToSegment3_m(first.a, second),
    distanceToSegment3_m(first.b, second),
    distanceToSegment3_m(second.a, first),
    distanceToSegment3_m(second.b, first),
  );
  const ux = first.b.x - first.a.x;
  const uy = first.b.y - first.a.y;
  const uz = first.b.z - first.a.z;
  const vx = second.b.x - second.a.x;
  const vy = second.b.y - second.a.y;
  const vz = second.b.z - second.a.z;
  const wx = first.a.x - second.a.x;
  const wy = first.a.y - second.a.y;
  const wz = first.a.z - second.a.z;
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const spread = uu * vv - uv * uv;
  if (!(spread > 0)) return fromEnds_m;
  const uw = ux * wx + uy * wy + uz * wz;
  const vw = vx * wx + vy * wy + vz * wz;
  const s = within01((uv * vw - uw * vv) / spread);
  const t = within01((uu * vw - uv * uw) / spread);
  return Math.min(fromEnds_m, Math.hypot(wx + ux * s - vx * t, wy + uy * s - vy * t, wz + uz * s - vz * t));
}
