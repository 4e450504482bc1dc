import type { Basis } from '../topic.ts';
import { notNegative, positive } from './checked.ts';

export const cutLengthBasis: Basis = {
  formula: 'cut = centre to centre − Σ(A − e), at each end A of the fitting and e the engagement',
  source: 'common practice',
  caution: 'Measure the fittings in hand before cutting.',
};
/**
 * Length to which a pipe between two threaded fittings is cut.
 *
 * @param centreToCentre_m   between the centres of the fittings [m], > 0
 * @param reaches_m          A of the fitting at each end [m], ≥ 0
 * @param engagements_m      e of the thread at each end, 0 at an open end [m], ≥ 0
 * @returns length [m], > 0
 * @throws {RangeError} argument not finite or out of range, or the fittings too close to each other for a pipe
 * @example cutLength_m(3.048, [0.036576, 0.036576], [0.0142875, 0.0142875]) // 3.003423
 */
export function cutLength_m(centreToCentre_m: number, reaches_m: readonly [number, number], engagements_m: readonly [number, number]): number {
  const reach_m = notNegative('reaches_m', reaches_m[0]) + notNegative('reaches_m', reaches_m[1]);
  const engagement_m = notNegative('engagements_m', engagements_m[0]) + notNegative('engagements_m', engagements_m[1]);
  const cut_m = positive('centreToCentre_m', centreToCentre_m) - reach_m + engagement_m;
  if (!(cut_m > engagement_m)) throw new RangeError('centreToCentre is too short: the two fittings would touch.');
  return cut_m;
}
