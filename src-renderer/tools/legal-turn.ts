import { normalAngle_rad } from '#shared/geometry/angle';
import type { DerivedNozzle } from '#shared/derived/derived';
import { legalArcs } from '#shared/derived/legal-arc';
import { degrees_rad } from '#shared/units/convert';

/** Turns are tried in steps that a fitter can read off: 5°. */
const STEP_rad = degrees_rad(5);
const STEPS = 36;

/**
 * The least turn, in whole steps of 5°, that makes every hole of a nozzle blow where it may; the middle of the
 * first legal range where no step fits; the turn it has where none is legal or none can be known.
 */
export function legalTurn_rad(nozzle: DerivedNozzle): number {
  const { rotation_rad } = nozzle.nozzle;
  const arcs = legalArcs(nozzle);
  const isLegal = (turn_rad: number): boolean => arcs.some(({ from_rad, to_rad }) => normalAngle_rad(turn_rad - from_rad) <= to_rad - from_rad);
  for (let step = 0; step <= STEPS; step += 1) {
    for (const side of step === 0 ? [1] : [1, -1]) {
      const turn_rad = rotation_rad + side * step * STEP_rad;
      if (isLegal(turn_rad)) return turn_rad;
    }
  }
  const first = arcs[0];
  return first ? (first.from_rad + first.to_rad) / 2 : rotation_rad;
}
