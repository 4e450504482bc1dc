import type { PipeSize } from '../../profile/pipe-table.ts';
import { inches_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';

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
