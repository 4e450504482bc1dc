import type { Basis } from '../topic.ts';
import { NITROGEN_GREATEST_K, NITROGEN_LEAST_K, nitrogenDensity_kg_m3, nitrogenState, type NitrogenState } from './nitrogen.ts';

export const nitrogenIsentropeBasis: Basis = {
  formula: 's(ρ, T) = s₀ solved for T by Newton: (∂s/∂T)ᵥ = c_v/T, (∂s/∂T)ₚ = c_p/T',
  source: 'entropy of Span et al. 2000',
  caution: 'Only as far as 126.2 K: colder gas may turn liquid, and is refused.',
};

/** The state where entropy, which rises with temperature along the way, is as asked; undefined when that is colder or warmer than the equation goes. */
function whereEntropy(stateAt: (temperature_K: number) => NitrogenState, heatOf: (state: NitrogenState) => number, entropy_J_kgK: number, near_K: number): NitrogenState | undefined {
  let least = NITROGEN_LEAST_K;
  let greatest = NITROGEN_GREATEST_K;
  let temperature_K = Math.min(Math.max(near_K, least), greatest);
  for (let step = 0; step < 100; step += 1) {
    const state = stateAt(temperature_K);
    const missing = entropy_J_kgK - state.entropy_J_kgK;
    if (Math.abs(missing) <= 1e-9 * heatOf(state)) return state;
    if (missing > 0) least = temperature_K;
    else greatest = temperature_K;
    if (least >= NITROGEN_GREATEST_K || greatest <= NITROGEN_LEAST_K) return undefined;
    const next = temperature_K * Math.exp(missing / heatOf(state));
    const isBeyond = next <= NITROGEN_LEAST_K || next >= NITROGEN_GREATEST_K;
    if (next > least && next < greatest) temperature_K = next;
    // The end of the range itself tells whether there is a state at all.
    else if (isBeyond && missing < 0 && least === NITROGEN_LEAST_K) temperature_K = NITROGEN_LEAST_K;
    else if (isBeyond && missing > 0 && greatest === NITROGEN_GREATEST_K) temperature_K = NITROGEN_GREATEST_K;
    else temperature_K = (least + greatest) / 2;
  }
  return stateAt(temperature_K);
}

/**
 * Nitrogen of a density that has come there at constant entropy, with nothing taken or given.
 *
 * @param density_kg_m3   ρ [kg/m³], above 0, below 950
 * @param entropy_J_kgK   s₀, of the state it started from [J/(kg·K)]
 * @param near_K          a guess of the temperature [K]
 * @returns state [SI], or undefined [-] when it is colder than 126.2 K or warmer than 1000 K
 * @throws {RangeError} density out of range
 * @example Number(nitrogenAtEntropy(152.9, 5109.97, 240)?.temperature_K) // 235.4
 */
export function nitrogenAtEntropy(density_kg_m3: number, entropy_J_kgK: number, near_K: number): NitrogenState | undefined {
  return whereEntropy((temperature_K) => nitrogenState(density_kg_m3, temperature_K), (state) => state.cv_J_kgK, entropy_J_kgK, near_K);
}

/**
 * Nitrogen of a pressure that has come there at constant entropy, with nothing taken or given.
 *
 * @param pressure_Pa     p, absolute [Pa], 1 to 1e8
 * @param entropy_J_kgK   s₀, of the state it started from [J/(kg·K)]
 * @param near_K          a guess of the temperature [K]
 * @returns state [SI], or undefined [-] when it is colder than 126.2 K or warmer than 1000 K
 * @throws {RangeError} pressure out of range
 * @example Number(nitrogenExpandedTo(100e5, 5109.97, 240)?.temperature_K) // 235.4
 */
export function nitrogenExpandedTo(pressure_Pa: number, entropy_J_kgK: number, near_K: number): NitrogenState | undefined {
  return whereEntropy(
    (temperature_K) => nitrogenState(nitrogenDensity_kg_m3(pressure_Pa, temperature_K), temperature_K),
    (state) => state.cp_J_kgK,
    entropy_J_kgK,
    near_K,
  );
}
