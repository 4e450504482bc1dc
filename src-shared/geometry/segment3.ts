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
export const distanceToSegment3_m = (p: PlanPoint3, segment: Segment3): number => distanceBetween3_m({ a: p, b: p }, segment);

/**
 * Least distance between two segments in 3D [m], ≥ 0, ends included; either may have no length.
 * The square of the distance is convex in both shares of the way, so that clamping one share after the other finds its minimum.
 * Source: closest points of two segments, Ericson, Real-Time Collision Detection (2005), 5.1.9, from memory; tested by sampling.
 */
export function distanceBetween3_m(first: Segment3, second: Segment3): number {
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
  const uw = ux * wx + uy * wy + uz * wz;
  const vw = vx * wx + vy * wy + vz * wz;
  const uv = ux * vx + uy * vy + uz * vz;
  let s = 0;
  let t = 0;
  if (vv === 0) s = uu === 0 ? 0 : within01(-uw / uu);
  else if (uu === 0) t = within01(vw / vv);
  else {
    const spread = uu * vv - uv * uv;
    s = spread > 1e-14 * uu * vv ? within01((uv * vw - uw * vv) / spread) : 0;
    t = (uv * s + vw) / vv;
    if (t < 0 || t > 1) {
      t = within01(t);
      s = within01((uv * t - uw) / uu);
    }
  }
  return Math.hypot(wx + ux * s - vx * t, wy + uy * s - vy * t, wz + uz * s - vz * t);
}
