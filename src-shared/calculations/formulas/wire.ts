import { WIRE_GAUGES } from '../../model/schema.ts';
import { feet_m } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { within } from './checked.ts';

export { WIRE_GAUGES };
/** American wire gauge of copper. */
export type WireGauge = (typeof WIRE_GAUGES)[number];

export const STRANDINGS = ['solid', 'stranded'] as const;
export type Stranding = (typeof STRANDINGS)[number];

/** Uncoated copper at 75 °C [ohm per 1000 ft]. */
const RESISTANCES: Readonly<Record<WireGauge, Readonly<Record<Stranding, number>>>> = {
  18: { solid: 7.77, stranded: 7.95 },
  16: { solid: 4.89, stranded: 4.99 },
  14: { solid: 3.07, stranded: 3.14 },
  12: { solid: 1.93, stranded: 1.98 },
  10: { solid: 1.21, stranded: 1.24 },
};

export const wireResistanceBasis: Basis = {
  formula: 'R = R75·[1 + 0.00323·(T − 75 °C)]',
  source: 'NEC Chapter 9 Table 8, copper, uncoated',
};
/**
 * Direct-current resistance of one copper conductor.
 *
 * @param gauge          American wire gauge [-]
 * @param stranding      solid or of seven strands [-]
 * @param temperature_K  T, of the copper [K], 223.15 to 423.15
 * @returns resistance of a metre [Ω/m]
 * @throws {RangeError} temperature not finite or out of range
 * @example wireResistance_ohm_m('14', 'solid', 348.15) // 0.0100722
 */
export function wireResistance_ohm_m(gauge: WireGauge, stranding: Stranding, temperature_K: number): number {
  const warmer_K = within('temperature_K', temperature_K, 223.15, 423.15) - 348.15;
  return (RESISTANCES[gauge][stranding] / feet_m(1000)) * (1 + 0.00323 * warmer_K);
}
