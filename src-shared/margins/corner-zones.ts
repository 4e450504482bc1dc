import type { ConvexCorner, Space } from '../derived/derived.ts';
import { type Region, fillOf, intersectionOf } from '../derived/polygon-sums.ts';
import { straightRunOf } from '../derived/wall-runs.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import type { Outline } from '../geometry/outline.ts';
import { ringAroundSegment, ringInsideSegment } from '../geometry/round-rings.ts';
import type { WallFace } from '../derived/derived.ts';

/** Where a nozzle stands in a corner. */
export interface CornerZone {
  readonly corner: ConvexCorner;
  /** All faces of its two walls. */
  readonly walls: readonly WallFace[];
  /** Never too small. */
  readonly outer: Region;
  /** Never too large. */
  readonly inner: Region;
}

/** The part of a ring in front of a face. */
const before = (ring: Outline, { segment: { a }, inward_rad }: WallFace): Outline => {
  const [x, y] = [Math.cos(inward_rad), Math.sin(inward_rad)];
  return clipToHalfPlane(ring, { x: -x, y: -y, limit: -(a.x * x + a.y * y) });
};

/** The zones of all corners of a space: in front of both walls, and no farther from either than the zone. */
export const cornerZonesOf = (space: Space, zone_m: number): CornerZone[] =>
  space.convexCorners.map((corner) => {
    const runs = corner.faces.map((face) => straightRunOf(space, face));
    const zone = (around: typeof ringAroundSegment): Region => {
      const [first, second] = runs.map((run) =>
        fillOf(run.map(({ segment }) => corner.faces.reduce((ring, face) => before(ring, face), around(segment, zone_m) as Outline)).filter((ring) => ring.length > 0)),
      );
      return intersectionOf(first ?? [], second ?? []);
    };
    return { corner, walls: runs.flat(), outer: zone(ringAroundSegment), inner: zone(ringInsideSegment) };
  });
