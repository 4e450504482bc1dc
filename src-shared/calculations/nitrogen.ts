import { nitrogenConductivityBasis, nitrogenConductivity_W_mK, nitrogenViscosityBasis, nitrogenViscosity_Pas } from './formulas/gas-transport.ts';
import { NITROGEN_GREATEST_K, NITROGEN_GREATEST_Pa, NITROGEN_LEAST_K, NITROGEN_LEAST_Pa, nitrogenBasis, nitrogenDensity_kg_m3, nitrogenState } from './formulas/nitrogen.ts';
import { numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** Nitrogen as a real gas at a pressure and a temperature. */
export const nitrogenTopic: Topic = {
  id: 'nitrogen',
  title: 'Nitrogen as a real gas',
  inputs: [
    { kind: 'number', name: 'pressure', quantity: 'pressure', least: NITROGEN_LEAST_Pa, greatest: NITROGEN_GREATEST_Pa, help: 'Pressure' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: NITROGEN_LEAST_K, greatest: NITROGEN_GREATEST_K, help: 'Temperature' },
  ],
  outputs: {
    density_kg_m3: 'density',
    compressibility: 'Z = p/(ρ·R·T)',
    cp_J_kgK: 'specific heat at constant pressure',
    cv_J_kgK: 'specific heat at constant volume',
    soundSpeed_m_s: 'speed of sound',
    enthalpy_J_kg: 'enthalpy',
    entropy_J_kgK: 'entropy',
    isentropicExponent: 'ρ·w²/p: not cp/cv where the gas is dense',
    viscosity_Pas: 'dynamic viscosity',
    conductivity_W_mK: 'thermal conductivity',
  },
  bases: [nitrogenBasis, nitrogenViscosityBasis, nitrogenConductivityBasis],
  run(values) {
    const temperature_K = numberGiven(values, 'temperature');
    const state = nitrogenState(nitrogenDensity_kg_m3(numberGiven(values, 'pressure'), temperature_K), temperature_K);
    return {
      density_kg_m3: state.density_kg_m3,
      compressibility: state.compressibility,
      cp_J_kgK: state.cp_J_kgK,
      cv_J_kgK: state.cv_J_kgK,
      soundSpeed_m_s: state.soundSpeed_m_s,
      enthalpy_J_kg: state.enthalpy_J_kg,
      entropy_J_kgK: state.entropy_J_kgK,
      isentropicExponent: (state.density_kg_m3 * state.soundSpeed_m_s ** 2) / state.pressure_Pa,
      viscosity_Pas: nitrogenViscosity_Pas(temperature_K, state.density_kg_m3),
      conductivity_W_mK: nitrogenConductivity_W_mK(temperature_K, state.density_kg_m3),
    };
  },
};
