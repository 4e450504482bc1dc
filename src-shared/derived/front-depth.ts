import { isInsideOrOn } from '../geometry/inside.ts';
import { sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, polar } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Space } from './derived.ts';

/** What a person works under: things above it leave the floor free [m]. */
const HEADROOM_m = 2;

/** Where the working space of a cylinder begins, which way it goes, and half its width [m]. */
export interface Front {
  readonly at: PlanPoint;
  readonly front_rad: number;
  readonly radius_m: number;
}

/** Another cylinder in the room. */
export interface OtherCylinder {
  readonly name: string;
  readonly at: PlanPoint;
  readonly radius_m: number;
}

/** The first thing in front of a cylinder. */
export interface InFront {
  readonly name: string;
  /** From the outside of the cylinder to it [m], ≥ 0. */
  readonly depth_m: number;
}

/** How far along its front a cylinder sees a segment in its own width [m] from its axis, ≥ 0; undefined beside or behind it. */
function segmentAhead_m({ at, front_rad, radius_m }: Front, { a, b }: Segment): number | undefined {
  const [cos, sin] = [Math.cos(front_rad), Math.sin(front_rad)];
  const along = (p: PlanPoint): number => (p.x - at.x) * cos + (p.y - at.y) * sin;
  const aside = (p: PlanPoint): number => (p.y - at.y) * cos - (p.x - at.x) * sin;
  const half_m = radius_m - SAME_PLACE_m;
  const [v0, v1] = [aside(a), aside(b)];
  if (Math.max(v0, v1) <= -half_m || Math.min(v0, v1) >= half_m) return undefined;
  const shareAt = (v: number): number => Math.min(1, Math.max(0, (v - v0) / (v1 - v0)));
  const [from, to] = v0 === v1 ? [0, 1] : [shareAt(-half_m), shareAt(half_m)];
  const [u0, u1] = [along(a), along(b)];
  const ahead = [from, to].map((share) => u0 + (u1 - u0) * share);
  return Math.max(...ahead) < 0 ? undefined : Math.max(0, Math.min(...ahead));
}

/** The same for a round thing. */
function circleAhead_m({ at, front_rad, radius_m }: Front, other: OtherCylinder): number | undefined {
  const along = (other.at.x - at.x) * Math.cos(front_rad) + (other.at.y - at.y) * Math.sin(front_rad);
  const aside = Math.abs((other.at.y - at.y) * Math.cos(front_rad) - (other.at.x - at.x) * Math.sin(front_rad));
  const beyond_m = Math.max(0, aside - radius_m);
  if (beyond_m >= other.radius_m - SAME_PLACE_m || along < 0) return undefined;
  return Math.max(0, along - Math.sqrt(other.radius_m ** 2 - beyond_m ** 2));
}

/**
 * The first thing that stands in front of a cylinder, within its own width: a wall of its room, a thing that reaches
 * below 2 m, or another cylinder. Undefined where nothing does, which only a cylinder at the edge of a room sees.
 */
export function inFrontOf(front: Front, room: Space, others: readonly OtherCylinder[]): InFront | undefined {
  const seen: { name: string; ahead_m: number | undefined }[] = [
    ...room.walls.map(({ segment }) => ({ name: 'the wall', ahead_m: segmentAhead_m(front, segment) })),
    ...room.solids
      .filter(({ bottom_m, top_m }) => bottom_m < HEADROOM_m && top_m > 0)
      .flatMap(({ footprint, obstruction }) => {
        const name = obstruction.name || 'an obstruction';
        if (isInsideOrOn(front.at, footprint)) return [{ name, ahead_m: 0 }];
        return sidesOf(footprint).map((side) => ({ name, ahead_m: segmentAhead_m(front, side) }));
      }),
    ...others.map((other) => ({ name: other.name, ahead_m: circleAhead_m(front, other) })),
  ];
  const [first] = seen.flatMap(({ name, ahead_m }) => (ahead_m === undefined ? [] : [{ name, depth_m: Math.max(0, ahead_m - front.radius_m) }])).sort((a, b) => a.depth_m - b.depth_m);
  return first;
}

/** The floor in front of a cylinder to a depth, in its width, as a closed ring. */
export function frontZone({ at, front_rad, radius_m }: Front, depth_m: number): PlanPoint[] {
  const [left, right] = [polar(at, front_rad + Math.PI / 2, radius_m), polar(at, front_rad - Math.PI / 2, radius_m)];
  return [polar(right, front_rad, radius_m), polar(right, front_rad, radius_m + depth_m), polar(left, front_rad, radius_m + depth_m), polar(left, front_rad, radius_m)];
}
