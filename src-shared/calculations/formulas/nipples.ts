import type { PipeSize } from '../../profile/pipe-table.ts';
import { inches_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { positive } from './checked.ts';
import { effectiveThread_m } from './pipe-threads.ts';

/** What a short piece of pipe is called: bought ready threaded rather than cut. */
export type Nipple = 'close' | 'short' | 'long';

/** Lengths in which close and short nipples are sold [in]. */
const SOLD_in: Readonly<Record<PipeSize, readonly [close: number, short: number]>> = {
  '1/4': [0.875, 1.5],
  '3/8': [1, 1.5],
  '1/2': [1.125, 1.5],
  '3/4': [1.375, 2],
  '1': [1.5, 2],
  '1-1/4': [1.625, 2.5],
  '1-1/2': [1.75, 2.5],
  '2': [2, 2.5],
  '2-1/2': [2.5, 3],
  '3': [2.625, 3],
  '4': [2.875, 4],
};
/** Up to here pipe is bought as a nipple: threading machines hold nothing shorter without a nipple chuck. */
const LONGEST_NIPPLE_m = inches_m(6);

export const nippleBasis: Basis = {
  formula: 'close: from 2·L2, where the two threads meet, to the close length sold; short: to the short length sold; long: to 6 in',
  source: 'L2: ASME B1.20.1; lengths sold: ASTM A733, memory; 6 in: common practice',
  caution: 'A nipple is sold in steps: take the next one only where the take-up of its threads makes up for the difference.',
};
/**
 * What a threaded piece of pipe is called when it is too short to be cut and threaded like any other.
 *
 * @param size      nominal pipe size [-]
 * @param length_m  length with both threads [m], > 0
 * @returns the nipple; null for longer pipe and for less than two threads, which no nipple has [-]
 * @throws {RangeError} length not finite or out of range
 * @example nippleOf('3/4', 0.03) // 'close'
 */
export function nippleOf(size: PipeSize, length_m: number): Nipple | null {
  const [close_in, short_in] = SOLD_in[size];
  if (positive('length_m', length_m) < 2 * effectiveThread_m(size) - 1e-9 || length_m > LONGEST_NIPPLE_m + 1e-9) return null;
  if (length_m <= inches_m(close_in) + 1e-9) return 'close';
  return length_m <= inches_m(short_in) + 1e-9 ? 'short' : 'long';
}
