import { realBlowdownBasis, realBlowdownTo } from './formulas/blowdown-real.ts';
import { BLOWDOWN_PROCESSES, blowdownTimeScaleBasis, idealBlowdownBasis, idealBlowdownTo } from './formulas/blowdown.ts';
import { cylinderMass_kg, idealCylinderMass_kg } from './formulas/cylinder-gas.ts';
import { NITROGEN_GREATEST_K, NITROGEN_GREATEST_Pa, NITROGEN_LEAST_K } from './formulas/nitrogen.ts';
import { choiceGiven, numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

const GASES = ['ideal', 'real'] as const;

/** A vessel of nitrogen that empties through a choked orifice. */
export const blowdownTopic: Topic = {
  id: 'blowdown',
  title: 'Blowdown of a vessel of nitrogen through a choked orifice',
  inputs: [
    { kind: 'number', name: 'volume', quantity: 'volume', least: 1e-6, greatest: 1000, help: 'Volume of the vessel' },
    { kind: 'number', name: 'pressure', quantity: 'pressure', least: 1000, greatest: NITROGEN_GREATEST_Pa, help: 'Pressure at the start' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: NITROGEN_LEAST_K, greatest: NITROGEN_GREATEST_K, help: 'Temperature at the start' },
    { kind: 'number', name: 'diameter', quantity: 'length', least: 1e-5, greatest: 1, help: 'Diameter of the orifice' },
    { kind: 'number', name: 'dischargeCoefficient', quantity: 'ratio', least: 0.01, greatest: 1, help: "The orifice's own, from its listing" },
    { kind: 'number', name: 'toPressure', quantity: 'pressure', least: 1000, greatest: NITROGEN_GREATEST_Pa, help: 'Pressure at the end; the orifice must still choke there' },
    { kind: 'choice', name: 'process', choices: BLOWDOWN_PROCESSES, help: 'Whether the gas left takes no heat, or all that keeps it warm' },
    { kind: 'choice', name: 'gas', choices: GASES, help: 'Ideal gas by its closed formula, or real gas' },
    { kind: 'number', name: 'backPressure', quantity: 'pressure', least: 0, greatest: NITROGEN_GREATEST_Pa, standard: 101_325, help: 'Pressure behind the orifice: the atmosphere unless given' },
  ],
  outputs: {
    time_s: 'until that pressure',
    temperature_K: 'of the gas left then',
    massFraction: 'share of the mass left then',
    massLeft_kg: 'mass left then',
  },
  bases: [idealBlowdownBasis, blowdownTimeScaleBasis, realBlowdownBasis],
  run(values) {
    const isReal = choiceGiven(values, 'gas', GASES) === 'real';
    const vessel = {
      volume_m3: numberGiven(values, 'volume'),
      pressure_Pa: numberGiven(values, 'pressure'),
      temperature_K: numberGiven(values, 'temperature'),
      area_m2: (Math.PI / 4) * numberGiven(values, 'diameter') ** 2,
      dischargeCoefficient: numberGiven(values, 'dischargeCoefficient'),
      backPressure_Pa: numberGiven(values, 'backPressure'),
    };
    const { time_s, temperature_K, massFraction } = (isReal ? realBlowdownTo : idealBlowdownTo)(vessel, choiceGiven(values, 'process', BLOWDOWN_PROCESSES), numberGiven(values, 'toPressure'));
    const massAtStart_kg = (isReal ? cylinderMass_kg : idealCylinderMass_kg)(vessel.volume_m3, vessel.pressure_Pa, vessel.temperature_K);
    return { time_s, temperature_K, massFraction, massLeft_kg: massAtStart_kg * massFraction };
  },
};
