import { clipToHalfPlane, nearerTo } from '../geometry/half-plane.ts';
import { momentsOf } from '../geometry/moments.ts';
import { type Box, type Outline, boundsOf, boxesTouch, isCounterClockwise, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, type PlanPoint3, distance_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { RefOf } from '../model/plan.ts';
import type { PlacedFootprint } from './footprint.ts';
import { type Region, differenceOf, intersectionOf } from './polygon-sums.ts';
import { sameList } from './remember.ts';

/** What one nozzle covers. */
export interface NozzleCoverage {
  readonly nozzle: RefOf<'nozzle'>;
  /** All the floor that it covers, shared or not. */
  readonly seen: Region;
  /** Its share: the floor that it covers and no nearer nozzle does; of two at one place the first in the list has it. */
  readonly rings: readonly Outline[];
  /** Area of its share [m²]. */
  readonly area_m2: number;
  /** Plan distance to the farthest place of its share [m]; 0 without a share. */
  readonly farthest_m: number;
  readonly farthest: PlanPoint | undefined;
}

/** A nozzle that covers some floor. */
export interface Covering {
  /** Everything that what it sees depends on, beside the space. */
  readonly key: string;
  readonly ref: RefOf<'nozzle'>;
  readonly order: number;
  readonly at: PlanPoint3;
  readonly footprint: PlacedFootprint;
  readonly seen: Region;
  readonly bounds: Box;
}

/** So many nearer nozzles are taken off a share at once; mostly the first lot leaves nothing for the others to claim. */
const AT_ONCE = 4;

/** A share with what it was made from. */
export interface KnownShare {
  readonly floor: Region;
  /** What the nozzles around see, itself among them, in the order of the list. */
  readonly around: readonly Region[];
  readonly share: NozzleCoverage;
}

/**
 * The shares of nozzles, those taken over whose surroundings are the very same objects as before.
 * @param counted all nozzles that cover some floor
 * @param floor   floor that is to be covered
 * @param known   shares found before, by key
 */
export const sharesOf = (counted: readonly Covering[], floor: Region, known: ReadonlyMap<string, KnownShare>): ReadonlyMap<string, KnownShare> => {
  const sides = sideBoxesOf(floor);
  return new Map(
    counted.map((mine) => {
      const near = counted.filter((other) => boxesTouch(mine.bounds, other.bounds));
      const around = near.map(({ seen }) => seen);
      const before = known.get(mine.key);
      const isKnown = before && before.floor === floor && sameList(before.around, around) === before.around;
      return [mine.key, isKnown ? before : { floor, around, share: shareOf(mine, near, floor, sides.some((side) => boxesTouch(side, mine.bounds))) }];
    }),
  );
};

/** A box around each side of a region. */
const sideBoxesOf = (region: Region): Box[] => region.flatMap(sidesOf).map(({ a, b }) => boundsOf([a, b]));

/**
 * The share of one nozzle: what it sees of the floor less what each nearer nozzle sees on its own side of the line
 * halfway between the two. Exact but for the grid of the polygon sums.
 * @param near  nozzles whose regions may overlap its own
 * @param floor floor that is to be covered
 * @param isAtEdge  a border of the floor may come between: else all that it sees is floor
 */
function shareOf(mine: Covering, near: readonly Covering[], floor: Region, isAtEdge: boolean): NozzleCoverage {
  const { ref, at, footprint, bounds } = mine;
  const seen = isAtEdge ? intersectionOf(mine.seen, floor.filter((ring) => isCounterClockwise(ring) || boxesTouch(boundsOf(ring), bounds))) : mine.seen;
  const others = near
    .filter((other) => other !== mine)
    .map((other) => ({ other, apart_m: distance_m(at, other.at) }))
    .sort((a, b) => a.apart_m - b.apart_m);
  let rings = seen;
  let claims: Region[] = [];
  for (const [i, { other, apart_m }] of others.entries()) {
    if (apart_m <= SAME_PLACE_m) {
      if (other.order < mine.order) claims.push(other.seen);
    } else {
      const half = nearerTo(other.at, at);
      const reaches = rings.some((ring) => ring.some((p) => half.x * p.x + half.y * p.y < half.limit));
      if (reaches) claims.push(other.seen.map((ring) => clipToHalfPlane(ring, half)).filter((ring) => ring.length > 0));
    }
    if (claims.length >= AT_ONCE || i === others.length - 1) {
      if (claims.length > 0) rings = differenceOf(rings, claims);
      claims = [];
    }
  }
  let farthest: PlanPoint | undefined;
  let farthest_m = 0;
  for (const place of rings.flat()) {
    const far_m = distance_m(at, place);
    if (!farthest || far_m > farthest_m) {
      farthest = place;
      farthest_m = far_m;
    }
  }
  // The grid must not push a share past its footprint.
  return {
    nozzle: ref,
    seen,
    rings,
    area_m2: Math.min(momentsOf(rings).area_m2, footprint.area_m2),
    farthest_m: Math.min(farthest_m, footprint.reach_m),
    farthest,
  };
}
