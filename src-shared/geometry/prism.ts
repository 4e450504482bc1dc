import { type Outline, isInside, sidesOf } from './outline.ts';
import type { PlanPoint3 } from './point.ts';
import { type Segment3, along3, distanceBetween3_m } from './segment3.ts';

/** A solid that stands upright on a footprint of any shape, between two heights [m]. */
export interface Prism {
  readonly footprint: Outline;
  readonly bottom_m: number;
  readonly top_m: number;
}

/** Least distance between a straight axis and an upright prism [m]; 0 when they touch or the axis runs inside. */
export function segmentToPrism_m(axis: Segment3, { footprint, bottom_m, top_m }: Prism): number {
  // Where the axis changes from below the prism to beside it and to above it, as shares of its way.
  const rise = axis.b.z - axis.a.z;
  const shares = [0, 1];
  for (const level_m of [bottom_m, top_m]) {
    const share = rise === 0 ? -1 : (level_m - axis.a.z) / rise;
    if (share > 0 && share < 1) shares.push(share);
  }
  shares.sort((a, b) => a - b);
  let least_m = Infinity;
  for (const [i, from] of shares.slice(0, -1).entries()) {
    const piece = { a: along3(axis, from), b: along3(axis, shares[i + 1] ?? 1) };
    const middle_m = (piece.a.z + piece.b.z) / 2;
    const lift = middle_m < bottom_m ? bottom_m : middle_m > top_m ? top_m : undefined;
    least_m = Math.min(least_m, pieceToPrism_m(piece, footprint, lift));
  }
  return least_m;
}

/**
 * Distance from a piece of an axis that lies wholly below, beside or above a prism.
 * @param lift_m height of the edges it faces [m]; undefined beside the prism, where heights do not count
 */
function pieceToPrism_m(piece: Segment3, footprint: Prism['footprint'], lift_m: number | undefined): number {
  const onto = (p: PlanPoint3, z: number): PlanPoint3 => ({ x: p.x, y: p.y, z });
  const axis: Segment3 = lift_m === undefined ? { a: onto(piece.a, 0), b: onto(piece.b, 0) } : piece;
  const edge_m = lift_m ?? 0;
  let least_m = Infinity;
  for (const { a, b } of sidesOf(footprint)) {
    least_m = Math.min(least_m, distanceBetween3_m(axis, { a: { x: a.x, y: a.y, z: edge_m }, b: { x: b.x, y: b.y, z: edge_m } }));
  }
  // Over or under the footprint only the height counts: least at one end of the part over it. Its other ends lie on the sides.
  for (const p of [axis.a, axis.b]) if (isInside(p, footprint)) least_m = Math.min(least_m, Math.abs(p.z - edge_m));
  return least_m;
}
