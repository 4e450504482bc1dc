import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';

export const pipeRatingBasis: Basis = {
  formula: 'P = 2·S·a/(D − 2·y·a),  a = m·t − A,  A thread depth of threaded pipe',
  source: 'ASME B31.1 clause 104.1.2, solved for the pressure; y = 0.4 and the allowable stresses are memory',
  caution: 'The stress set, mill tolerance and y alone move the rating by up to 80 %. Hydrostatic proof, corrosion and the adopted code are not in it.',
};
/**
 * Greatest gauge pressure that a straight pipe bears.
 *
 * @param outside_m           D, outside diameter [m], > 0
 * @param wall_m              t, nominal wall [m], > 0, below half of D
 * @param threadDepth_m       A, cut away by a thread, 0 when welded [m], ≥ 0
 * @param allowableStress_Pa  S, with the joint efficiency of the seam [Pa], > 0
 * @param millFactor          m, share of the nominal wall that is sure to be there [-], 0.5 to 1
 * @param y                   temperature coefficient, 0.4 for steel below 480 °C, 0 for the simple form [-], 0 to 0.7
 * @returns pressure over the surroundings [Pa], 0 when no wall is left
 * @throws {RangeError} argument not finite or out of range
 * @example pipeRating_Pa(0.021336, 0.0037338, 0.001451429, 103421355, 0.875, 0.4) // 18_887_694
 */
export function pipeRating_Pa(outside_m: number, wall_m: number, threadDepth_m: number, allowableStress_Pa: number, millFactor: number, y: number): number {
  const outside = positive('outside_m', outside_m);
  const wall = within('wall_m', positive('wall_m', wall_m), 0, outside / 2);
  const sound_m = Math.max(0, within('millFactor', millFactor, 0.5, 1) * wall - notNegative('threadDepth_m', threadDepth_m));
  return (2 * positive('allowableStress_Pa', allowableStress_Pa) * sound_m) / (outside - 2 * within('y', y, 0, 0.7) * sound_m);
}
