import { momentsOf } from '../geometry/moments.ts';
import { type Outline, boundsOf, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, type PlanPoint3, distance_m } from '../geometry/point.ts';
import { poleOf } from '../geometry/pole.ts';
import { SAME_PLACE_m, SLIVER_m2 } from '../geometry/tolerance.ts';
import type { RefOf } from '../model/plan.ts';
import { isFullHeight } from './clearance-faces.ts';
import { type KnownShare, type NozzleCoverage, sharesOf } from './coverage-share.ts';
import type { HungNozzle, Solid, Space } from './derived.ts';
import { dividesSpace } from './dividing-solid.ts';
import { type PlacedFootprint, placedFootprint } from './footprint.ts';
import { type Region, differenceOf, fillOf, partsOf } from './polygon-sums.ts';
import { remembered } from './remember.ts';
import { seenOf, standsOnFloor } from './sight.ts';
import { isThere } from './solids.ts';
import { isWithinHeight } from './space-index.ts';

/** A part of the floor that no nozzle covers. */
export interface UncoveredRegion {
  /** Outer ring counter-clockwise, then its holes, clockwise. */
  readonly rings: readonly Outline[];
  readonly area_m2: number;
  /** The place deepest inside the region: the middle of the largest circle in it. */
  readonly worst: PlanPoint;
  /** Distance from there to the nearest border of the region [m]: to covered floor or to a wall. */
  readonly worstDistance_m: number;
}

export interface Coverage {
  /** Floor of the space: holes and what stands on the floor past every orifice are left out. */
  readonly floor_m2: number;
  readonly covered_m2: number;
  readonly uncovered: readonly UncoveredRegion[];
  readonly perNozzle: readonly NozzleCoverage[];
  /** Nozzles that count for nothing here, and why. */
  readonly notCounted: readonly { readonly nozzle: RefOf<'nozzle'>; readonly why: 'no-place' | 'no-footprint' | 'outside' }[];
}

/**
 * The floor of a space that its nozzles cover: what lies in a nozzle's footprint and in its sight at the height of its
 * orifice. Never overstated by more than the grid of the polygon sums (1 µm along its border); understated by less than
 * 0.5 %, because a round footprint is taken as the polygon inscribed in it.
 * Floor under a thing that hangs is floor; under a thing that stands on the floor it is not, once the thing
 * fills the space, divides it like a wall or rises past every orifice. A nozzle outside the space, above its ceiling, below its floor or without
 * a known footprint covers nothing.
 * @param nozzles the nozzles that serve the space
 */
export function coverageOf(space: Space, nozzles: readonly HungNozzle[]): Coverage {
  const last = lastCoverage(space.ceilingAt_m);
  if (last.coverage && last.solids === space.solids && isSame(last.nozzles, nozzles)) return last.coverage;
  if (last.solids !== space.solids) Object.assign(last, unknownCoverage());
  const spots = nozzles.map((nozzle) => spotOf(space, nozzle, last.seen));
  const keys = spots.map(({ key }) => key);
  if (!last.coverage || !isSame(last.keys, keys)) last.coverage = summedCoverage(space, spots, last);
  Object.assign(last, { solids: space.solids, nozzles, keys, seen: new Map(spots.map(({ key, seen }) => [key, seen])) });
  return last.coverage;
}

/** What is known of a space from the last time it was asked. */
interface LastCoverage {
  coverage: Coverage | undefined;
  solids: Space['solids'] | undefined;
  nozzles: readonly HungNozzle[];
  keys: readonly string[];
  seen: ReadonlyMap<string, Region>;
  shares: ReadonlyMap<string, KnownShare>;
  floor: Region;
  /** What stands on the floor and leaves none; null while not yet looked at. */
  standing: readonly Solid[] | null;
}

const unknownCoverage = (): LastCoverage => ({
  coverage: undefined,
  solids: undefined,
  nozzles: [],
  keys: [],
  seen: new Map(),
  shares: new Map(),
  floor: [],
  standing: null,
});

/** The last answer for a space: its ceiling function stays the same object while its own geometry does. */
const lastCoverage = remembered((_: Space['ceilingAt_m']): LastCoverage => unknownCoverage());

const isSame = <T>(one: readonly T[], other: readonly T[]): boolean => one.length === other.length && one.every((each, i) => each === other[i]);

/** A nozzle as far as coverage looks at it. */
interface Spot {
  readonly ref: RefOf<'nozzle'>;
  /** Everything that what it sees depends on, beside the space. */
  readonly key: string;
  readonly at: PlanPoint3 | undefined;
  readonly footprint: PlacedFootprint | undefined;
  readonly seen: Region;
  readonly why: Coverage['notCounted'][number]['why'] | undefined;
}

function spotOf(space: Space, derived: HungNozzle, known: ReadonlyMap<string, Region>): Spot {
  const { ref, at, profile, nozzle } = derived;
  const shape = profile?.footprint;
  const key = JSON.stringify([ref.network, ref.id, at?.x, at?.y, at?.z, nozzle.rotation_rad, shape]);
  const nothing = { ref, key, at, footprint: undefined, seen: [] };
  if (!at) return { ...nothing, why: 'no-place' };
  if (!shape) return { ...nothing, why: 'no-footprint' };
  if (!isWithinHeight(space, at)) return { ...nothing, why: 'outside' };
  const footprint = placedFootprint(shape, at, nozzle.rotation_rad);
  const seen = known.get(key) ?? seenOf({ ...derived, space }, footprint);
  return seen.length === 0 ? { ...nothing, why: 'outside' } : { ref, key, at, footprint, seen, why: undefined };
}

/** Floor without holes. */
const openFloorOf = remembered((outline: Outline, holes: Space['holes']): Region => differenceOf(fillOf([outline]), [fillOf(holes)]));

/** Solids that leave no floor to be covered: what fills the space, and what stands on the floor past every orifice. */
function standingOf(space: Space, spots: readonly Spot[]): Solid[] {
  const highest_m = Math.max(...spots.map(({ at, why }) => (at && !why ? at.z : -Infinity)), -Infinity);
  return space.solids.filter(
    (solid) =>
      isThere(solid) &&
      (isFullHeight(space, solid, highest_m === -Infinity ? solid.top_m : highest_m) ||
        (dividesSpace(space, solid) && standsOnFloor(space, solid)) ||
        (highest_m > -Infinity && solid.top_m > highest_m && standsOnFloor(space, solid))),
  );
}

const NO_SHARE = { seen: [], rings: [], area_m2: 0, farthest_m: 0, farthest: undefined };

function summedCoverage(space: Space, spots: readonly Spot[], last: LastCoverage): Coverage {
  const standing = standingOf(space, spots);
  if (!last.standing || !isSame(last.standing, standing)) {
    const open = openFloorOf(space.outline, space.holes);
    last.floor = standing.length === 0 ? open : differenceOf(open, [fillOf(standing.map(({ footprint }) => footprint))]);
    last.standing = standing;
  }
  const { floor } = last;
  const counted = spots.flatMap(({ ref, key, at, footprint, seen }, order) =>
    at && footprint ? [{ ref, key, order, at, footprint, seen, bounds: boundsOf(seen.flat()) }] : [],
  );
  const uncovered = differenceOf(
    floor,
    counted.map(({ seen }) => seen),
  );
  const floor_m2 = momentsOf(floor).area_m2;
  let perNozzle: Coverage['perNozzle'] | undefined;
  return {
    floor_m2,
    covered_m2: Math.max(0, floor_m2 - momentsOf(uncovered).area_m2),
    uncovered: partsOf(uncovered).flatMap(uncoveredRegion),
    // Worked out when somebody reads it: who asks about gaps alone need not wait for it.
    get perNozzle() {
      if (!perNozzle) {
        const shares = sharesOf(counted, floor, last.shares);
        last.shares = shares;
        perNozzle = spots.map(({ ref, key }) => shares.get(key)?.share ?? { nozzle: ref, ...NO_SHARE });
      }
      return perNozzle;
    },
    notCounted: spots.flatMap(({ ref, why }) => (why ? [{ nozzle: ref, why }] : [])),
  };
}

/** An uncovered part with its worst place; slivers and slits that come from the grid of the polygon sums are left out. */
function uncoveredRegion(rings: Region): UncoveredRegion[] {
  const { area_m2 } = momentsOf(rings);
  const border_m = rings.flatMap(sidesOf).reduce((sum, { a, b }) => sum + distance_m(a, b), 0);
  if (area_m2 < SLIVER_m2 || area_m2 < border_m * 2 * SAME_PLACE_m) return [];
  const { at, inside_m } = poleOf(rings);
  return [{ rings, area_m2, worst: at, worstDistance_m: inside_m }];
}
