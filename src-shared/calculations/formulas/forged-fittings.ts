import type { PipeSize } from '../../profile/pipe-table.ts';
import { millimetres_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import type { ForgedClass } from './fitting-rating.ts';

export const FORGED_ENDS = ['elbow-90', 'elbow-45', 'tee', 'cross', 'coupling'] as const;
/** What a pipe screws into: a forged fitting of equal size throughout. */
export type ForgedEnd = (typeof FORGED_ENDS)[number];

/** A of 90° elbow, tee and cross, C of 45° elbow, by class [mm]; W of coupling [mm]. */
interface Sizes {
  readonly square_mm: Readonly<Record<ForgedClass, number>>;
  readonly half_mm: Readonly<Record<ForgedClass, number>>;
  readonly coupling_mm: number;
}
const row = (square: readonly [number, number, number], half: readonly [number, number, number], coupling_mm: number): Sizes => ({
  square_mm: { 2000: square[0], 3000: square[1], 6000: square[2] },
  half_mm: { 2000: half[0], 3000: half[1], 6000: half[2] },
  coupling_mm,
});

/** Larger sizes are left out: they are not remembered surely enough to cut pipe by. */
const FORGED: Readonly<Partial<Record<PipeSize, Sizes>>> = {
  '1/4': row([21, 25, 28], [17, 19, 22], 35),
  '3/8': row([25, 28, 33], [19, 22, 25], 38),
  '1/2': row([28, 33, 38], [22, 25, 28], 48),
  '3/4': row([33, 38, 44], [25, 28, 33], 51),
  '1': row([38, 44, 51], [28, 33, 35], 60),
  '1-1/4': row([44, 51, 60], [33, 35, 43], 67),
  '1-1/2': row([51, 60, 64], [35, 43, 44], 79),
  '2': row([60, 64, 83], [43, 44, 52], 86),
};

export const forgedReachBasis: Basis = {
  formula: 'A (90° elbow, straight tee and cross), C (45° elbow), W/2 (coupling, Class 3000 and 6000)',
  source: 'ASME B16.11, threaded fittings, memory',
  caution: 'Reducing fittings have lengths of their own. Measure the fittings in hand before cutting.',
};
/**
 * From the centre of a forged threaded fitting to its end.
 *
 * @param size         nominal pipe size, of all legs [-]
 * @param forgedClass  class of the fitting [-]
 * @param end          which fitting [-]
 * @returns length [m], > 0
 * @throws {RangeError} size without a length in the table, or a coupling of Class 2000, which the standard does not have
 * @example forgedReach_m('3/4', '3000', 'elbow-90') // 0.038
 */
export function forgedReach_m(size: PipeSize, forgedClass: ForgedClass, end: ForgedEnd): number {
  const sizes = FORGED[size];
  if (!sizes) throw new RangeError(`nominalSize ${size} has no Class ${forgedClass} fitting in the table.`);
  if (end === 'coupling' && forgedClass === '2000') throw new RangeError('forgedClass 2000 has no coupling.');
  if (end === 'coupling') return millimetres_m(sizes.coupling_mm / 2);
  return millimetres_m((end === 'elbow-45' ? sizes.half_mm : sizes.square_mm)[forgedClass]);
}
