import type { Basis } from '../topic.ts';
import { between, within } from './checked.ts';
import { NITROGEN_BELLS, NITROGEN_CRITICAL_K, NITROGEN_CRITICAL_kg_m3, NITROGEN_IDEAL, NITROGEN_R_J_kgK, NITROGEN_TERMS } from './nitrogen-coefficients.ts';

/** Range of the formulas below: one phase only, so one density for each pressure. */
export const NITROGEN_LEAST_K = 126.2;
export const NITROGEN_GREATEST_K = 1000;
export const NITROGEN_LEAST_Pa = 1;
export const NITROGEN_GREATEST_Pa = 1e8;
export const NITROGEN_GREATEST_kg_m3 = 950;

const POWERS = 10;
/** A bell so far off adds less than any digit shows. */
const LEAST_EXPONENT = -80;
const FALLS = 5;
/** Where each term adds to, by its l and d. */
const PLACES = Int32Array.from(NITROGEN_TERMS, ([, d, , l]) => l * POWERS + d);
const FACTORS = Float64Array.from(NITROGEN_TERMS, ([n]) => n);
const TAU_POWERS = Float64Array.from(NITROGEN_TERMS, ([, , t]) => t);

/** The terms at one temperature, gathered by l and d: a density solution then costs a few polynomials. */
function gatherInto(gathered: Float64Array, tau: number): void {
  gathered.fill(0);
  const log = Math.log(tau);
  for (let index = 0; index < PLACES.length; index += 1) {
    const place = PLACES[index] ?? 0;
    gathered[place] = (gathered[place] ?? 0) + (FACTORS[index] ?? 0) * Math.exp((TAU_POWERS[index] ?? 0) * log);
  }
}

/** Scratch: each is filled and used up within a single call. */
const gathered = new Float64Array(FALLS * POWERS);
const deltaPowers = new Float64Array(POWERS);
const fallings = new Float64Array(FALLS);

/** δ·∂αr/∂δ and δ²·∂²αr/∂δ² from gathered terms. */
function densitySlopes(delta: number, tau: number): [number, number] {
  let first = 0;
  let second = 0;
  let fall = 0;
  for (let l = 0; l < FALLS; l += 1) {
    fall = l === 0 ? 0 : l === 1 ? delta : fall * delta;
    let power = 1;
    let sum = 0;
    let sumD = 0;
    let sumDD = 0;
    for (let d = 1; d < POWERS; d += 1) {
      power *= delta;
      const term = (gathered[l * POWERS + d] ?? 0) * power;
      sum += term;
      sumD += d * term;
      sumDD += d * d * term;
    }
    const e = l === 0 ? 1 : Math.exp(-fall);
    const lf = l * fall;
    first += e * (sumD - lf * sum);
    second += e * (sumDD - sumD - 2 * lf * sumD + lf * sum * (lf + 1 - l));
  }
  for (const [n, d, t, eta, beta, gamma] of NITROGEN_BELLS) {
    const exponent = -eta * (delta - 1) ** 2 - beta * (tau - gamma) ** 2;
    if (exponent < LEAST_EXPONENT) continue;
    const term = n * delta ** d * tau ** t * Math.exp(exponent);
    const slope = d - 2 * eta * delta * (delta - 1);
    first += term * slope;
    second += term * (slope * slope - d - 2 * eta * delta * delta);
  }
  return [first, second];
}

export const nitrogenBasis: Basis = {
  formula: 'α = α⁰(δ, τ) + αʳ(δ, τ); p = ρ·R·T·(1 + δ·∂αʳ/∂δ), δ = ρ/313.3 kg/m³, τ = 126.192 K/T',
  source: 'Span, Lemmon, Jacobsen, Wagner, Yokozeki, J. Phys. Chem. Ref. Data 29 (2000) 1361; coefficients as the open CoolProp library holds them',
  caution: 'Pure nitrogen above its critical temperature, 126.2 K to 1000 K, up to 1000 bar. Enthalpy and entropy count from the ideal gas at 298.15 K and 101 325 Pa: 8670 J/mol and 191.5 J/(mol·K).',
};
/**
 * Density of nitrogen as a real gas, from pressure and temperature.
 *
 * @param pressure_Pa    p, absolute [Pa], 1 to 1e8
 * @param temperature_K  T [K], 126.2 to 1000
 * @returns density [kg/m³]
 * @throws {RangeError} pressure or temperature not finite or out of range
 * @example nitrogenDensity_kg_m3(200e5, 288.15) // 223.187
 */
export function nitrogenDensity_kg_m3(pressure_Pa: number, temperature_K: number): number {
  within('pressure_Pa', pressure_Pa, NITROGEN_LEAST_Pa, NITROGEN_GREATEST_Pa);
  within('temperature_K', temperature_K, NITROGEN_LEAST_K, NITROGEN_GREATEST_K);
  const tau = NITROGEN_CRITICAL_K / temperature_K;
  gatherInto(gathered, tau);
  // Above the critical temperature pressure only rises with density, so the root stays between these two.
  let least = 0;
  let greatest = 3.4;
  const target = pressure_Pa / (NITROGEN_CRITICAL_kg_m3 * NITROGEN_R_J_kgK * temperature_K);
  let delta = Math.min(target, 1.5);
  for (let step = 0; step < 100; step += 1) {
    const [first, second] = densitySlopes(delta, tau);
    const over = delta * (1 + first) - target;
    if (over > 0) greatest = delta;
    else least = delta;
    const slope = 1 + 2 * first + second;
    const change = over / slope;
    // Newton's step doubles the digits that are right: after so small a step the next one changes nothing.
    if (slope > 0.05 && Math.abs(change) <= 1e-8 * delta) return (delta - change) * NITROGEN_CRITICAL_kg_m3;
    let next = delta - change;
    if (!(next > least && next < greatest)) next = (least + greatest) / 2;
    if (Math.abs(next - delta) <= 1e-13 * delta) return next * NITROGEN_CRITICAL_kg_m3;
    delta = next;
  }
  return delta * NITROGEN_CRITICAL_kg_m3;
}

/** What nitrogen is at one density and temperature, base SI. */
export interface NitrogenState {
  readonly density_kg_m3: number;
  readonly temperature_K: number;
  readonly pressure_Pa: number;
  /** Z = p/(ρ·R·T). */
  readonly compressibility: number;
  readonly cv_J_kgK: number;
  readonly cp_J_kgK: number;
  readonly soundSpeed_m_s: number;
  readonly internalEnergy_J_kg: number;
  readonly enthalpy_J_kg: number;
  readonly entropy_J_kgK: number;
  /** (∂p/∂ρ) at constant temperature [J/kg]. */
  readonly pressureSlope_J_kg: number;
}

/**
 * All properties of nitrogen as a real gas, from density and temperature.
 *
 * @param density_kg_m3  ρ [kg/m³], above 0, below 950
 * @param temperature_K  T [K], 126.2 to 1000
 * @returns state in base SI [Pa, J/kg, J/(kg·K), m/s]
 * @throws {RangeError} density or temperature not finite or out of range
 * @example Number(nitrogenState(223.187, 288.15).soundSpeed_m_s) // 420.55
 */
export function nitrogenState(density_kg_m3: number, temperature_K: number): NitrogenState {
  between('density_kg_m3', density_kg_m3, 0, NITROGEN_GREATEST_kg_m3);
  within('temperature_K', temperature_K, NITROGEN_LEAST_K, NITROGEN_GREATEST_K);
  const delta = density_kg_m3 / NITROGEN_CRITICAL_kg_m3;
  const tau = NITROGEN_CRITICAL_K / temperature_K;
  let a = 0;
  let aD = 0;
  let aDD = 0;
  let aT = 0;
  let aTT = 0;
  let aDT = 0;
  /** Adds a term with its logarithmic slopes: each sum below is δ or τ times the derivative. */
  const add = (term: number, d: number, dd: number, t: number, tt: number): void => {
    a += term;
    aD += term * d;
    aDD += term * dd;
    aT += term * t;
    aTT += term * tt;
    aDT += term * d * t;
  };
  // Few powers of δ are asked for again and again, so each is taken once.
  const logTau = Math.log(tau);
  let power = 1;
  for (let d = 0; d < POWERS; d += 1) {
    deltaPowers[d] = power;
    if (d < FALLS) fallings[d] = d === 0 ? 1 : Math.exp(-power);
    power *= delta;
  }
  for (const [n, d, t, l] of NITROGEN_TERMS) {
    const fall = l === 0 ? 0 : (deltaPowers[l] ?? 0);
    const slope = d - l * fall;
    add(n * (deltaPowers[d] ?? 0) * Math.exp(t * logTau) * (fallings[l] ?? 0), slope, slope * (slope - 1) - l * l * fall, t, t * (t - 1));
  }
  for (const [n, d, t, eta, beta, gamma] of NITROGEN_BELLS) {
    const exponent = -eta * (delta - 1) ** 2 - beta * (tau - gamma) ** 2;
    if (exponent < LEAST_EXPONENT) continue;
    const slopeD = d - 2 * eta * delta * (delta - 1);
    const slopeT = t - 2 * beta * tau * (tau - gamma);
    add(n * (deltaPowers[d] ?? 0) * Math.exp(t * logTau + exponent), slopeD, slopeD ** 2 - d - 2 * eta * delta ** 2, slopeT, slopeT ** 2 - t - 2 * beta * tau ** 2);
  }
  const { logarithm, powers, vibration, theta } = NITROGEN_IDEAL;
  const e = Math.exp(-theta * tau);
  const excited = (vibration * theta * tau * e) / (1 - e);
  let ideal = Math.log(delta) + logarithm * logTau + vibration * Math.log(1 - e);
  let idealT = logarithm + excited;
  let idealTT = -logarithm - (excited * theta * tau) / (1 - e);
  for (const [factor, power] of powers) {
    const term = factor * tau ** power;
    ideal += term;
    idealT += power * term;
    idealTT += power * (power - 1) * term;
  }

  const rt = NITROGEN_R_J_kgK * temperature_K;
  const compressibility = 1 + aD;
  const cv = -(idealTT + aTT);
  const isothermal = 1 + 2 * aD + aDD;
  const coupling = (1 + aD - aDT) ** 2;
  const energy = idealT + aT;
  return {
    density_kg_m3,
    temperature_K,
    pressure_Pa: density_kg_m3 * rt * compressibility,
    compressibility,
    cv_J_kgK: NITROGEN_R_J_kgK * cv,
    cp_J_kgK: NITROGEN_R_J_kgK * (cv + coupling / isothermal),
    soundSpeed_m_s: Math.sqrt(rt * (isothermal + coupling / cv)),
    internalEnergy_J_kg: rt * energy,
    enthalpy_J_kg: rt * (energy + compressibility),
    entropy_J_kgK: NITROGEN_R_J_kgK * (energy - ideal - a),
    pressureSlope_J_kg: rt * isothermal,
  };
}
