import { type PipeSize, pipeOutside_m } from '../../profile/pipe-table.ts';
import { inches_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { effectiveThread_m, threadDepth_m } from './pipe-threads.ts';

/** Tape of half an inch, wound three turns thick [-, m]. */
const TURNS = 3;
const TAPE_WIDTH_m = inches_m(1 / 2);
/** Threads at the end of the pipe that are left clear, so that no sealant gets into it. */
const CLEAR_THREADS = 2;

/** Thread that gets sealant [m]. */
const sealed_m = (size: PipeSize): number => effectiveThread_m(size) - (CLEAR_THREADS * threadDepth_m(size)) / 0.8;

export const sealantTapeBasis: Basis = {
  formula: 'l = 3·π·D·max(1, (L2 − 2/n)/w), w = 1/2 in: three turns, the first two threads left clear',
  source: 'common practice; L2: ASME B1.20.1',
  caution: 'Tape or paste, not both, and only a sealant that the unit’s manual and the gas allow.',
};
/**
 * PTFE tape for one outside thread.
 *
 * @param size  nominal pipe size [-]
 * @returns length of tape [m]
 * @example sealantTape_m('3/4') // 0.251359
 */
export const sealantTape_m = (size: PipeSize): number => TURNS * Math.PI * pipeOutside_m(size) * Math.max(1, sealed_m(size) / TAPE_WIDTH_m);

export const sealantPasteBasis: Basis = {
  formula: 'V = π·D·(L2 − 2/n)·h/2: the valleys of the thread filled, the first two left clear',
  source: 'common practice; L2 and h: ASME B1.20.1',
  caution: 'Tape or paste, not both, and only a sealant that the unit’s manual and the gas allow.',
};
/**
 * Thread paste for one outside thread.
 *
 * @param size  nominal pipe size [-]
 * @returns volume [m³]
 * @example sealantPaste_m3('3/4') // 6.22e-7
 */
export const sealantPaste_m3 = (size: PipeSize): number => (Math.PI * pipeOutside_m(size) * sealed_m(size) * threadDepth_m(size)) / 2;
