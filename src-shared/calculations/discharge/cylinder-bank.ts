import { wallHeat_W_m2K } from '../formulas/cylinder-wall-heat.ts';
import { nitrogenConductivity_W_mK, nitrogenViscosity_Pas } from '../formulas/gas-transport.ts';
import { NITROGEN_LEAST_K } from '../formulas/nitrogen.ts';
import type { DischargeInput } from './discharge.ts';
import { type Gas, type GasState, IDEAL_NITROGEN, REAL_NITROGEN, stateWithEnergy } from './gas.ts';

/** Of carbon steel near room temperature [J/(kg·K)]. */
const STEEL_J_kgK = 470;

/** One cylinder of many alike. */
export interface CylinderState {
  readonly mass_kg: number;
  /** Of all its gas. */
  readonly energy_J: number;
  readonly wall_K: number;
  readonly gas: GasState;
  /** What the steel gave since the state that this one came from, and what the gas is colder without it. */
  readonly heat_J: number;
}

/** What leaves one cylinder in a step. */
export interface Outflow {
  readonly flow_kg_s: number;
  readonly enthalpy_J_kg: number;
}

export interface CylinderBank {
  readonly gas: Gas;
  readonly start: CylinderState;
  /**
   * The state a while after another one.
   * @param halfway  state halfway there, where it is known: heat then passes as there, else as at the start
   * @returns undefined when the gas would be colder than it is known for
   */
  after(state: CylinderState, out: Outflow, step_s: number, halfway?: CylinderState): CylinderState | undefined;
}

/** How fast and how far steel and gas come to one temperature: heat capacity that they meet with, and the rate [1/s]. */
interface Exchange {
  readonly capacity_J_K: number;
  readonly rate_1_s: number;
}

function exchangeOf(input: DischargeInput, { gas, mass_kg, wall_K }: CylinderState): Exchange {
  const known_K = Math.max(NITROGEN_LEAST_K, gas.temperature_K);
  const coefficient = wallHeat_W_m2K(
    gas.density_kg_m3,
    gas.temperature_K,
    wall_K,
    gas.cp_J_kgK,
    nitrogenViscosity_Pas(known_K, gas.density_kg_m3),
    nitrogenConductivity_W_mK(known_K, gas.density_kg_m3),
  );
  const capacity_J_K = 1 / (1 / (mass_kg * gas.cv_J_kgK) + 1 / (input.steelMass_kg * STEEL_J_kgK));
  return { capacity_J_K, rate_1_s: (coefficient * input.innerArea_m2) / capacity_J_K };
}

/** By how much the steel is warmer than the gas in the mean of a step, were no heat to pass during it. */
const gapOf_K = (start: CylinderState, halfway: CylinderState | undefined): number =>
  start.wall_K - (halfway ? halfway.gas.temperature_K - halfway.heat_J / (halfway.mass_kg * halfway.gas.cv_J_kgK) : start.gas.temperature_K);

/** The exact share of a steady exchange: however fast it is, gas and steel never pass each other. */
const heatOf = ({ capacity_J_K, rate_1_s }: Exchange, gap_K: number, step_s: number): number => capacity_J_K * gap_K * (1 - Math.exp(-rate_1_s * step_s));

/** The cylinders of a unit, all alike and all open: one of them is followed. */
export function cylinderBankOf(input: DischargeInput): CylinderBank {
  const gas = input.gas === 'real' ? REAL_NITROGEN : IDEAL_NITROGEN;
  const density = gas.densityOf(input.fillPressure_Pa, input.fillTemperature_K);
  const filled = gas.stateOf(density, input.fillTemperature_K);
  const mass_kg = density * input.cylinderVolume_m3;
  const hasWallHeat = input.process === 'wall-heat' && input.steelMass_kg > 0 && input.innerArea_m2 > 0;

  return {
    gas,
    start: { mass_kg, energy_J: mass_kg * filled.internalEnergy_J_kg, wall_K: input.fillTemperature_K, gas: filled, heat_J: 0 },
    after(state, out, step_s, halfway) {
      const left_kg = state.mass_kg - out.flow_kg_s * step_s;
      const density_kg_m3 = left_kg / input.cylinderVolume_m3;
      if (input.process === 'isothermal') {
        const still = gas.stateOf(density_kg_m3, input.fillTemperature_K);
        return { ...state, mass_kg: left_kg, energy_J: left_kg * still.internalEnergy_J_kg, gas: still };
      }
      const heat_J = hasWallHeat ? heatOf(exchangeOf(input, halfway ?? state), gapOf_K(state, halfway), step_s) : 0;
      const energy_J = state.energy_J - out.flow_kg_s * out.enthalpy_J_kg * step_s + heat_J;
      const next = stateWithEnergy(gas, density_kg_m3, energy_J / left_kg, state.gas.temperature_K);
      return next && { mass_kg: left_kg, energy_J, wall_K: hasWallHeat ? state.wall_K - heat_J / (input.steelMass_kg * STEEL_J_kgK) : state.wall_K, gas: next, heat_J };
    },
  };
}
