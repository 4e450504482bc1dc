import { type Outline, isInside } from './outline.ts';
import type { PlanPoint, PlanPoint3 } from './point.ts';
import { type Segment3, along3, distanceBetween3_m } from './segment3.ts';

/** A solid that stands upright on a footprint of any shape, between two heights [m]. */
export interface Prism {
  readonly footprint: Outline;
  /** Rings cut out of the footprint. */
  readonly holes?: readonly Outline[];
  readonly bottom_m: number;
  readonly top_m: number;
}

/** Least distance between a straight axis and an upright prism [m]; 0 when they touch or the axis runs inside. */
export function segmentToPrism_m(axis: Segment3, prism: Prism): number {
  const { bottom_m, top_m } = prism;
  const [low_m, high_m] = axis.a.z < axis.b.z ? [axis.a.z, axis.b.z] : [axis.b.z, axis.a.z];
  if (high_m <= bottom_m) return pieceToPrism_m(axis, prism, bottom_m);
  if (low_m >= top_m) return pieceToPrism_m(axis, prism, top_m);
  if (low_m >= bottom_m && high_m <= top_m) return pieceToPrism_m(axis, prism, undefined);
  // Where the axis changes from below the prism to beside it and to above it, as shares of its way.
  const rise = axis.b.z - axis.a.z;
  const shares = [0, 1];
  for (const level_m of [bottom_m, top_m]) {
    const share = (level_m - axis.a.z) / rise;
    if (share > 0 && share < 1) shares.push(share);
  }
  shares.sort((a, b) => a - b);
  let least_m = Infinity;
  for (let i = 1; i < shares.length; i += 1) {
    const piece = { a: along3(axis, shares[i - 1] ?? 0), b: along3(axis, shares[i] ?? 1) };
    const middle_m = (piece.a.z + piece.b.z) / 2;
    const lift_m = middle_m < bottom_m ? bottom_m : middle_m > top_m ? top_m : undefined;
    least_m = Math.min(least_m, pieceToPrism_m(piece, prism, lift_m));
  }
  return least_m;
}

const NO_HOLES: readonly Outline[] = [];
const onto = (p: PlanPoint | PlanPoint3, z: number): PlanPoint3 => ({ x: p.x, y: p.y, z });

/**
 * Distance from a piece of an axis that lies wholly below, beside or above a prism.
 * @param lift_m height of the edges it faces [m]; undefined beside the prism, where heights do not count
 */
function pieceToPrism_m(piece: Segment3, { footprint, holes = NO_HOLES }: Prism, lift_m: number | undefined): number {
  const axis: Segment3 = lift_m === undefined ? { a: onto(piece.a, 0), b: onto(piece.b, 0) } : piece;
  const edge_m = lift_m ?? 0;
  const isOver = (p: PlanPoint3): boolean => isInside(p, footprint) && !holes.some((hole) => isInside(p, hole));
  // Over or under the footprint only the height counts: least at one end of the part over it. Its other ends lie on the sides.
  let least_m = Math.min(isOver(axis.a) ? Math.abs(axis.a.z - edge_m) : Infinity, isOver(axis.b) ? Math.abs(axis.b.z - edge_m) : Infinity);
  for (const ring of [footprint, ...holes]) {
    let before = ring.at(-1);
    for (const corner of ring) {
      if (least_m === 0) return 0;
      if (before) least_m = Math.min(least_m, distanceBetween3_m(axis, { a: onto(before, edge_m), b: onto(corner, edge_m) }));
      before = corner;
    }
  }
  return least_m;
}
