import { PIPE_TABLE, type PipeSize, pipeOutside_m, pipeSizeRank } from '../../profile/pipe-table.ts';
import { fahrenheit_K, inches_m, psi_Pa } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { within } from './checked.ts';
import { pipeRating_Pa } from './pipe-rating.ts';
import { threadDepth_m } from './pipe-threads.ts';
import type { FittingClass } from './threaded-fittings.ts';

export const FORGED_CLASSES = ['2000', '3000', '6000'] as const;
/** Class of a forged threaded fitting. */
export type ForgedClass = (typeof FORGED_CLASSES)[number];

export const fittingRatingBasis: Basis = {
  formula: 'gauge: Class 150 300 psi; Class 300: 2000 psi up to NPS 1, 1500 psi up to 2, 1000 psi up to 3, to 65 °C (150 °F); linear between the temperatures given above it',
  source: 'ASME B16.3, memory',
  caution: 'Non-shock. Never stands against cylinder pressure upstream of a reducer. Class 150 is not for this service, whatever the pressure (NFPA 2001, memory).',
};
/** Class 300, psi at 65.6, 93.3, 148.9 and 204.4 °C. */
const CLASS_300: readonly (readonly [upTo: PipeSize, ratings_psi: readonly number[]])[] = [
  ['1', [2000, 1785, 1360, 935]],
  ['2', [1500, 1350, 1050, 750]],
  ['3', [1000, 910, 735, 560]],
];
/** Where the ratings stand [K]. */
const RATED_AT_K = [150, 200, 300, 400].map(fahrenheit_K);

/**
 * Pressure for which a malleable threaded fitting is rated.
 *
 * @param size           nominal pipe size [-]
 * @param fittingClass   class of the fitting [-]
 * @param temperature_K  of the gas [K]; 244 to 338.7 for Class 150, to 477.59 for Class 300
 * @returns rating, over the surroundings [Pa]
 * @throws {RangeError} size without a rating, or temperature out of range
 * @example fittingRating_Pa('1', '300', 293.15) // 13_789_515
 */
export function fittingRating_Pa(size: PipeSize, fittingClass: FittingClass, temperature_K: number): number {
  const ratings = CLASS_300.find(([upTo]) => pipeSizeRank(size) <= pipeSizeRank(upTo))?.[1];
  if (!ratings) throw new RangeError(`nominalSize ${size} has no Class ${fittingClass} rating in the table.`);
  const [coolest_K = 0] = RATED_AT_K;
  if (fittingClass === '150') {
    within('temperature_K', temperature_K, 244, coolest_K);
    return psi_Pa(300);
  }
  within('temperature_K', temperature_K, 244, RATED_AT_K.at(-1) ?? coolest_K);
  const above = RATED_AT_K.findIndex((at_K) => temperature_K <= at_K);
  const [upper = 0, lower = upper] = [ratings[above], ratings[above - 1]];
  const [hot_K = 0, cool_K = hot_K] = [RATED_AT_K[above], RATED_AT_K[above - 1]];
  const share = above <= 0 ? 1 : (temperature_K - cool_K) / (hot_K - cool_K);
  return psi_Pa(lower + (upper - lower) * share);
}

/**
 * Whether a class of threaded fitting may stand in a gas extinguishing unit at all, whatever its rating.
 *
 * @param fittingClass  class of the fitting [-]
 * @returns false for Class 150 [-]
 */
export const isClassForService = (fittingClass: FittingClass | ForgedClass): boolean => fittingClass !== '150';

export const forgedRatingBasis: Basis = {
  formula: 'rated as the threaded pipe it pairs with: Class 2000 Schedule 80, Class 3000 Schedule 160, Class 6000 double extra strong',
  source: 'ASME B16.11, memory; walls of double extra strong pipe ASME B36.10M, memory',
  caution: "Taken with the pipe's own stress: forged steel of higher strength bears more, a seam in the pipe does not weaken it.",
};
/** Walls of double extra strong pipe [in]; the table has none below NPS 1/2. */
const DOUBLE_EXTRA_STRONG_in: Readonly<Partial<Record<PipeSize, number>>> = {
  '1/2': 0.294,
  '3/4': 0.308,
  '1': 0.358,
  '1-1/4': 0.382,
  '1-1/2': 0.4,
  '2': 0.436,
  '2-1/2': 0.552,
  '3': 0.6,
  '4': 0.674,
};
const wallOf_in = (size: PipeSize, forgedClass: ForgedClass): number | undefined =>
  forgedClass === '6000' ? DOUBLE_EXTRA_STRONG_in[size] : PIPE_TABLE[size].wall_in[forgedClass === '2000' ? '80' : '160'];

/**
 * Pressure for which a forged threaded fitting is rated: that of the pipe it pairs with.
 *
 * @param size                nominal pipe size [-]
 * @param forgedClass         class of the fitting [-]
 * @param allowableStress_Pa  S, with the joint efficiency of the seam [Pa], > 0
 * @param millFactor          share of the nominal wall that is sure to be there [-], 0.5 to 1
 * @param y                   temperature coefficient, 0.4 for steel, 0 for the simple form [-], 0 to 0.7
 * @returns rating, over the surroundings [Pa]
 * @throws {RangeError} size without a wall in the table, or argument not finite or out of range
 * @example forgedRating_Pa('1/2', '2000', 103421355, 0.875, 0.4) // 18_887_698
 */
export function forgedRating_Pa(size: PipeSize, forgedClass: ForgedClass, allowableStress_Pa: number, millFactor: number, y: number): number {
  const wall_in = wallOf_in(size, forgedClass);
  if (wall_in === undefined) throw new RangeError(`nominalSize ${size} has no Class ${forgedClass} rating in the table.`);
  return pipeRating_Pa(pipeOutside_m(size), inches_m(wall_in), threadDepth_m(size), allowableStress_Pa, millFactor, y);
}
