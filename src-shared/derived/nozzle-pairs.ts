import { bearing_rad, distance3_m, distance_m, polar } from '../geometry/point.ts';
import { type Direction3, angleBetween3_rad, direction3 } from '../geometry/vector3.ts';
import { ANGLE_SLACK_rad, LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { HungNozzle } from './derived.ts';
import { jetsOf } from './jets.ts';

/** Two nozzles of one space, in the order of the plan. */
export interface NozzlePair<N extends HungNozzle = HungNozzle> {
  readonly one: N;
  readonly other: N;
}

/** Distance between two orifices in space [m]; Infinity while one is lost. */
export const apart_m = ({ one, other }: NozzlePair): number => (one.at && other.at ? distance3_m(one.at, other.at) : Infinity);

/**
 * Pairs that are worth a look: each nozzle with the one nearest to it, and any two that are no farther apart than `within_m`.
 * Each pair once, in the order of the list.
 */
export function nozzlePairs<N extends HungNozzle>(nozzles: readonly N[], within_m: (pair: NozzlePair<N>) => number): NozzlePair<N>[] {
  const pairs: { readonly pair: NozzlePair<N>; readonly far_m: number; readonly i: number; readonly j: number }[] = [];
  const nearest: number[] = nozzles.map(() => Infinity);
  for (const [i, one] of nozzles.entries()) {
    for (let j = i + 1; j < nozzles.length; j += 1) {
      const other = nozzles[j];
      if (!other) continue;
      const pair = { one, other };
      const far_m = apart_m(pair);
      if (far_m === Infinity) continue;
      pairs.push({ pair, far_m, i, j });
      nearest[i] = Math.min(nearest[i] ?? Infinity, far_m);
      nearest[j] = Math.min(nearest[j] ?? Infinity, far_m);
    }
  }
  return pairs.filter(({ pair, far_m, i, j }) => far_m === nearest[i] || far_m === nearest[j] || far_m <= within_m(pair) + LENGTH_SLACK_m).map(({ pair }) => pair);
}

/** How two nozzles blow at each other. */
export interface Opposed {
  /** The hole of each that blows at the other [rad]. */
  readonly one_rad: number;
  readonly other_rad: number;
}

/** The hole of a nozzle that blows nearest to a direction in space, when that is within an angle of it. */
function holeToward(holes_rad: readonly number[], way: Direction3, within_rad: number): number | undefined {
  const [best] = holes_rad
    .map((hole_rad) => ({ hole_rad, off_rad: angleBetween3_rad({ x: Math.cos(hole_rad), y: Math.sin(hole_rad), z: 0 }, way) }))
    .filter(({ off_rad }) => off_rad <= within_rad + ANGLE_SLACK_rad)
    .sort((a, b) => a.off_rad - b.off_rad);
  return best?.hole_rad;
}

/**
 * Whether two nozzles blow at each other: each has the other within the spread of one of its jets, nothing that stops a
 * jet is between them, and they are nearer to each other than their two least free jets together, so that the jets meet
 * before either has opened out. Undefined when they do not, or while one of those figures is blank.
 */
export function findOpposed({ one, other }: NozzlePair): Opposed | undefined {
  if (!one.at || !other.at) return undefined;
  const [mine, theirs] = [one.profile?.limits, other.profile?.limits];
  if (!mine?.freeJet_m || !theirs?.freeJet_m || !mine.jetSpread_rad || !theirs.jetSpread_rad) return undefined;
  const far_m = distance3_m(one.at, other.at);
  if (far_m >= mine.freeJet_m.value + theirs.freeJet_m.value - LENGTH_SLACK_m) return undefined;
  const [onward, back] = [direction3(one.at, other.at, SAME_PLACE_m), direction3(other.at, one.at, SAME_PLACE_m)];
  if (!onward || !back) return undefined;
  const one_rad = holeToward(one.holes_rad, onward, mine.jetSpread_rad.value + one.nozzle.tilt_rad);
  const other_rad = holeToward(other.holes_rad, back, theirs.jetSpread_rad.value + other.nozzle.tilt_rad);
  if (one_rad === undefined || other_rad === undefined) return undefined;
  const [way] = jetsOf({ ...one, holes_rad: [bearing_rad(one.at, other.at)] });
  return way && way.length_m >= distance_m(one.at, other.at) - SAME_PLACE_m ? { one_rad, other_rad } : undefined;
}

/** The place to which a nozzle has to go, at its own height and straight away from another, to be a distance from it [m]. */
export function spreadTo({ one, other }: NozzlePair, wanted_m: number): HungNozzle['at'] {
  if (!one.at || !other.at) return undefined;
  const rise_m = one.at.z - other.at.z;
  const level_m = Math.sqrt(Math.max(0, wanted_m ** 2 - rise_m ** 2));
  const { x, y } = polar(other.at, bearing_rad(other.at, one.at), level_m);
  return { x, y, z: one.at.z };
}
