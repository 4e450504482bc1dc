import type { Basis } from '../topic.ts';
import { notNegative, positive } from './checked.ts';

export const airChangeBasis: Basis = {
  formula: 't = n·V/Q,  left = e^−n',
  source: 'perfect mixing: dC/dt = −C·Q/V',
  caution: 'Gas that does not mix, in corners and voids, stays longer. A meter decides, not the time.',
};

/**
 * Time in which an extract changes the air of a room a number of times.
 *
 * @param volume_m3     V, net volume of the room [m³], > 0
 * @param flow_m3_s     Q, extract [m³/s], > 0
 * @param changes       n, changes of air [-], ≥ 0
 * @returns time [s], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example airChangeTime_s(40, 0.1, 4) // 1600
 */
export function airChangeTime_s(volume_m3: number, flow_m3_s: number, changes: number): number {
  return (notNegative('changes', changes) * positive('volume_m3', volume_m3)) / positive('flow_m3_s', flow_m3_s);
}

/**
 * Share of a gas that is left after a number of changes of well mixed air.
 *
 * @param changes  n, changes of air [-], ≥ 0
 * @returns share of the concentration at the beginning [-], above 0, at most 1
 * @throws {RangeError} argument not finite or out of range
 * @example leftAfterChanges(4) // 0.01832
 */
export function leftAfterChanges(changes: number): number {
  return Math.exp(-notNegative('changes', changes));
}
