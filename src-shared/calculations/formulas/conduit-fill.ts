import { CONDUIT_SIZES, CONDUITS, WIRE_GAUGES as CONDUCTOR_GAUGES } from '../../model/schema.ts';
import { inches_m, squareInches_m2 } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { within } from './checked.ts';

export { CONDUITS };
/** Electrical metallic tubing, or flexible metal conduit. */
export type Conduit = (typeof CONDUITS)[number];
export { CONDUIT_SIZES };
export type ConduitSize = (typeof CONDUIT_SIZES)[number];
export const CONDUCTOR_TYPES = ['THHN', 'TFFN'] as const;
export type ConductorType = (typeof CONDUCTOR_TYPES)[number];
export { CONDUCTOR_GAUGES };
export type ConductorGauge = (typeof CONDUCTOR_GAUGES)[number];

/** Inside diameters [in]. */
const BORES: Readonly<Record<Conduit, Readonly<Partial<Record<ConduitSize, number>>>>> = {
  FMC: { '3/8': 0.384, '1/2': 0.635 },
  EMT: { '1/2': 0.622, '3/4': 0.824 },
};
/** Areas with insulation [in²]. */
const CONDUCTORS: Readonly<Record<ConductorType, Readonly<Partial<Record<ConductorGauge, number>>>>> = {
  THHN: { 14: 0.0097, 12: 0.0133, 10: 0.0211 },
  TFFN: { 18: 0.0055, 16: 0.0072 },
};

export const conduitAreaBasis: Basis = { formula: 'A = π/4·d²', source: 'NEC Chapter 9 Table 4, inside diameters' };
/**
 * Inside area of a conduit.
 *
 * @param conduit    kind of conduit [-]
 * @param tradeSize  its trade size [-]
 * @returns area [m²]
 * @throws {RangeError} a size that the table does not have
 * @example conduitArea_m2('EMT', '1/2') // 0.000196
 */
export function conduitArea_m2(conduit: Conduit, tradeSize: ConduitSize): number {
  const bore_in = BORES[conduit][tradeSize];
  if (bore_in === undefined) throw new RangeError(`tradeSize ${tradeSize} of ${conduit} is not in the table; it has ${Object.keys(BORES[conduit]).join(' and ')}.`);
  return (Math.PI / 4) * inches_m(bore_in) ** 2;
}

export const conductorAreaBasis: Basis = { formula: 'area with insulation', source: 'NEC Chapter 9 Table 5: THHN read, TFFN memory' };
/**
 * Area of an insulated conductor.
 *
 * @param type       kind of insulation [-]
 * @param wireGauge  American wire gauge [-]
 * @returns area [m²]
 * @throws {RangeError} a gauge that the table does not have
 * @example conductorArea_m2('THHN', '14') // 0.00000626
 */
export function conductorArea_m2(type: ConductorType, wireGauge: ConductorGauge): number {
  const area_in2 = CONDUCTORS[type][wireGauge];
  if (area_in2 === undefined) throw new RangeError(`wireGauge ${wireGauge} of ${type} is not in the table; it has ${Object.keys(CONDUCTORS[type]).join(', ')}.`);
  return squareInches_m2(area_in2);
}

export const allowedFillBasis: Basis = {
  formula: '53 % for one conductor, 31 % for two, 40 % for more',
  source: 'NEC Chapter 9 Table 1',
  caution: 'Flexible metal conduit of trade size 3/8 has a table of its own (NEC 348.22, memory), which governs. From 0.8 of a wire on, NEC Table 1 note 7 (memory) lets one more of the same size in; this does not.',
};
/**
 * Share of a conduit's area that conductors may take.
 *
 * @param count  conductors in it [-], 1 or more
 * @returns share [-]
 * @throws {RangeError} count out of range
 * @example allowedFill(2) // 0.31
 */
export function allowedFill(count: number): number {
  within('count', count, 1, 10_000);
  if (count === 1) return 0.53;
  return count === 2 ? 0.31 : 0.4;
}
