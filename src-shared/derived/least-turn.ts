import { normalAngle_rad, turnTo_rad } from '../geometry/angle.ts';
import type { HungNozzle } from './derived.ts';
import { legalArcs } from './legal-arc.ts';
import { bringsNoStop, isInArcs, turnedTo } from './nozzle-changes.ts';

/** Turns are tried in whole degrees, as far as half a turn either way. */
const STEP_rad = Math.PI / 180;
const STEPS = 180;
/** Coverage is summed for so many turns that are clear, each at least this far from the one before. */
const MOST_SUMMED = 4;
const APART_rad = 10 * STEP_rad;

/**
 * The smallest turn of a nozzle that clears something and brings no new stop (`bringsNoStop`), to a whole degree or to
 * the end of a legal range.
 * @param isClear   whether the nozzle turned is clear of what it is turned away from
 * @param nozzles   those that serve its space
 * @param first_rad turns that are tried before any other [rad]: a turn that a fitter can see, such as along a beam
 * @returns turn [rad], counter-clockwise positive; undefined where none is found
 */
export function findLeastTurn(nozzle: HungNozzle, nozzles: readonly HungNozzle[], isClear: (turned: HungNozzle) => boolean, first_rad: readonly number[] = []): number | undefined {
  const { rotation_rad } = nozzle.nozzle;
  const arcs = legalArcs(nozzle);
  if (arcs.length === 0) return undefined;
  const ends = arcs.flatMap(({ from_rad, to_rad }) => [turnTo_rad(rotation_rad, from_rad), turnTo_rad(rotation_rad, to_rad)]);
  const degrees = Array.from({ length: STEPS }, (_, i) => (i + 1) * STEP_rad).flatMap((turn_rad) => [turn_rad, -turn_rad]);
  const bySize = (turns: readonly number[]): number[] => turns.toSorted((a, b) => Math.abs(a) - Math.abs(b));
  const summed: number[] = [];
  for (const turn_rad of [...bySize(first_rad), ...bySize([...ends, ...degrees])]) {
    if (summed.some((tried_rad) => Math.abs(tried_rad - turn_rad) < APART_rad)) continue;
    if (!isInArcs(arcs, rotation_rad + turn_rad)) continue;
    const turned = turnedTo(nozzle, normalAngle_rad(rotation_rad + turn_rad));
    if (!isClear(turned)) continue;
    if (bringsNoStop(nozzle, turned, nozzles)) return turn_rad;
    summed.push(turn_rad);
    if (summed.length === MOST_SUMMED) return undefined;
  }
  return undefined;
}
