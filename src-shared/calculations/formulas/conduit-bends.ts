import type { Basis } from '../topic.ts';
import { within } from './checked.ts';

export const conduitBendsBasis: Basis = {
  formula: 'Σ of all bends between two pull points ≤ 360°',
  source: 'NEC 358.26 (EMT) and 348.26 (FMC), memory',
  caution: 'Offsets and saddles count with every bend in them.',
};
/** Most that a conduit may turn between two pull points [rad]. */
export const GREATEST_BENDS_rad = 2 * Math.PI;

/**
 * How far a conduit turns in all between two pull points.
 *
 * @param bends_rad  every bend in the stretch, each without its sign [rad], each 0 to π
 * @returns sum [rad], ≥ 0
 * @throws {RangeError} a bend not finite or out of range
 * @example bendsSum_rad([Math.PI / 2, Math.PI / 2, 0.5]) // 3.6416
 */
export const bendsSum_rad = (bends_rad: readonly number[]): number => bends_rad.reduce((sum, bend_rad) => sum + within('bend_rad', bend_rad, 0, Math.PI), 0);
