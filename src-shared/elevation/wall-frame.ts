import type { WallFace } from '../derived/derived.ts';
import { type PlanPoint, type PlanPoint3, distance_m } from '../geometry/point.ts';

/** A place on a wall as it is seen from the room: `s` along it from its left end, `z` above the finished floor, `off` out of it into the room [m]. */
export interface WallPlace {
  readonly s: number;
  readonly z: number;
  readonly off: number;
}

/** Carries places of the plan to a wall seen from the room. */
export interface WallFrame {
  readonly length_m: number;
  readonly place: (at: PlanPoint3) => WallPlace;
  /** Place of the plan on the wall face at a way from its left end. */
  readonly onFace: (s: number) => PlanPoint;
  /** How a direction of the plan is seen: to the right, and toward the viewer, as shares of it. */
  readonly seen: (angle_rad: number) => { readonly right: number; readonly toward: number };
}

/** The frame of a wall face. Who stands in the room and looks at it has the face's second end at the left. */
export function wallFrame({ segment: { a, b } }: Pick<WallFace, 'segment'>): WallFrame {
  const length_m = distance_m(a, b);
  const [rightX, rightY] = length_m === 0 ? [1, 0] : [(a.x - b.x) / length_m, (a.y - b.y) / length_m];
  // The room is on the left of a → b, so on the right of the way from left to right.
  const [inX, inY] = [rightY, -rightX];
  return {
    length_m,
    place: ({ x, y, z }) => ({ s: (x - b.x) * rightX + (y - b.y) * rightY, z, off: (x - b.x) * inX + (y - b.y) * inY }),
    onFace: (s) => ({ x: b.x + rightX * s, y: b.y + rightY * s }),
    seen: (angle_rad) => ({ right: Math.cos(angle_rad) * rightX + Math.sin(angle_rad) * rightY, toward: Math.cos(angle_rad) * inX + Math.sin(angle_rad) * inY }),
  };
}
