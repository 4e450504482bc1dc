import { INCH_m } from './convert.ts';
import { type LengthPrecision, type LengthSystem, formatLength, parseLength } from './length-text.ts';

/** What float noise may take off a length that stands on a mark [m]. */
const NOISE_m = 1e-8;
const PRECISIONS: readonly LengthPrecision[] = ['site', 'fine'];
/** Digits of the inch or millimetre of a length that stands on no mark. */
const INCH_DIGITS = 4;
const MILLIMETRE_DIGITS = 2;

/**
 * A length as it was read off a tape, if it stands on a mark of one: first in the way of writing that is set (1/16 in, 1/64 in;
 * 1 mm, 0.1 mm), else in the other, so that 3460 mm stays 3.460 m where lengths are shown in feet. undefined: on no mark.
 */
export function lengthOnMark(length_m: number, system: LengthSystem): string | undefined {
  for (const each of [system, system === 'feet' ? 'metric' : 'feet'] as const) {
    for (const precision of PRECISIONS) {
      const text = formatLength(length_m, each, { precision });
      const read = parseLength(text, each);
      if (read.ok && Math.abs(read.length_m - length_m) <= NOISE_m) return text;
    }
  }
  return undefined;
}

/** A measured length so that it can be read back as what it was: on a mark of a tape, else with decimals (0.0001 in, 0.01 mm). */
export const exactLengthText = (length_m: number, system: LengthSystem): string =>
  lengthOnMark(length_m, system) ?? (Number.isFinite(length_m) ? (system === 'feet' ? `${(length_m / INCH_m).toFixed(INCH_DIGITS)}"` : `${(length_m * 1000).toFixed(MILLIMETRE_DIGITS)} mm`) : 'not known');
