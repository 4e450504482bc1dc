import { INCH_m } from '../units/convert.ts';

const SIXTEENTH_m = INCH_m / 16;
const MILLIMETRE_m = 0.001;

/** A cut length as a tape shows it, and what the rounding left over. */
export interface RoundedCut {
  readonly length_m: number;
  /** True length less the rounded one, above 0 where it was rounded down [m]. */
  readonly remainder_m: number;
  readonly way: 'down' | 'up' | 'exact';
}

/** Float noise, not a remainder [m]. */
const NOISE_m = 1e-9;

/**
 * Rounds a cut length to the nearest 1/16 in or 1 mm; half a step goes up.
 * @example roundCut(3.003423, 'metric').length_m // 3.003
 */
export function roundCut(cut_m: number, lengths: 'feet' | 'metric'): RoundedCut {
  const step_m = lengths === 'feet' ? SIXTEENTH_m : MILLIMETRE_m;
  const length_m = Math.floor(cut_m / step_m + 0.5 + NOISE_m) * step_m;
  const remainder_m = cut_m - length_m;
  return { length_m, remainder_m, way: Math.abs(remainder_m) <= NOISE_m ? 'exact' : remainder_m > 0 ? 'down' : 'up' };
}
