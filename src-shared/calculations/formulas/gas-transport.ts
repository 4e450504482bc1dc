import type { Basis } from '../topic.ts';
import { within } from './checked.ts';
import { NITROGEN_CRITICAL_K, NITROGEN_CRITICAL_kg_m3, NITROGEN_MOLAR_MASS_kg_mol } from './nitrogen-coefficients.ts';
import { NITROGEN_GREATEST_K, NITROGEN_GREATEST_kg_m3 } from './nitrogen.ts';

/** Triple point: no gas or liquid is colder. */
const LEAST_K = 63.151;

/** Size of the molecule [nm] and depth of its well [K]. */
const SIGMA_nm = 0.3656;
const WELL_K = 98.94;
const COLLISION = [0.431, -0.4623, 0.08406, 0.005341, -0.00331] as const;

/** N, t, d, l of a term N·τ^t·δ^d·exp(−δ^l); no exponential when l is 0. */
type Terms = readonly (readonly [n: number, t: number, d: number, l: number])[];
/** [µPa·s] */
const VISCOSITY: Terms = [[10.72, 0.1, 2, 0], [0.03989, 0.25, 10, 1], [0.001208, 3.2, 12, 1], [-7.402, 0.9, 2, 2], [4.62, 0.3, 1, 3]];
/** [mW/(m·K)] */
const CONDUCTIVITY: Terms = [[8.862, 0, 1, 0], [31.11, 0.03, 2, 0], [-73.13, 0.2, 3, 1], [20.03, 0.8, 4, 2], [-0.7096, 0.6, 8, 2], [0.2672, 1.9, 10, 2]];

function sumOf(terms: Terms, density_kg_m3: number, temperature_K: number): number {
  const delta = density_kg_m3 / NITROGEN_CRITICAL_kg_m3;
  const tau = NITROGEN_CRITICAL_K / temperature_K;
  let sum = 0;
  for (const [n, t, d, l] of terms) sum += n * tau ** t * delta ** d * (l === 0 ? 1 : Math.exp(-(delta ** l)));
  return sum;
}

/** Of the gas so thin that its molecules meet two at a time [µPa·s]. */
function thinViscosity_microPas(temperature_K: number): number {
  const logarithm = Math.log(temperature_K / WELL_K);
  const collision = Math.exp(COLLISION.reduceRight((sum, factor) => sum * logarithm + factor, 0));
  return (0.0266958 * Math.sqrt(NITROGEN_MOLAR_MASS_kg_mol * 1000 * temperature_K)) / (SIGMA_nm ** 2 * collision);
}

const SOURCE = 'Lemmon, Jacobsen, Int. J. Thermophysics 25 (2004) 21; coefficients as the open CoolProp library holds them';

export const nitrogenViscosityBasis: Basis = {
  formula: 'η = 0.0266958·√(M·T)/(σ²·Ω(T/98.94 K)) + Σ N·τ^t·δ^d·exp(−δ^l)',
  source: SOURCE,
  caution: 'Without a density it is that of the thin gas: at 60 bar and 20 °C 6 % too low, at 200 bar and 15 °C 25 %.',
};
/**
 * Viscosity of nitrogen.
 *
 * @param temperature_K  T [K], 63.151 to 1000
 * @param density_kg_m3  ρ [kg/m³], 0 to 950; 0 is the thin gas
 * @returns dynamic viscosity [Pa·s]
 * @throws {RangeError} argument not finite or out of range
 * @example nitrogenViscosity_Pas(288.15, 223.187) // 2.305e-5
 */
export function nitrogenViscosity_Pas(temperature_K: number, density_kg_m3: number = 0): number {
  within('temperature_K', temperature_K, LEAST_K, NITROGEN_GREATEST_K);
  within('density_kg_m3', density_kg_m3, 0, NITROGEN_GREATEST_kg_m3);
  return (thinViscosity_microPas(temperature_K) + sumOf(VISCOSITY, density_kg_m3, temperature_K)) / 1e6;
}

export const nitrogenConductivityBasis: Basis = {
  formula: 'λ = 1.511·η⁰ + 2.117·τ⁻¹ − 3.332·τ^−0.7 + Σ N·τ^t·δ^d·exp(−δ^l)',
  source: SOURCE,
  caution: 'Without the enhancement near the critical point (126.2 K, 313 kg/m³), where it is far too low.',
};
/**
 * Thermal conductivity of nitrogen.
 *
 * @param temperature_K  T [K], 63.151 to 1000
 * @param density_kg_m3  ρ [kg/m³], 0 to 950; 0 is the thin gas
 * @returns conductivity [W/(m·K)]
 * @throws {RangeError} argument not finite or out of range
 * @example nitrogenConductivity_W_mK(300, 0) // 0.0259361
 */
export function nitrogenConductivity_W_mK(temperature_K: number, density_kg_m3: number): number {
  within('temperature_K', temperature_K, LEAST_K, NITROGEN_GREATEST_K);
  within('density_kg_m3', density_kg_m3, 0, NITROGEN_GREATEST_kg_m3);
  const tau = NITROGEN_CRITICAL_K / temperature_K;
  const thin = 1.511 * thinViscosity_microPas(temperature_K) + 2.117 / tau - 3.332 * tau ** -0.7;
  return (thin + sumOf(CONDUCTIVITY, density_kg_m3, temperature_K)) / 1000;
}
