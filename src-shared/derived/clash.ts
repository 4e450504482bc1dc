import type { Box } from '../geometry/outline.ts';
import { type OverFace, belowPlane_m, segmentToOverFace_m } from '../geometry/over-face.ts';
import { type Prism, segmentToPrism_m } from '../geometry/prism.ts';
import { distanceBetween3_m } from '../geometry/segment3.ts';
import type { DerivedPipe } from './derived.ts';

/** A pipe as a thing in space: its outside around its axis, with round ends half its thickness beyond its nodes. */
export type Capsule = Pick<DerivedPipe, 'from' | 'to' | 'outside_m'>;

/**
 * Clearance between the outside of a pipe and a solid that stands upright on a footprint of any shape [m].
 * @returns ≥ 0 when apart; negative by as much as the outside reaches in, down to minus half the thickness, which means
 * that the pipe's very axis touches or enters the solid
 */
export const pipeToSolid_m = ({ from, to, outside_m }: Capsule, solid: Prism): number => segmentToPrism_m({ a: from, b: to }, solid) - outside_m / 2;

/** Clearance between the outsides of two pipes with round ends [m]; negative by as much as they run into each other. */
export const pipeToPipe_m = (one: Capsule, other: Capsule): number =>
  distanceBetween3_m({ a: one.from, b: one.to }, { a: other.from, b: other.to }) - (one.outside_m + other.outside_m) / 2;

/** Whether the outside of a pipe keeps farther than `within_m` below every plane of a ceiling. */
export const isFarBelow = ({ from, to, outside_m }: Capsule, faces: readonly OverFace[], within_m: number): boolean =>
  faces.every((face) => belowPlane_m({ a: from, b: to }, face) - outside_m / 2 > within_m);

/** Clearance between the outside of a pipe and what is above the faces of a ceiling [m], as `pipeToSolid_m` counts; Infinity beyond `within_m`. */
export function pipeToCeiling_m({ from, to, outside_m }: Capsule, faces: readonly OverFace[], within_m: number): number {
  const axis = { a: from, b: to };
  let least_m = Infinity;
  for (const face of faces) {
    if (belowPlane_m(axis, face) - outside_m / 2 <= within_m) least_m = Math.min(least_m, segmentToOverFace_m(axis, face) - outside_m / 2);
  }
  return least_m <= within_m ? least_m : Infinity;
}

/** Box around the outside of a pipe on the plan, wider by a margin on every side. */
export function pipeBox({ from, to, outside_m }: Capsule, margin_m: number): Box {
  const wider_m = margin_m + outside_m / 2;
  return {
    minX: Math.min(from.x, to.x) - wider_m,
    minY: Math.min(from.y, to.y) - wider_m,
    maxX: Math.max(from.x, to.x) + wider_m,
    maxY: Math.max(from.y, to.y) + wider_m,
  };
}
