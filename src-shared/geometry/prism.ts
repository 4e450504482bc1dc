import { type Outline, isInside } from './outline.ts';
import type { PlanPoint3 } from './point.ts';
import { type Segment3, along3, squareBetween3_m2 } from './segment3.ts';

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

/**
 * Distance from a piece of an axis that lies wholly below, beside or above a prism.
 * @param lift_m height of the edges it faces [m]; undefined beside the prism, where heights do not count
 */
function pieceToPrism_m({ a, b }: Segment3, { footprint, holes = NO_HOLES }: Prism, lift_m: number | undefined): number {
  const edge_m = lift_m ?? 0;
  const fromA_m = lift_m === undefined ? 0 : Math.abs(a.z - edge_m);
  const fromB_m = lift_m === undefined ? 0 : Math.abs(b.z - edge_m);
  const isOver = (p: PlanPoint3): boolean => isInside(p, footprint) && !holes.some((hole) => isInside(p, hole));
  // Over or under the footprint only the height counts: least at one end of the part over it. Its other ends lie on the sides.
  const ends_m = Math.min(isOver(a) ? fromA_m : Infinity, isOver(b) ? fromB_m : Infinity);
  if (ends_m === 0) return 0;
  const az = lift_m === undefined ? 0 : a.z;
  const bz = lift_m === undefined ? 0 : b.z;
  let least2 = Infinity;
  const ring2 = (ring: Outline): void => {
    let before = ring[ring.length - 1];
    for (let i = 0; i < ring.length; i += 1) {
      const corner = ring[i];
      if (before && corner) least2 = Math.min(least2, squareBetween3_m2(a.x, a.y, az, b.x, b.y, bz, before.x, before.y, edge_m, corner.x, corner.y, edge_m));
      before = corner;
    }
  };
  ring2(footprint);
  for (const hole of holes) ring2(hole);
  return Math.min(ends_m, Math.sqrt(least2));
}
