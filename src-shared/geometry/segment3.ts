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

/** Square of the distance from a place to the segment that starts at `a` and goes on by `u` [m²]; in bare numbers, since it is asked by the hundred thousand. */
function toSegment2(px: number, py: number, pz: number, ax: number, ay: number, az: number, ux: number, uy: number, uz: number, uu: number): number {
  const wx = px - ax;
  const wy = py - ay;
  const wz = pz - az;
  const share = uu === 0 ? 0 : within01((wx * ux + wy * uy + wz * uz) / uu);
  const x = wx - ux * share;
  const y = wy - uy * share;
  const z = wz - uz * share;
  return x * x + y * y + z * z;
}

/** Distance from a place to the nearest place of a segment in 3D [m], ≥ 0. */
export function distanceToSegment3_m(p: PlanPoint3, { a, b }: Segment3): number {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const uz = b.z - a.z;
  return Math.sqrt(toSegment2(p.x, p.y, p.z, a.x, a.y, a.z, ux, uy, uz, ux * ux + uy * uy + uz * uz));
}

/**
 * Square of the least distance between two segments in 3D [m²], ≥ 0, in bare numbers: from a to b, and from c to d.
 * It is either between an end of one and the other segment, or where the line square to both meets both within their length.
 */
export function squareBetween3_m2(ax: number, ay: number, az: number, bx: number, by: number, bz: number, cx: number, cy: number, cz: number, dx: number, dy: number, dz: number): number {
  const ux = bx - ax;
  const uy = by - ay;
  const uz = bz - az;
  const vx = dx - cx;
  const vy = dy - cy;
  const vz = dz - cz;
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const fromEnds = Math.min(
    toSegment2(ax, ay, az, cx, cy, cz, vx, vy, vz, vv),
    toSegment2(bx, by, bz, cx, cy, cz, vx, vy, vz, vv),
    toSegment2(cx, cy, cz, ax, ay, az, ux, uy, uz, uu),
    toSegment2(dx, dy, dz, ax, ay, az, ux, uy, uz, uu),
  );
  const uv = ux * vx + uy * vy + uz * vz;
  const spread = uu * vv - uv * uv;
  if (!(spread > 0)) return fromEnds;
  const wx = ax - cx;
  const wy = ay - cy;
  const wz = az - cz;
  const uw = ux * wx + uy * wy + uz * wz;
  const vw = vx * wx + vy * wy + vz * wz;
  const s = within01((uv * vw - uw * vv) / spread);
  const t = within01((uu * vw - uv * uw) / spread);
  const x = wx + ux * s - vx * t;
  const y = wy + uy * s - vy * t;
  const z = wz + uz * s - vz * t;
  return Math.min(fromEnds, x * x + y * y + z * z);
}

/** Least distance between two segments in 3D [m], ≥ 0, ends included; either may have no length. */
export const distanceBetween3_m = ({ a, b }: Segment3, { a: c, b: d }: Segment3): number =>
  Math.sqrt(squareBetween3_m2(a.x, a.y, a.z, b.x, b.y, b.z, c.x, c.y, c.z, d.x, d.y, d.z));
