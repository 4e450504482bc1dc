import { normalAngle_rad, turnTo_rad } from '../geometry/angle.ts';
import type { HungNozzle } from './derived.ts';
import { legalArcs } from './legal-arc.ts';
import { bringsNoStop, coversTheSame, isInArcs, turnedTo } from './nozzle-changes.ts';

const DEGREE_rad = Math.PI / 180;
/** Turns that are tried, either way [°]: every one of the small ones, of the others every fifth. */
const TRIED_deg = Array.from({ length: 180 }, (_, i) => i + 1).filter((turn_deg) => turn_deg <= 30 || turn_deg % 5 === 0);
/** The floor in sight is summed for so many turns that change it, each at least this far from the others. */
const MOST_SUMMED = 3;
const APART_rad = 15 * DEGREE_rad;

/**
 * The smallest turn of a nozzle that clears something and brings no new stop (`bringsNoStop`), to whole degrees, above 30°
 * to five, or to the end of a legal range.
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
  const degrees = TRIED_deg.flatMap((turn_deg) => [turn_deg * DEGREE_rad, -turn_deg * DEGREE_rad]);
  const bySize = (turns: readonly number[]): number[] => turns.toSorted((a, b) => Math.abs(a) - Math.abs(b));
  const summed: number[] = [];
  for (const turn_rad of [...bySize(first_rad), ...bySize([...ends, ...degrees])]) {
    if (!isInArcs(arcs, rotation_rad + turn_rad)) continue;
    const turned = turnedTo(nozzle, normalAngle_rad(rotation_rad + turn_rad));
    const isFree = coversTheSame(nozzle, turned);
    if (!isFree && (summed.length === MOST_SUMMED || summed.some((tried_rad) => Math.abs(tried_rad - turn_rad) < APART_rad))) continue;
    if (!isClear(turned)) continue;
    if (bringsNoStop(nozzle, turned, nozzles)) return turn_rad;
    if (!isFree) summed.push(turn_rad);
  }
  return undefined;
}
