import type { Basis } from '../topic.ts';
import { positive, within } from './checked.ts';
import { type BlowdownProcess, type BlowdownState, type Vessel, refuseUnchoked } from './blowdown.ts';
import { nitrogenAtEntropy, nitrogenExpandedTo } from './nitrogen-isentrope.ts';
import { NITROGEN_GREATEST_K, NITROGEN_LEAST_K, nitrogenDensity_kg_m3, nitrogenState, type NitrogenState } from './nitrogen.ts';
import { nozzleThroat, type Throat } from './orifice.ts';

/** Even; the time is then right to 1e-8. */
const STEPS = 48;

/** The gas left in the vessel with the throat it feeds. */
interface Emptying {
  readonly state: NitrogenState;
  readonly throat: Throat;
}

function emptyingOf(state: NitrogenState | undefined): Emptying {
  try {
    if (state) return { state, throat: nozzleThroat(state.pressure_Pa, state.temperature_K) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  throw new RangeError(`toPressure_Pa is too low for the real gas: on the way there it would cool below ${NITROGEN_LEAST_K} K in the vessel or its orifice and may turn liquid. Stop at a higher pressure or take the ideal gas.`);
}

export const realBlowdownBasis: Basis = {
  formula: 't = V/(C_d·A)·∫ dρ/G(ρ) from ρ to ρ₀, G the choked flux; adiabatic: what stays keeps its entropy s₀; isothermal: T = T₀',
  source: 'mass balance with properties of Span et al. 2000; Simpson’s rule over ln ρ',
  caution: 'Choked to the end, and nowhere colder than 126.2 K. A steel cylinder lies between the two processes.',
};
/**
 * Time until real nitrogen has fallen to a pressure through a choked orifice, and what is left then.
 *
 * @param vessel         the vessel and its orifice [-]
 * @param process        how the gas left takes heat [adiabatic or isothermal]
 * @param toPressure_Pa  p, at the end, absolute [Pa], at most p₀; the orifice must still choke there
 * @returns time, temperature and mass left [s, K, -]
 * @throws {RangeError} argument not finite or out of range, the orifice no longer chokes, or gas colder than 126.2 K
 * @example Number(realBlowdownTo({ volume_m3: 0.08, pressure_Pa: 200e5, temperature_K: 288.15, area_m2: Math.PI * 0.0025 ** 2, dischargeCoefficient: 0.85, backPressure_Pa: 101325 }, 'adiabatic', 60e5).massFraction) // 0.503
 */
export function realBlowdownTo(vessel: Vessel, process: BlowdownProcess, toPressure_Pa: number): BlowdownState {
  within('toPressure_Pa', positive('toPressure_Pa', toPressure_Pa), 0, vessel.pressure_Pa);
  within('temperature_K', vessel.temperature_K, NITROGEN_LEAST_K, NITROGEN_GREATEST_K);
  const effective_m2 = positive('area_m2', vessel.area_m2) * within('dischargeCoefficient', positive('dischargeCoefficient', vessel.dischargeCoefficient), 0, 1);
  const isothermalAt = (density_kg_m3: number): NitrogenState => nitrogenState(density_kg_m3, vessel.temperature_K);
  const start = isothermalAt(nitrogenDensity_kg_m3(vessel.pressure_Pa, vessel.temperature_K));
  const isIsothermal = process === 'isothermal';
  // The end first: it is the coldest of the whole blowdown.
  const end = emptyingOf(
    isIsothermal
      ? isothermalAt(nitrogenDensity_kg_m3(toPressure_Pa, vessel.temperature_K))
      : nitrogenExpandedTo(toPressure_Pa, start.entropy_J_kgK, vessel.temperature_K * (toPressure_Pa / vessel.pressure_Pa) ** 0.28),
  );
  refuseUnchoked('toPressure_Pa', toPressure_Pa, end.throat.pressure_Pa, vessel.backPressure_Pa);

  const step = Math.log(start.density_kg_m3 / end.state.density_kg_m3) / STEPS;
  let at = end;
  let sum = 0;
  for (let index = 0; index <= STEPS; index += 1) {
    const density_kg_m3 = end.state.density_kg_m3 * Math.exp(index * step);
    if (index > 0) at = emptyingOf(isIsothermal ? isothermalAt(density_kg_m3) : nitrogenAtEntropy(density_kg_m3, start.entropy_J_kgK, at.state.temperature_K));
    sum += ((index === 0 || index === STEPS ? 1 : index % 2 === 1 ? 4 : 2) * density_kg_m3) / at.throat.flux_kg_m2s;
  }
  return {
    time_s: ((positive('volume_m3', vessel.volume_m3) / effective_m2) * sum * step) / 3,
    pressure_Pa: toPressure_Pa,
    temperature_K: end.state.temperature_K,
    massFraction: end.state.density_kg_m3 / start.density_kg_m3,
  };
}
