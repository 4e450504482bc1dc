import type { Basis } from '../topic.ts';
import { between, notNegative, positive, within } from './checked.ts';
import { NITROGEN_R_J_kgK } from './nitrogen-coefficients.ts';
import { nitrogenAtEntropy, nitrogenExpandedTo } from './nitrogen-isentrope.ts';
import { NITROGEN_GREATEST_K, NITROGEN_LEAST_K, nitrogenDensity_kg_m3, nitrogenState, type NitrogenState } from './nitrogen.ts';

/** cp/cv of nitrogen as an ideal gas. */
export const NITROGEN_HEAT_RATIO = 1.4;

const TEXTBOOK = 'one-dimensional isentropic flow of an ideal gas, any gas-dynamics text';

export const chokedPressureRatioBasis: Basis = { formula: 'p*/p₀ = (2/(γ+1))^(γ/(γ−1))', source: TEXTBOOK };
/**
 * Pressure in the throat of a choked orifice, as a share of that before it: no lower pressure behind draws more gas.
 *
 * @param heatRatio  γ, cp/cv of an ideal gas [-], above 1, below 2
 * @returns ratio [-]
 * @throws {RangeError} argument not finite or out of range
 * @example chokedPressureRatio(1.4) // 0.528282
 */
export function chokedPressureRatio(heatRatio: number): number {
  const gamma = between('heatRatio', heatRatio, 1, 2);
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1));
}

export const chokedFlowFunctionBasis: Basis = { formula: 'Γ = √γ·(2/(γ+1))^((γ+1)/(2(γ−1)))', source: TEXTBOOK };
/**
 * Γ of choked flow: mass flux times √(R·T₀) over the pressure before the orifice.
 *
 * @param heatRatio  γ, cp/cv of an ideal gas [-], above 1, below 2
 * @returns flow function [-]
 * @throws {RangeError} argument not finite or out of range
 * @example chokedFlowFunction(1.4) // 0.684731
 */
export function chokedFlowFunction(heatRatio: number): number {
  const gamma = between('heatRatio', heatRatio, 1, 2);
  return Math.sqrt(gamma) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));
}

/** Both of nitrogen: they stand in every step of a discharge. */
const CHOKED_RATIO = chokedPressureRatio(NITROGEN_HEAT_RATIO);
const FLOW_FUNCTION = chokedFlowFunction(NITROGEN_HEAT_RATIO);

/** Effective area C_d·A [m²]. */
const effective_m2 = (area_m2: number, dischargeCoefficient: number): number => notNegative('area_m2', area_m2) * within('dischargeCoefficient', positive('dischargeCoefficient', dischargeCoefficient), 0, 1);

export const idealOrificeFlowBasis: Basis = {
  formula: 'choked (p_b ≤ 0.5283·p₀): ṁ = C_d·A·p₀·Γ/√(R·T₀); else ṁ = C_d·A·p₀·√(2γ/((γ−1)·R·T₀)·(r^(2/γ) − r^((γ+1)/γ))), r = p_b/p₀; γ = 1.4, R = 296.80 J/(kg·K)',
  source: TEXTBOOK,
  caution: 'Ideal gas: from 200 bar and 15 °C a nozzle passes 6 % more.',
};
/**
 * Nitrogen through an orifice as an ideal gas, choked or not.
 *
 * @param area_m2               A, of the orifice [m²], ≥ 0
 * @param dischargeCoefficient  C_d [-], above 0, at most 1
 * @param pressure_Pa           p₀, before it, at rest, absolute [Pa], > 0
 * @param temperature_K         T₀, before it [K], > 0
 * @param backPressure_Pa       p_b, behind it, absolute [Pa], 0 to p₀
 * @returns mass flow [kg/s], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example idealOrificeFlow_kg_s(Math.PI * 0.005 ** 2, 0.85, 60e5, 293.15, 101325) // 0.92982
 */
export function idealOrificeFlow_kg_s(area_m2: number, dischargeCoefficient: number, pressure_Pa: number, temperature_K: number, backPressure_Pa: number): number {
  const ratio = within('backPressure_Pa', backPressure_Pa, 0, positive('pressure_Pa', pressure_Pa)) / pressure_Pa;
  const scale = (effective_m2(area_m2, dischargeCoefficient) * pressure_Pa) / Math.sqrt(NITROGEN_R_J_kgK * positive('temperature_K', temperature_K));
  if (ratio <= CHOKED_RATIO) return scale * FLOW_FUNCTION;
  const gamma = NITROGEN_HEAT_RATIO;
  return scale * Math.sqrt(((2 * gamma) / (gamma - 1)) * (ratio ** (2 / gamma) - ratio ** ((gamma + 1) / gamma)));
}

/** Nitrogen where the flow is as fast as its sound. */
export interface Throat {
  readonly pressure_Pa: number;
  readonly temperature_K: number;
  /** Mass flow per area [kg/(m²·s)]: the most that passes. */
  readonly flux_kg_m2s: number;
}

const tooCold = (): RangeError => new RangeError(`The gas would cool below ${NITROGEN_LEAST_K} K in the orifice, where it may turn liquid: the flow is not worked out.`);

/** The state before the orifice. */
function restState(pressure_Pa: number, temperature_K: number): NitrogenState {
  within('temperature_K', temperature_K, NITROGEN_LEAST_K, NITROGEN_GREATEST_K);
  return nitrogenState(nitrogenDensity_kg_m3(pressure_Pa, temperature_K), temperature_K);
}

/** d ln T/d ln ρ at constant entropy, from the sound speed at constant entropy and temperature. */
const warming = (state: NitrogenState): number => Math.sqrt((state.soundSpeed_m_s ** 2 - state.pressureSlope_J_kg) / (state.cv_J_kgK * state.temperature_K));

export const nozzleThroatBasis: Basis = {
  formula: 'largest ρ·√(2·(h₀−h)) along s = s₀, where √(2·(h₀−h)) = w',
  source: 'steady energy equation with enthalpy, entropy and sound speed of Span et al. 2000',
  caution: 'Refused where the throat is colder than 126.2 K.',
};
/**
 * Throat of a choked nozzle that real nitrogen flows through at constant entropy.
 *
 * @param pressure_Pa    p₀, before it, at rest, absolute [Pa], 1 to 1e8
 * @param temperature_K  T₀, before it [K], 126.2 to 1000
 * @returns pressure, temperature and flux in the throat [Pa, K, kg/(m²·s)]
 * @throws {RangeError} argument not finite or out of range, or a throat colder than 126.2 K
 * @example Number(nozzleThroat(200e5, 288.15).pressure_Pa / 200e5) // 0.4845
 */
export function nozzleThroat(pressure_Pa: number, temperature_K: number): Throat {
  const rest = restState(pressure_Pa, temperature_K);
  // x = ln(ρ/ρ₀): at 0 the gas rests, and the thinner it is the nearer its speed comes to that of its sound.
  let greatest = 0;
  let least = -2;
  let x = -0.42;
  let before = { x: 0, over: -(rest.soundSpeed_m_s ** 2), state: rest };
  for (let step = 0; step < 60; step += 1) {
    const state = nitrogenAtEntropy(rest.density_kg_m3 * Math.exp(x), rest.entropy_J_kgK, before.state.temperature_K * Math.exp(warming(before.state) * (x - before.x)));
    if (!state) {
      least = x;
      x = (least + greatest) / 2;
      continue;
    }
    const over = 2 * (rest.enthalpy_J_kg - state.enthalpy_J_kg) - state.soundSpeed_m_s ** 2;
    // The flux is at its flat top: an error here of 1e-7 changes it by 1e-14.
    if (Math.abs(over) <= 1e-7 * state.soundSpeed_m_s ** 2) {
      return { pressure_Pa: state.pressure_Pa, temperature_K: state.temperature_K, flux_kg_m2s: state.density_kg_m3 * Math.sqrt(2 * (rest.enthalpy_J_kg - state.enthalpy_J_kg)) };
    }
    if (over > 0) least = x;
    else greatest = x;
    const next = x - (over * (x - before.x)) / (over - before.over);
    before = { x, over, state };
    x = next > least && next < greatest ? next : (least + greatest) / 2;
  }
  throw tooCold();
}

export const realChokedFluxBasis: Basis = nozzleThroatBasis;
/**
 * The most real nitrogen that passes an ideal nozzle, per area.
 *
 * @param pressure_Pa    p₀, before it, at rest, absolute [Pa], 1 to 1e8
 * @param temperature_K  T₀, before it [K], 126.2 to 1000
 * @returns flux [kg/(m²·s)]
 * @throws {RangeError} argument not finite or out of range, or a throat colder than 126.2 K
 * @example realChokedFlux_kg_m2s(200e5, 288.15) // 49843
 */
export function realChokedFlux_kg_m2s(pressure_Pa: number, temperature_K: number): number {
  return nozzleThroat(pressure_Pa, temperature_K).flux_kg_m2s;
}

export const realOrificeFlowBasis: Basis = {
  formula: 'ṁ = C_d·A·ρ·√(2·(h₀−h)) at p = max(p_b, p*) along s = s₀',
  source: nozzleThroatBasis.source,
  caution: 'C_d as for an ideal gas; the listing of the nozzle governs.',
};
/**
 * Real nitrogen through an orifice, choked or not.
 *
 * @param area_m2               A, of the orifice [m²], ≥ 0
 * @param dischargeCoefficient  C_d [-], above 0, at most 1
 * @param pressure_Pa           p₀, before it, at rest, absolute [Pa], 1 to 1e8
 * @param temperature_K         T₀, before it [K], 126.2 to 1000
 * @param backPressure_Pa       p_b, behind it, absolute [Pa], 0 to p₀
 * @returns mass flow [kg/s], ≥ 0
 * @throws {RangeError} argument not finite or out of range, or gas colder than 126.2 K in the orifice
 * @example realOrificeFlow_kg_s(Math.PI * 0.005 ** 2, 0.85, 60e5, 293.15, 101325) // 0.951
 */
export function realOrificeFlow_kg_s(area_m2: number, dischargeCoefficient: number, pressure_Pa: number, temperature_K: number, backPressure_Pa: number): number {
  const area = effective_m2(area_m2, dischargeCoefficient);
  within('backPressure_Pa', backPressure_Pa, 0, positive('pressure_Pa', pressure_Pa));
  // Above 0.6 no state chokes that the equation holds, and the throat need not be found: it may be too cold where the flow is not.
  if (backPressure_Pa <= 0.6 * pressure_Pa) {
    const throat = nozzleThroat(pressure_Pa, temperature_K);
    if (backPressure_Pa <= throat.pressure_Pa) return area * throat.flux_kg_m2s;
  }
  const rest = restState(pressure_Pa, temperature_K);
  if (backPressure_Pa === pressure_Pa) return 0;
  const state = nitrogenExpandedTo(backPressure_Pa, rest.entropy_J_kgK, temperature_K * (backPressure_Pa / pressure_Pa) ** 0.28);
  if (!state) throw tooCold();
  return area * state.density_kg_m3 * Math.sqrt(2 * Math.max(0, rest.enthalpy_J_kg - state.enthalpy_J_kg));
}
