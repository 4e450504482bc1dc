import { type Box, boundsOf } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, distance_m, planPoint } from '#shared/geometry/point';
import type { Segment } from '#shared/geometry/segment';
import { type SectionPath, alongOf_m } from './section-path.ts';

/** A straight piece of the way that a section follows. */
export interface Piece extends Segment {
  /** How far along the way it begins [m]. */
  readonly start_m: number;
  readonly length_m: number;
  readonly bounds: Box;
}

/** The straight pieces of a way, in order. */
export const piecesOf = ({ places }: SectionPath): Piece[] => {
  const along = alongOf_m(places);
  return places.slice(1).flatMap((b, i) => {
    const a = places[i];
    return a ? [{ a, b, start_m: along[i] ?? 0, length_m: distance_m(a, b), bounds: boundsOf([a, b]) }] : [];
  });
};

/** The plan place so far along a piece [m]. */
export const placeOn = ({ a, b, length_m }: Piece, at_m: number): PlanPoint => {
  const t = length_m === 0 ? 0 : at_m / length_m;
  return planPoint(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
};

/** Where a place appears on a straight way: along it, and how far left of it [m]. */
export function onLine({ a, b, length_m }: Piece, p: PlanPoint | PlanPoint3): { readonly s: number; readonly left_m: number } {
  const ux = (b.x - a.x) / length_m;
  const uy = (b.y - a.y) / length_m;
  return { s: (p.x - a.x) * ux + (p.y - a.y) * uy, left_m: (p.y - a.y) * ux - (p.x - a.x) * uy };
}
