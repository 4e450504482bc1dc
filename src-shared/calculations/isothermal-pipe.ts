import { PIPE_SCHEDULES, PIPE_SIZES, pipeBore_m } from '../profile/pipe-table.ts';
import {
  PIPE_GASES,
  isothermalChokeBasis,
  isothermalChokePressure_Pa,
  isothermalFlowBasis,
  isothermalFlow_kg_s,
  nitrogenPressureOverDensityBasis,
  nitrogenPressureOverDensity_J_kg,
  pipeResistance,
  pipeResistanceBasis,
} from './formulas/isothermal-pipe.ts';
import { choiceGiven, numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** Nitrogen through a pipe in which it keeps its temperature. */
export const isothermalPipeTopic: Topic = {
  id: 'isothermal-pipe',
  title: 'Nitrogen through a pipe at constant temperature',
  inputs: [
    { kind: 'choice', name: 'nominalSize', choices: PIPE_SIZES, help: 'Nominal pipe size (NPS)' },
    { kind: 'choice', name: 'schedule', choices: PIPE_SCHEDULES, help: 'Wall schedule' },
    { kind: 'number', name: 'length', quantity: 'length', least: 0, greatest: 10_000, help: 'Straight length with the equivalent lengths of fittings' },
    { kind: 'number', name: 'darcyFriction', quantity: 'ratio', least: 0, greatest: 1, help: 'Darcy friction factor, four times that of Fanning' },
    { kind: 'number', name: 'lossCoefficient', quantity: 'ratio', least: 0, greatest: 10_000, standard: 0, help: 'Sum of the loss coefficients K of fittings, entrance and exit' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: 173.15, greatest: 373.15, help: 'Of the gas' },
    { kind: 'number', name: 'inletPressure', quantity: 'pressure', least: 1000, greatest: 5e7, help: 'Static pressure in the inlet' },
    { kind: 'number', name: 'outletPressure', quantity: 'pressure', least: 0, greatest: 5e7, help: 'Pressure into which the pipe opens, not above that of the inlet' },
    { kind: 'choice', name: 'gas', choices: PIPE_GASES, help: 'Ideal gas, or real gas with Z at the mean pressure' },
  ],
  outputs: {
    massFlow_kg_s: 'mass flow; the choked flow when choked',
    choked: 'true when the outlet pressure is not above that of choking: the gas then leaves at the pressure of choking',
    chokePressure_Pa: 'outlet pressure below which no more gas runs, absolute',
    compressibility: 'Z of the gas; 1 when ideal',
    resistance: 'f·L/D + ΣK',
  },
  bases: [isothermalFlowBasis, isothermalChokeBasis, pipeResistanceBasis, nitrogenPressureOverDensityBasis],
  run(values) {
    const inlet_Pa = numberGiven(values, 'inletPressure');
    const outlet_Pa = numberGiven(values, 'outletPressure');
    if (outlet_Pa > inlet_Pa) throw new RangeError(`outletPressure must not be above inletPressure, ${inlet_Pa} Pa.`);
    const temperature_K = numberGiven(values, 'temperature');
    const bore_m = pipeBore_m(choiceGiven(values, 'nominalSize', PIPE_SIZES), choiceGiven(values, 'schedule', PIPE_SCHEDULES));
    const resistance = pipeResistance(numberGiven(values, 'darcyFriction'), numberGiven(values, 'length'), bore_m, numberGiven(values, 'lossCoefficient'));
    const chokePressure_Pa = isothermalChokePressure_Pa(resistance, inlet_Pa);
    // In a choked pipe the gas does not come down to the pressure outside.
    const end_Pa = Math.max(outlet_Pa, chokePressure_Pa);
    const energy_J_kg = nitrogenPressureOverDensity_J_kg(choiceGiven(values, 'gas', PIPE_GASES), temperature_K, inlet_Pa, end_Pa);
    return {
      massFlow_kg_s: isothermalFlow_kg_s(bore_m, resistance, energy_J_kg, inlet_Pa, outlet_Pa),
      choked: outlet_Pa < inlet_Pa && outlet_Pa <= chokePressure_Pa,
      chokePressure_Pa,
      compressibility: energy_J_kg / nitrogenPressureOverDensity_J_kg('ideal', temperature_K, inlet_Pa, end_Pa),
      resistance,
    };
  },
};
