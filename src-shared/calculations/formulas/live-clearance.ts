import { inches_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { notNegative } from './checked.ts';

/** Nominal voltage of a three-phase system up to which a clearance holds [kV], and the clearance [in]. Of a group of insulation levels the largest clearance. */
const CLEARANCES: readonly (readonly [number, number])[] = [
  [13.8, 7],
  [23, 10],
  [34.5, 13],
  [46, 17],
  [69, 25],
  [115, 42],
  [138, 50],
  [161, 58],
  [230, 84],
  [345, 104],
  [500, 144],
  [765, 167],
];
/** Float noise of a voltage that stands exactly in the table. */
const NOISE = 1e-9;

export const liveClearanceBasis: Basis = {
  formula: 'clearance by nominal voltage of the system, √3 × voltage to earth: 7 in to 13.8 kV, 10 in to 23, 13 in to 34.5, 17 in to 46, 25 in to 69, 42 in to 115, 50 in to 138, 58 in to 161, 84 in to 230, 104 in to 345, 144 in to 500, 167 in to 765; between two, the next larger',
  source: 'NFPA 2001, NFPA 12 and NFPA 15, clearances to live electrical parts (memory); to 161 kV as NEC 490.24, outdoors, phase to ground',
  caution: 'For parts of the system as they hang. While anybody works on it the safe distance of the electrical code is greater. Each insulation level of a voltage takes the largest clearance of its group.',
};
/**
 * Least clearance between any part of the system and a live part that is not insulated.
 *
 * @param toEarth_V  highest voltage of the live part to earth [V], ≥ 0
 * @returns clearance through air, undefined above the table [m]
 * @throws {RangeError} argument not finite or below 0
 * @example liveClearance_m(13279) // 0.254
 */
export function liveClearance_m(toEarth_V: number): number | undefined {
  const nominal_kV = (Math.sqrt(3) * notNegative('toEarth_V', toEarth_V)) / 1000;
  const row = CLEARANCES.find(([upTo_kV]) => nominal_kV <= upTo_kV * (1 + NOISE));
  return row && inches_m(row[1]);
}
