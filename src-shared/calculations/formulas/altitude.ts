import { ALTITUDE_METHODS } from '../../model/basis-of-design.ts';
import { ATMOSPHERE_Pa, feet_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { within } from './checked.ts';

/** Whose altitude correction: the table of ISO 14520-1, that of NFPA 2001, or the standard atmosphere. */
export { ALTITUDE_METHODS };
export type AltitudeMethod = (typeof ALTITUDE_METHODS)[number];

type Row = readonly [altitude_m: number, factor: number];

const ISO: readonly Row[] = [
  [-1000, 1.13],
  [0, 1],
  [1000, 0.885],
  [1500, 0.83],
  [2000, 0.785],
  [2500, 0.735],
  [3000, 0.69],
  [3500, 0.65],
  [4000, 0.61],
  [4500, 0.565],
];
/** From −3000 ft to 10 000 ft in steps of 1000 ft. */
const NFPA: readonly Row[] = [1.11, 1.07, 1.04, 1, 0.96, 0.93, 0.89, 0.86, 0.82, 0.78, 0.75, 0.72, 0.69, 0.66].map((factor, index) => [feet_m(1000 * (index - 3)), factor]);

/** Where each method answers [m]. */
export const ALTITUDE_RANGES: Readonly<Record<AltitudeMethod, { readonly least_m: number; readonly greatest_m: number }>> = {
  iso: { least_m: -1000, greatest_m: 4500 },
  nfpa: { least_m: feet_m(-3000), greatest_m: feet_m(10_000) },
  isa: { least_m: -2000, greatest_m: 11_000 },
};

/** Straight between the rows around an altitude; the rows cover it. */
function interpolated(rows: readonly Row[], altitude_m: number): number {
  const above = rows.findIndex(([row_m]) => row_m >= altitude_m);
  const [high_m, high] = rows[above] ?? [altitude_m, Number.NaN];
  const [low_m, low] = rows[above - 1] ?? [high_m, high];
  return high_m === low_m ? high : low + ((high - low) * (altitude_m - low_m)) / (high_m - low_m);
}

export const altitudeBasis: Basis = {
  formula: 'm_alt = m·f; f by the table, straight between its rows, or f = (1 − 2.25577e-5·h)^5.25588',
  source: 'ISO 14520-1 and EN 15004-1 altitude table (memory, within 0.8 % of the standard atmosphere); NFPA 2001 Table 5.5.3.3 (memory, up to 4 % below the standard atmosphere); ISO 2533 standard atmosphere',
  caution: 'A room kept at another pressure than the air around it needs the factor of its own pressure. NFPA 2001 gives less agent at altitude than the other two.',
};
/**
 * Factor on the quantity of agent for the lower pressure of an altitude; also on oxygen, for what it is worth at sea level.
 *
 * @param altitude_m  h, above sea level [m], iso −1000 to 4500, nfpa −914.4 to 3048, isa −2000 to 11 000
 * @param method      whose correction [-]
 * @returns pressure there over that at sea level [-]
 * @throws {RangeError} altitude not finite or outside the method's range
 * @example altitudeFactor(1500, 'iso') // 0.830
 */
export function altitudeFactor(altitude_m: number, method: AltitudeMethod): number {
  const { least_m, greatest_m } = ALTITUDE_RANGES[method];
  within(`altitude_m by the method ${method}`, altitude_m, least_m, greatest_m);
  switch (method) {
    case 'iso':
      return interpolated(ISO, altitude_m);
    case 'nfpa':
      return interpolated(NFPA, altitude_m);
    case 'isa':
      return (1 - 2.25577e-5 * altitude_m) ** 5.25588;
  }
}

export const atmospherePressureBasis: Basis = {
  formula: 'p = f·101 325 Pa',
  source: 'ISO 2533 standard atmosphere, or the factor of the chosen table',
};
/**
 * Pressure of the air at an altitude, as a method has it.
 *
 * @param altitude_m  h, above sea level [m], in the method's range
 * @param method      whose correction [-]
 * @returns absolute pressure [Pa]
 * @throws {RangeError} altitude not finite or outside the method's range
 * @example atmospherePressure_Pa(1500, 'isa') // 84556
 */
export function atmospherePressure_Pa(altitude_m: number, method: AltitudeMethod): number {
  return ATMOSPHERE_Pa * altitudeFactor(altitude_m, method);
}
