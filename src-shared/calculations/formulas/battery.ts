import type { Basis } from '../topic.ts';
import { notNegative, within } from './checked.ts';

/** Seconds of an hour: charge is counted in ampere-hours. */
const HOUR_s = 3600;

/** What a battery is bought larger by, for its age [-]. */
export const BATTERY_RESERVE = 1.2;

export const batteryBasis: Basis = {
  formula: 'Q = k·(I_standby·t_standby + I_alarm·t_alarm), k = 1.2',
  source: 'sum of charges; 20 % above the calculated charge: NFPA 72 practice, memory',
  caution: 'Cold, age and a high current take away from what a battery is sold with: its maker’s tables and the manual of the panel govern.',
};
/**
 * Charge that the battery of a panel must hold.
 *
 * @param standby_A       I_standby, current while it waits [A], ≥ 0
 * @param standbyTime_s   t_standby, for so long [s], ≥ 0
 * @param alarm_A         I_alarm, current while it sounds and releases [A], ≥ 0
 * @param alarmTime_s     t_alarm, for so long after that [s], ≥ 0
 * @param reserve         k, what it is bought larger by [-], 1 to 5
 * @returns charge [Ah], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example batteryCharge_Ah(0.3, 86400, 2, 300, 1.2) // 8.84
 */
export function batteryCharge_Ah(standby_A: number, standbyTime_s: number, alarm_A: number, alarmTime_s: number, reserve: number): number {
  const waiting_As = notNegative('standby_A', standby_A) * notNegative('standbyTime_s', standbyTime_s);
  const alarming_As = notNegative('alarm_A', alarm_A) * notNegative('alarmTime_s', alarmTime_s);
  return (within('reserve', reserve, 1, 5) * (waiting_As + alarming_As)) / HOUR_s;
}
