import { NITROGEN_R_J_kgK } from '../formulas/nitrogen-coefficients.ts';
import { NITROGEN_HEAT_RATIO } from '../formulas/orifice.ts';
import { NITROGEN_GREATEST_K, NITROGEN_LEAST_K, nitrogenDensity_kg_m3, nitrogenState } from '../formulas/nitrogen.ts';

/** What the transient needs to know of the gas at one density and temperature. */
export interface GasState {
  readonly density_kg_m3: number;
  readonly temperature_K: number;
  readonly pressure_Pa: number;
  readonly internalEnergy_J_kg: number;
  readonly enthalpy_J_kg: number;
  readonly cv_J_kgK: number;
  readonly cp_J_kgK: number;
}

/** Nitrogen as a cylinder sees it. */
export interface Gas {
  /** Coldest for which it is known [K]. */
  readonly least_K: number;
  densityOf(pressure_Pa: number, temperature_K: number): number;
  stateOf(density_kg_m3: number, temperature_K: number): GasState;
}

/** Span and others' equation; Z, c_p and all else follow from it. */
export const REAL_NITROGEN: Gas = { least_K: NITROGEN_LEAST_K, densityOf: nitrogenDensity_kg_m3, stateOf: nitrogenState };

const IDEAL_CV_J_kgK = NITROGEN_R_J_kgK / (NITROGEN_HEAT_RATIO - 1);

/** p = ρ·R·T with γ = 1.4, at any temperature. */
export const IDEAL_NITROGEN: Gas = {
  least_K: 1e-3,
  densityOf: (pressure_Pa, temperature_K) => pressure_Pa / (NITROGEN_R_J_kgK * temperature_K),
  stateOf: (density_kg_m3, temperature_K) => ({
    density_kg_m3,
    temperature_K,
    pressure_Pa: density_kg_m3 * NITROGEN_R_J_kgK * temperature_K,
    internalEnergy_J_kg: IDEAL_CV_J_kgK * temperature_K,
    enthalpy_J_kg: NITROGEN_HEAT_RATIO * IDEAL_CV_J_kgK * temperature_K,
    cv_J_kgK: IDEAL_CV_J_kgK,
    cp_J_kgK: NITROGEN_HEAT_RATIO * IDEAL_CV_J_kgK,
  }),
};

/** Newton's step doubles the right digits: after one this small the temperature is right to far below a millikelvin. */
const ENERGY_STEP_K = 1e-3;
/** At constant pressure one step of this size leaves a millikelvin. */
const ENTHALPY_STEP_K = 0.3;
const MOST_STEPS = 60;

/**
 * State with a density and an inner energy.
 * @param guess_K  temperature to start from: that of the moment before
 * @returns undefined when it is colder than the gas is known for
 */
export function stateWithEnergy(gas: Gas, density_kg_m3: number, internalEnergy_J_kg: number, guess_K: number): GasState | undefined {
  let temperature_K = Math.max(gas.least_K, guess_K);
  let state = gas.stateOf(density_kg_m3, temperature_K);
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const step_K = (internalEnergy_J_kg - state.internalEnergy_J_kg) / state.cv_J_kgK;
    if (temperature_K === gas.least_K && step_K < 0) return undefined;
    temperature_K = Math.min(NITROGEN_GREATEST_K, Math.max(gas.least_K, temperature_K + step_K));
    state = gas.stateOf(density_kg_m3, temperature_K);
    if (Math.abs(step_K) < ENERGY_STEP_K) break;
    if (count === 0 && Math.abs(step_K) < 1e-2) break;
  }
  return state;
}

/**
 * Temperature of the gas once it has been throttled to a pressure without giving or taking heat.
 * @param guess_K  temperature to start from: that of the moment before
 * @returns undefined when it is colder than the gas is known for [K]
 */
export function throttledTemperature_K(gas: Gas, enthalpy_J_kg: number, pressure_Pa: number, guess_K: number): number | undefined {
  let temperature_K = Math.max(gas.least_K, guess_K);
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const state = gas.stateOf(gas.densityOf(pressure_Pa, temperature_K), temperature_K);
    const step_K = (enthalpy_J_kg - state.enthalpy_J_kg) / state.cp_J_kgK;
    if (temperature_K === gas.least_K && step_K < 0) return undefined;
    temperature_K = Math.min(NITROGEN_GREATEST_K, Math.max(gas.least_K, temperature_K + step_K));
    if (Math.abs(step_K) < ENTHALPY_STEP_K) break;
  }
  return temperature_K;
}
