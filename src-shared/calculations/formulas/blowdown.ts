import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';
import { NITROGEN_R_J_kgK } from './nitrogen-coefficients.ts';
import { NITROGEN_HEAT_RATIO, chokedFlowFunction, chokedPressureRatio } from './orifice.ts';

/** A vessel of nitrogen that empties through a choked orifice. */
export interface Vessel {
  readonly volume_m3: number;
  /** At the start, absolute. */
  readonly pressure_Pa: number;
  readonly temperature_K: number;
  /** Of the orifice [m²]. */
  readonly area_m2: number;
  readonly dischargeCoefficient: number;
  /** Behind the orifice, absolute. */
  readonly backPressure_Pa: number;
}

/** How the gas left in the vessel takes heat: none, or all that keeps it as warm as it was. */
export const BLOWDOWN_PROCESSES = ['adiabatic', 'isothermal'] as const;
export type BlowdownProcess = (typeof BLOWDOWN_PROCESSES)[number];

/** Where a blowdown has come to. */
export interface BlowdownState {
  readonly time_s: number;
  readonly pressure_Pa: number;
  readonly temperature_K: number;
  /** Of the mass at the start. */
  readonly massFraction: number;
}

const GAMMA = NITROGEN_HEAT_RATIO;
const CHOKED_RATIO = chokedPressureRatio(GAMMA);

export const blowdownTimeScaleBasis: Basis = {
  formula: 'τ = V/(C_d·A·Γ·√(R·T₀)),  Γ = 0.684731, R = 296.80 J/(kg·K)',
  source: 'mass balance of a vessel with choked flow of an ideal gas, any gas-dynamics text',
};
/**
 * Time scale of a blowdown: in so long the first flow would empty the vessel.
 *
 * @param vessel  the vessel and its orifice [-]
 * @returns time [s]
 * @throws {RangeError} argument not finite or out of range
 * @example blowdownTimeScale_s({ volume_m3: 0.08, pressure_Pa: 200e5, temperature_K: 288.15, area_m2: Math.PI * 0.0025 ** 2, dischargeCoefficient: 0.85, backPressure_Pa: 101325 }) // 23.937
 */
export function blowdownTimeScale_s(vessel: Vessel): number {
  const effective_m2 = positive('area_m2', vessel.area_m2) * within('dischargeCoefficient', positive('dischargeCoefficient', vessel.dischargeCoefficient), 0, 1);
  return positive('volume_m3', vessel.volume_m3) / (effective_m2 * chokedFlowFunction(GAMMA) * Math.sqrt(NITROGEN_R_J_kgK * positive('temperature_K', vessel.temperature_K)));
}

export const idealBlowdownBasis: Basis = {
  formula: 'isothermal: p/p₀ = m/m₀ = e^(−t/τ); adiabatic, x = 1 + (γ−1)/2·t/τ: p/p₀ = x^(−2γ/(γ−1)), T/T₀ = x^(−2), m/m₀ = x^(−2/(γ−1)); γ = 1.4',
  source: blowdownTimeScaleBasis.source,
  caution: 'Ideal gas, and choked to the end. At 200 bar its mass is 5 % too great, and the mass left at 60 bar 16 % too small. A steel cylinder lies between the two processes; below about 190 K the adiabatic one is no longer physical.',
};
/**
 * An ideal gas after some time of blowdown.
 *
 * @param vessel   the vessel and its orifice [-]
 * @param process  how the gas left takes heat [adiabatic or isothermal]
 * @param time_s   t, since it opened [s], ≥ 0
 * @returns pressure, temperature and mass left [Pa, K, -]
 * @throws {RangeError} argument not finite or out of range, or the orifice no longer chokes
 * @example Number(idealBlowdownAt({ volume_m3: 0.08, pressure_Pa: 200e5, temperature_K: 288.15, area_m2: Math.PI * 0.0025 ** 2, dischargeCoefficient: 0.85, backPressure_Pa: 101325 }, 'adiabatic', 20).pressure_Pa) // 6_780_578
 */
export function idealBlowdownAt(vessel: Vessel, process: BlowdownProcess, time_s: number): BlowdownState {
  const scaled = notNegative('time_s', time_s) / blowdownTimeScale_s(vessel);
  const x = 1 + ((GAMMA - 1) / 2) * scaled;
  const isIsothermal = process === 'isothermal';
  const pressure_Pa = positive('pressure_Pa', vessel.pressure_Pa) * (isIsothermal ? Math.exp(-scaled) : x ** ((-2 * GAMMA) / (GAMMA - 1)));
  refuseUnchoked('time_s', pressure_Pa, pressure_Pa * CHOKED_RATIO, vessel.backPressure_Pa);
  return {
    time_s,
    pressure_Pa,
    temperature_K: vessel.temperature_K * (isIsothermal ? 1 : x ** -2),
    massFraction: isIsothermal ? Math.exp(-scaled) : x ** (-2 / (GAMMA - 1)),
  };
}

export const idealBlowdownToBasis: Basis = idealBlowdownBasis;
/**
 * Time until an ideal gas has fallen to a pressure, and what is left then.
 *
 * @param vessel         the vessel and its orifice [-]
 * @param process        how the gas left takes heat [adiabatic or isothermal]
 * @param toPressure_Pa  p, at the end, absolute [Pa], at most p₀; the orifice must still choke there
 * @returns time, temperature and mass left [s, K, -]
 * @throws {RangeError} argument not finite or out of range, or the orifice no longer chokes
 * @example Number(idealBlowdownTo({ volume_m3: 0.08, pressure_Pa: 200e5, temperature_K: 288.15, area_m2: Math.PI * 0.0025 ** 2, dischargeCoefficient: 0.85, backPressure_Pa: 101325 }, 'isothermal', 57.114e5).time_s) // 30.000
 */
export function idealBlowdownTo(vessel: Vessel, process: BlowdownProcess, toPressure_Pa: number): BlowdownState {
  const ratio = within('toPressure_Pa', positive('toPressure_Pa', toPressure_Pa), 0, positive('pressure_Pa', vessel.pressure_Pa)) / vessel.pressure_Pa;
  refuseUnchoked('toPressure_Pa', toPressure_Pa, toPressure_Pa * CHOKED_RATIO, vessel.backPressure_Pa);
  const scaled = process === 'isothermal' ? Math.log(1 / ratio) : (2 / (GAMMA - 1)) * (ratio ** ((1 - GAMMA) / (2 * GAMMA)) - 1);
  return { ...idealBlowdownAt({ ...vessel, backPressure_Pa: 0 }, process, scaled * blowdownTimeScale_s(vessel)), pressure_Pa: toPressure_Pa };
}

/**
 * Refuses a pressure at which the orifice no longer chokes: from there the formulas of a blowdown do not hold.
 *
 * @param name            what brought the vessel to that pressure [-]
 * @param pressure_Pa     in the vessel, absolute [Pa]
 * @param throat_Pa       in the throat if it choked, absolute [Pa]
 * @param backPressure_Pa behind the orifice, absolute [Pa], ≥ 0
 * @returns nothing [-]
 * @throws {RangeError} naming the pressure
 */
export function refuseUnchoked(name: string, pressure_Pa: number, throat_Pa: number, backPressure_Pa: number): void {
  // A hair, so that the pressure at which choking just ends is still taken.
  if (throat_Pa * (1 + 1e-9) >= notNegative('backPressure_Pa', backPressure_Pa)) return;
  const least_Pa = (backPressure_Pa * pressure_Pa) / throat_Pa;
  throw new RangeError(`${name} brings the vessel to ${Math.round(pressure_Pa)} Pa, where the orifice no longer chokes: the pressure must be at least ${Math.ceil(least_Pa)} Pa.`);
}
