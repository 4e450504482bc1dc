import type { Basis } from '../topic.ts';
import { between, finite, positive } from './checked.ts';

export const soundLevelBasis: Basis = {
  formula: 'Lp = 10·lg Σ 10^(Lw/10)·(1/(4π·r²) + 4/R);  R = S·α/(1 − α), α = 0.1;  in the open, R → ∞: Lp = Lw − 20·lg r − 11 dB',
  source: 'point source in a diffuse room, textbook room acoustics (memory); α of a bare hard room, which errs toward louder: common practice',
  caution: 'A nozzle close under a hard ceiling or in a corner is up to 3 to 6 dB louder nearby. Drives mind the pitch as well as the level: ask their maker.',
};
/** Mean share of sound that a bare hard room swallows: low on purpose, so that the level errs toward louder. */
export const HARD_ROOM_ABSORPTION = 0.1;
/** Nearer than this to an orifice no level is told apart [m]. */
export const NEAREST_SOURCE_m = 0.1;

/**
 * Room constant: the open area that would let as much sound go as the room swallows.
 *
 * @param surface_m2  S, floor, ceiling and walls [m²], > 0
 * @param absorption  α, mean share of sound that they swallow [-], above 0 and below 1
 * @returns R [m²], > 0
 * @throws {RangeError} argument not finite or out of range
 * @example roomConstant_m2(72.95, 0.1) // 8.1056
 */
export const roomConstant_m2 = (surface_m2: number, absorption: number): number => (positive('surface_m2', surface_m2) * between('absorption', absorption, 0, 1)) / (1 - absorption);

/**
 * Sound pressure level at a place while several sources sound in one room.
 *
 * @param powers_dB    Lw, sound power level of each source over 1 pW [dB]
 * @param distances_m  r, from each source to the place [m], > 0
 * @param room_m2      R, room constant; Infinity in the open [m²], > 0
 * @returns Lp over 20 µPa [dB]; −Infinity without a source
 * @throws {RangeError} argument not finite or out of range, or not as many distances as powers
 * @example soundLevel_dB([118, 118], [3, 4], 8.1056) // 118.0034
 */
export function soundLevel_dB(powers_dB: readonly number[], distances_m: readonly number[], room_m2: number): number {
  if (powers_dB.length !== distances_m.length) throw new RangeError('distances_m must be as many as powers_dB.');
  const around = room_m2 === Infinity ? 0 : 4 / positive('room_m2', room_m2);
  const sum = powers_dB.reduce((energy, power_dB, i) => {
    const distance_m = positive('distances_m', distances_m[i] ?? Number.NaN);
    return energy + 10 ** (finite('powers_dB', power_dB) / 10) * (1 / (4 * Math.PI * distance_m ** 2) + around);
  }, 0);
  return 10 * Math.log10(sum);
}
