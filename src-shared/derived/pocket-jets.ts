import { axisAngle_rad, turnTo_rad } from '../geometry/angle.ts';
import { sidesOf } from '../geometry/outline.ts';
import { bearing_rad, distance_m } from '../geometry/point.ts';
import type { HungNozzle, Solid } from './derived.ts';
import { type Jet, jetsOf } from './jets.ts';
import { standsOnFloor } from './sight.ts';

/** A jet that something hanging from above stops. */
export interface PocketJet {
  readonly jet: Jet;
  readonly solid: Solid;
}

/** Whether a solid makes a pocket: a beam anywhere, in a room anything else that hangs. */
export const makesPocket = ({ space }: HungNozzle, solid: Solid): boolean =>
  solid.obstruction.kind === 'beam' || (space?.kind === 'room' && !standsOnFloor(space, solid));

/** The jets of a nozzle that first meet a beam or another hanging thing whose underside is below the orifice, nearest first. */
export function pocketJetsOf(nozzle: HungNozzle): PocketJet[] {
  const pockets = nozzle.blockers.filter((solid) => makesPocket(nozzle, solid));
  if (pockets.length === 0) return [];
  return jetsOf(nozzle)
    .flatMap((jet): PocketJet[] => {
      const solid = jet.hit?.kind === 'obstruction' ? pockets.find(({ ref }) => ref.id === jet.hit?.id) : undefined;
      return solid ? [{ jet, solid }] : [];
    })
    .sort((a, b) => a.jet.length_m - b.jet.length_m);
}

/** Direction of the longest side of a solid [rad], either way. */
export function longAxis_rad({ footprint }: Solid): number {
  const [longest] = sidesOf(footprint).sort((one, other) => distance_m(other.a, other.b) - distance_m(one.a, one.b));
  return longest ? bearing_rad(longest.a, longest.b) : 0;
}

/** The turns that bring one hole of a nozzle along an axis, either way [rad]; the smallest first. */
export const turnsAlong_rad = (holes_rad: readonly number[], axis_rad: number): number[] =>
  holes_rad
    .filter((hole_rad) => axisAngle_rad(hole_rad, axis_rad) > 0)
    .flatMap((hole_rad) => [turnTo_rad(hole_rad, axis_rad), turnTo_rad(hole_rad, axis_rad + Math.PI)])
    .sort((a, b) => Math.abs(a) - Math.abs(b));
