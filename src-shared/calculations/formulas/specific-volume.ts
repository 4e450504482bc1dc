import type { Basis } from '../topic.ts';
import { within } from './checked.ts';

/** The inert agents of total flooding. */
export const INERT_AGENTS = ['IG-100', 'IG-01', 'IG-55', 'IG-541'] as const;
export type InertAgent = (typeof INERT_AGENTS)[number];

/** Whose constants: the two sets differ for IG-01 only, by 1.3 %. */
export const SPECIFIC_VOLUME_SETS = ['iso', 'nfpa'] as const;
export type SpecificVolumeSet = (typeof SPECIFIC_VOLUME_SETS)[number];

/** k1 [m³/kg] and k2 [m³/(kg·°C)] at 1.013 bar. */
type Line = readonly [k1: number, k2: number];

const ISO: Readonly<Record<InertAgent, Line>> = {
  'IG-100': [0.79968, 0.00293],
  'IG-01': [0.56119, 0.0020545],
  'IG-55': [0.6598, 0.00242],
  'IG-541': [0.65799, 0.00239],
};
const LINES: Readonly<Record<SpecificVolumeSet, Readonly<Record<InertAgent, Line>>>> = { iso: ISO, nfpa: { ...ISO, 'IG-01': [0.5685, 0.00208] } };

export const specificVolumeBasis: Basis = {
  formula: 's = k1 + k2·T, T in °C, at 1.013 bar',
  source: 'EN 15004-8:2008 (IG-100), EN 15004-7:2008 (IG-01), EN 15004-10:2008 (k1 of IG-541); IG-55, k2 of IG-541 and the NFPA 2001 set for IG-01 are memory, checked against the ideal gas',
  caution: 'The NFPA 2001 set for IG-01 is 1.3 % above argon. One adoption of EN 15004-10 misprints k2 of IG-541 as 0.002239.',
};

/**
 * Specific volume of an inert agent at sea-level pressure.
 *
 * @param agent          which agent [-]
 * @param temperature_K  T, of the room [K], 173.15 to 373.15
 * @param constants      whose constants [-]
 * @returns specific volume [m³/kg]
 * @throws {RangeError} temperature not finite or out of range
 * @example specificVolume_m3_kg('IG-100', 293.15, 'iso') // 0.85828
 */
export function specificVolume_m3_kg(agent: InertAgent, temperature_K: number, constants: SpecificVolumeSet): number {
  const [k1, k2] = LINES[constants][agent];
  return k1 + k2 * (within('temperature_K', temperature_K, 173.15, 373.15) - 273.15);
}
