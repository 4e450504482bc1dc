import { inches_m } from '../units/convert.ts';
import type { LengthSystem } from '../units/length-text.ts';

/** Tapes are read to this. */
const TAPE_m = { feet: inches_m(1 / 16), metric: 0.001 };
/** What float noise may take off a whole mark of the tape, as a share of it. */
const NOISE = 1e-6;

/** A length cut down to the mark of the tape before it, so that what is printed is never more than what is allowed. */
export const tapeDown_m = (length_m: number, system: LengthSystem): number => Math.floor(length_m / TAPE_m[system] + NOISE) * TAPE_m[system];

/** A length brought up to the next mark of the tape. */
export const tapeUp_m = (length_m: number, system: LengthSystem): number => Math.ceil(length_m / TAPE_m[system] - NOISE) * TAPE_m[system];
