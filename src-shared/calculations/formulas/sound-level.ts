import type { Basis } from '../topic.ts';
import { finite, positive } from './checked.ts';

/** Where the makers of sounders measure them [m]: 10 ft in NFPA 72 and UL 464, taken as 3 m. */
export const SOUND_MEASURED_AT_m = 3;

export const soundFallBasis: Basis = {
  formula: 'L = L₃ − 20·log₁₀(r/3 m)',
  source: 'sound of a small source in the open: 6 dB less at twice the distance (acoustics)',
  caution: 'Walls throw sound back, so that a room is rather louder; things that soak it up and doors that are shut make it quieter. Measure it when the alarm is tested.',
};
/**
 * Loudness of a sounder at a distance.
 *
 * @param measured_dBA  L₃, at 3 m [dB A]
 * @param distance_m    r, from the sounder [m], > 0
 * @returns loudness [dB A]
 * @throws {RangeError} argument not finite or out of range
 * @example soundAt_dBA(90, 6) // 83.98
 */
export const soundAt_dBA = (measured_dBA: number, distance_m: number): number =>
  finite('measured_dBA', measured_dBA) - 20 * Math.log10(positive('distance_m', distance_m) / SOUND_MEASURED_AT_m);

export const soundSumBasis: Basis = {
  formula: 'L = 10·log₁₀ Σ 10^(Lᵢ/10)',
  source: 'sum of the energies of sounds that do not keep step (acoustics)',
};
/**
 * Loudness of several sounds together.
 *
 * @param levels_dBA  Lᵢ, each by itself [dB A]
 * @returns loudness [dB A], −Infinity for none
 * @throws {RangeError} a loudness not finite
 * @example soundSum_dBA([80, 80]) // 83.01
 */
export const soundSum_dBA = (levels_dBA: readonly number[]): number => 10 * Math.log10(levels_dBA.reduce((sum, level_dBA) => sum + 10 ** (finite('level_dBA', level_dBA) / 10), 0));
