import { type PipeSize, pipeSizeRank } from '../../profile/pipe-table.ts';
import { fahrenheit_K, inches_m, psi_Pa } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { within } from './checked.ts';

export const FITTING_CLASSES = ['150', '300'] as const;
/** Class of a malleable threaded fitting. */
export type FittingClass = (typeof FITTING_CLASSES)[number];

export const PIPE_ENDS = ['elbow-90', 'elbow-45', 'tee', 'coupling', 'open'] as const;
/** What a pipe screws into: the elbow and tee are of equal size throughout, an open end is bare. */
export type PipeEnd = (typeof PIPE_ENDS)[number];

/** A of elbow and tee, C of 45° elbow, W of coupling [in]. */
type Sizes = readonly [elbow: number, elbow45: number, coupling: number];

const FITTINGS: Readonly<Record<FittingClass, Readonly<Partial<Record<PipeSize, Sizes>>>>> = {
  150: {
    '1/4': [0.81, 0.73, 1.06],
    '3/8': [0.95, 0.8, 1.16],
    '1/2': [1.12, 0.88, 1.34],
    '3/4': [1.31, 0.98, 1.52],
    '1': [1.5, 1.12, 1.67],
    '1-1/4': [1.75, 1.29, 1.93],
    '1-1/2': [1.94, 1.43, 2.15],
    '2': [2.25, 1.68, 2.53],
    '2-1/2': [2.7, 1.95, 2.88],
    '3': [3.08, 2.17, 3.18],
  },
  300: {
    '1/4': [0.94, 0.81, 1.37],
    '3/8': [1.06, 0.88, 1.62],
    '1/2': [1.25, 1, 1.87],
    '3/4': [1.44, 1.13, 2.12],
    '1': [1.63, 1.31, 2.37],
    '1-1/4': [1.94, 1.5, 2.87],
    '1-1/2': [2.13, 1.69, 2.87],
    '2': [2.5, 2, 3.62],
    '2-1/2': [2.94, 2.25, 4.12],
    '3': [3.38, 2.5, 4.12],
  },
};

export const fittingReachBasis: Basis = {
  formula: 'A (90° elbow, straight tee), C (45° elbow), W/2 (coupling)',
  source: 'ASME B16.3; A of Class 150 read in a pipe-trade table, all other columns memory',
  caution: 'Reducing tees and elbows have lengths of their own. Measure the fittings in hand before cutting.',
};
/**
 * From the centre of a threaded fitting to the end of its thread.
 *
 * @param size          nominal pipe size, of all legs [-]
 * @param fittingClass  class of the fitting [-]
 * @param end           which fitting; an open end reaches 0 [-]
 * @returns length [m], ≥ 0
 * @throws {RangeError} size without a length in the table
 * @example fittingReach_m('3/4', '300', 'elbow-90') // 0.036576
 */
export function fittingReach_m(size: PipeSize, fittingClass: FittingClass, end: PipeEnd): number {
  const sizes = FITTINGS[fittingClass][size];
  if (!sizes) throw new RangeError(`nominalSize ${size} has no Class ${fittingClass} fitting in the table.`);
  const [elbow_in, elbow45_in, coupling_in] = sizes;
  const REACHES: Readonly<Record<PipeEnd, number>> = { 'elbow-90': elbow_in, tee: elbow_in, 'elbow-45': elbow45_in, coupling: coupling_in / 2, open: 0 };
  return inches_m(REACHES[end]);
}

export const fittingRatingBasis: Basis = {
  formula: 'gauge: Class 150 300 psi; Class 300: 2000 psi up to NPS 1, 1500 psi up to 2, 1000 psi up to 3, to 65 °C (150 °F); linear between the temperatures given above it',
  source: 'ASME B16.3, memory',
  caution: 'Non-shock. Never stands against cylinder pressure upstream of a reducer.',
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
  if (!FITTINGS[fittingClass][size]) throw new RangeError(`nominalSize ${size} has no Class ${fittingClass} rating in the table.`);
  const [coolest_K = 0] = RATED_AT_K;
  if (fittingClass === '150') {
    within('temperature_K', temperature_K, 244, coolest_K);
    return psi_Pa(300);
  }
  within('temperature_K', temperature_K, 244, RATED_AT_K.at(-1) ?? coolest_K);
  const ratings = CLASS_300.find(([upTo]) => pipeSizeRank(size) <= pipeSizeRank(upTo))?.[1] ?? [];
  const above = RATED_AT_K.findIndex((at_K) => temperature_K <= at_K);
  const [upper = 0, lower = upper] = [ratings[above], ratings[above - 1]];
  const [hot_K = 0, cool_K = hot_K] = [RATED_AT_K[above], RATED_AT_K[above - 1]];
  const share = above <= 0 ? 1 : (temperature_K - cool_K) / (hot_K - cool_K);
  return psi_Pa(lower + (upper - lower) * share);
}
