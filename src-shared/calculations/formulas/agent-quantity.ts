import type { Basis } from '../topic.ts';
import { between, notNegative, positive, within } from './checked.ts';

/** The natural logarithm, or 2.303 times the common one: 0.018 % more agent. */
export const LOGARITHMS = ['exact', '2.303'] as const;
export type Logarithm = (typeof LOGARITHMS)[number];

/** The rounded ln 10 of the printed formula, on purpose not the exact one. */
const PRINTED_LN10 = 2303 / 1000;
const ofLogarithm = (value: number, logarithm: Logarithm): number => (logarithm === 'exact' ? Math.log(value) : PRINTED_LN10 * Math.log10(value));

export const floodingMassBasis: Basis = {
  formula: 'm = (V/s)·ln(100/(100 − C)), or with 2.303·log10 for ln',
  source: 'EN 15004-7, -8 and -10:2008, notes to Table 3; 2.303·log10 in NFPA 2001, quantity of inert gas (memory)',
  caution: 'V is the net volume: only fixed, gas-tight objects are taken off. s at the lowest temperature of the room. What leaks or is carried off during the discharge is in the formula, what leaks after it is not.',
};
/**
 * Mass of agent that floods an enclosure to a concentration while the mixture it displaces leaves.
 *
 * @param volume_m3               V, net volume [m³], > 0
 * @param specificVolume_m3_kg    s, of the agent at the temperature and pressure of the room [m³/kg], > 0
 * @param concentration_pct       C, wanted [vol %], 0 to 99.999
 * @param logarithm               which form of the logarithm [-]
 * @returns mass [kg], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example floodingMass_kg(240, 0.85828, 40.3, 'exact') // 144.243
 */
export function floodingMass_kg(volume_m3: number, specificVolume_m3_kg: number, concentration_pct: number, logarithm: Logarithm): number {
  return (positive('volume_m3', volume_m3) / positive('specificVolume_m3_kg', specificVolume_m3_kg)) * airChanges(concentration_pct, logarithm);
}

/**
 * Volume of agent, as it is in the room, for each volume of room: the logarithm of the flooding formula.
 *
 * @param concentration_pct  C, wanted [vol %], 0 to 99.999
 * @param logarithm          which form of the logarithm [-]
 * @returns agent for each volume of room [m³/m³], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example airChanges(40.3, 'exact') // 0.515838
 */
export function airChanges(concentration_pct: number, logarithm: Logarithm): number {
  return ofLogarithm(100 / (100 - within('concentration_pct', concentration_pct, 0, 99.999)), logarithm);
}

export const concentrationBasis: Basis = {
  formula: 'C = 100·(1 − exp(−m·s/V))',
  source: 'EN 15004-8:2008, quantity formula solved for C',
  caution: 'Judge people by the installed mass at the highest temperature of the room: whole cylinders and a warm room give more than was designed.',
};
/**
 * Concentration that a mass of agent gives.
 *
 * @param mass_kg                 m, of agent let in [kg], ≥ 0
 * @param specificVolume_m3_kg    s, of the agent at the temperature and pressure of the room [m³/kg], > 0
 * @param volume_m3               V, net volume [m³], > 0
 * @returns concentration [vol %], 0 to 100
 * @throws {RangeError} argument not finite or out of range
 * @example concentrationOf_pct(156.91, 0.90223, 240) // 44.56
 */
export function concentrationOf_pct(mass_kg: number, specificVolume_m3_kg: number, volume_m3: number): number {
  return -100 * Math.expm1((-notNegative('mass_kg', mass_kg) * positive('specificVolume_m3_kg', specificVolume_m3_kg)) / positive('volume_m3', volume_m3));
}

export const referenceVolumeBasis: Basis = {
  formula: 'Q_R = m·s_R, s_R at 20 °C (ISO, EN) or 70 °F (NFPA) and 1.013 bar; flooding factor Q_R/V',
  source: 'EN 15004-8:2008, notes to Table 3; 70 °F in NFPA 2001 (memory)',
};
/**
 * Volume that a mass of agent has at the reference temperature and sea-level pressure.
 *
 * @param mass_kg                          m, of agent [kg], ≥ 0
 * @param referenceSpecificVolume_m3_kg    s_R, at the reference temperature [m³/kg], > 0
 * @returns volume [m³], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example referenceVolume_m3(144.243, 0.85828) // 123.801
 */
export function referenceVolume_m3(mass_kg: number, referenceSpecificVolume_m3_kg: number): number {
  return notNegative('mass_kg', mass_kg) * positive('referenceSpecificVolume_m3_kg', referenceSpecificVolume_m3_kg);
}

/**
 * Reference volume of agent for each volume of room, as the tables of the standards give it.
 *
 * @param specificVolume_m3_kg             s, at the temperature of the room [m³/kg], > 0
 * @param referenceSpecificVolume_m3_kg    s_R, at the reference temperature [m³/kg], > 0
 * @param concentration_pct                C, wanted [vol %], 0 to 99.999
 * @param logarithm                        which form of the logarithm [-]
 * @returns flooding factor [m³/m³], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example floodingFactor(0.85828, 0.85828, 40.3, 'exact') // 0.5158
 */
export function floodingFactor(specificVolume_m3_kg: number, referenceSpecificVolume_m3_kg: number, concentration_pct: number, logarithm: Logarithm): number {
  return referenceVolume_m3(floodingMass_kg(1, specificVolume_m3_kg, concentration_pct, logarithm), referenceSpecificVolume_m3_kg);
}

export const cylindersNeededBasis: Basis = {
  formula: 'n = m/m_each, rounded up',
  source: 'arithmetic',
  caution: 'Rounding up raises the concentration: judge people again with the installed mass.',
};
/** Share by which a sum may miss for binary numbers alone: no cylinder more, and no fault. */
export const SUM_NOISE = 1e-9;
/**
 * Whole cylinders that hold a mass.
 *
 * @param mass_kg      m, needed [kg], ≥ 0
 * @param massEach_kg  fill of one cylinder [kg], > 0
 * @returns cylinders [-], whole, ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example cylindersNeeded(146.748, 31.382) // 5
 */
export function cylindersNeeded(mass_kg: number, massEach_kg: number): number {
  return Math.ceil((notNegative('mass_kg', mass_kg) / positive('massEach_kg', massEach_kg)) * (1 - SUM_NOISE));
}

export const massShareTo95Basis: Basis = {
  formula: 'm95/m = ln(100/(100 − 0.95·C))/ln(100/(100 − C))',
  source: 'the flooding formula twice, EN 15004-8:2008',
  caution: 'The discharge time runs to 95 % of the minimum design concentration, which is reached before 95 % of the mass is in.',
};
/**
 * Share of the mass of agent with which 95 % of its concentration is reached.
 *
 * @param concentration_pct  C, that the whole mass gives [vol %], above 0, below 100
 * @returns share, 0.95 towards weak mixtures and less for stronger ones [-]
 * @throws {RangeError} argument not finite or out of range
 * @example massShareTo95(40.3) // 0.9356
 */
export function massShareTo95(concentration_pct: number): number {
  const share = between('concentration_pct', concentration_pct, 0, 100) / 100;
  return Math.log1p(-0.95 * share) / Math.log1p(-share);
}
