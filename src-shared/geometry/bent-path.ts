import type { PlanPoint3 } from './point.ts';
import type { Direction3 } from './vector3.ts';

/** An end of a curve in space: a place, and the direction in which the curve passes it. */
export interface DirectedEnd {
  readonly at: PlanPoint3;
  readonly way: Direction3;
}

/** A piece of a curve made of arcs and straights: an arc bends by `turn_rad` from its way toward `normal`. */
export type BentPiece =
  | { readonly kind: 'straight'; readonly start: DirectedEnd; readonly length_m: number }
  | { readonly kind: 'arc'; readonly start: DirectedEnd; /** Square to the way, toward the centre. */ readonly normal: Direction3; readonly turn_rad: number; readonly length_m: number };

/** A smooth curve in space of arcs of one radius and straights, from one end to the other. */
export interface BentPath {
  readonly radius_m: number;
  readonly length_m: number;
  readonly pieces: readonly BentPiece[];
}

/** `a·u + b·v`, of directions or displacements. */
export const mixed = (a: number, u: Direction3, b: number, v: Direction3): Direction3 => ({ x: a * u.x + b * v.x, y: a * u.y + b * v.y, z: a * u.z + b * v.z });

/** Scalar product. */
export const dot3 = (u: Direction3, v: Direction3): number => u.x * v.x + u.y * v.y + u.z * v.z;

/** Vector product. */
export const cross3 = (u: Direction3, v: Direction3): Direction3 => ({ x: u.y * v.z - u.z * v.y, y: u.z * v.x - u.x * v.z, z: u.x * v.y - u.y * v.x });

/** A direction square to another. */
export function squareTo(way: Direction3): Direction3 {
  const { x, y, z } = way;
  const least = Math.min(Math.abs(x), Math.abs(y), Math.abs(z));
  const other = Math.abs(z) === least ? { x: 0, y: 0, z: 1 } : Math.abs(x) === least ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
  const across = cross3(way, other);
  const length = Math.hypot(across.x, across.y, across.z);
  return { x: across.x / length, y: across.y / length, z: across.z / length };
}

/** The place and direction a length along a straight, or along an arc of a radius. */
function after(start: DirectedEnd, normal: Direction3 | undefined, radius_m: number, length_m: number): DirectedEnd {
  if (!normal) return { at: mixed(1, start.at, length_m, start.way), way: start.way };
  const turn_rad = length_m / radius_m;
  const offset = mixed(radius_m * Math.sin(turn_rad), start.way, radius_m * (1 - Math.cos(turn_rad)), normal);
  return { at: mixed(1, start.at, 1, offset), way: mixed(Math.cos(turn_rad), start.way, Math.sin(turn_rad), normal) };
}

/**
 * Puts a curve together from its first end.
 * @param steps  in order: an arc with its normal at its start, or a straight without one; lengths [m], ≥ 0
 */
export function bentPath(from: DirectedEnd, radius_m: number, steps: readonly { readonly normal?: (way: Direction3) => Direction3; readonly length_m: number }[]): BentPath {
  let start = from;
  const pieces: BentPiece[] = [];
  for (const { normal, length_m } of steps) {
    if (length_m <= 1e-12) continue;
    const toward = normal?.(start.way);
    pieces.push(toward ? { kind: 'arc', start, normal: toward, turn_rad: length_m / radius_m, length_m } : { kind: 'straight', start, length_m });
    start = after(start, toward, radius_m, length_m);
  }
  return { radius_m, length_m: pieces.reduce((sum, piece) => sum + piece.length_m, 0), pieces };
}

/** Place and direction at a length along a curve [m]; its last end beyond it. */
export function onBentPath({ radius_m, pieces }: BentPath, along_m: number): DirectedEnd | undefined {
  let left_m = Math.max(0, along_m);
  for (const piece of pieces) {
    if (left_m <= piece.length_m || piece === pieces.at(-1)) return after(piece.start, piece.kind === 'arc' ? piece.normal : undefined, radius_m, Math.min(left_m, piece.length_m));
    left_m -= piece.length_m;
  }
  return undefined;
}

/** Greatest turn between two places of a drawn arc [rad]. */
const STEP_rad = Math.PI / 24;

/** Places along a curve, close enough to draw it round, both ends included. */
export function placesAlong({ radius_m, pieces }: BentPath): PlanPoint3[] {
  const places: PlanPoint3[] = [];
  for (const piece of pieces) {
    const normal = piece.kind === 'arc' ? piece.normal : undefined;
    const steps = piece.kind === 'arc' ? Math.max(1, Math.ceil(piece.turn_rad / STEP_rad)) : 1;
    if (places.length === 0) places.push(piece.start.at);
    for (let i = 1; i <= steps; i += 1) places.push(after(piece.start, normal, radius_m, (piece.length_m * i) / steps).at);
  }
  return places;
}
