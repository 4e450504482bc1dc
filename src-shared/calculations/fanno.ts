import {
  GAMMA_GREATEST,
  GAMMA_LEAST,
  MACH_GREATEST,
  MACH_LEAST,
  fannoFrictionLength,
  fannoFrictionLengthBasis,
  fannoMachOut,
  fannoMachOutBasis,
  fannoPressureBasis,
  fannoPressureRatio,
  fannoStagnationBasis,
  fannoStagnationRatio,
  fannoTemperatureBasis,
  fannoTemperatureRatio,
} from './formulas/fanno.ts';
import { numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** Flow with friction through an insulated pipe. */
export const fannoTopic: Topic = {
  id: 'fanno',
  title: 'Gas through an insulated pipe with friction (Fanno)',
  inputs: [
    { kind: 'number', name: 'machIn', quantity: 'ratio', least: MACH_LEAST, greatest: MACH_GREATEST, help: 'Mach number at the inlet, below or above 1' },
    { kind: 'number', name: 'frictionLength', quantity: 'ratio', least: 0, greatest: 1e6, help: 'f·L/D of the pipe with the Darcy friction factor (4·f·L/D with that of Fanning)' },
    { kind: 'number', name: 'gamma', quantity: 'ratio', least: GAMMA_LEAST, greatest: GAMMA_GREATEST, standard: 1.4, help: 'Isentropic exponent: 1.4 for nitrogen as an ideal gas' },
  ],
  outputs: {
    machOut: 'Mach number at the outlet; 1 when choked',
    pressureRatio: 'static pressure of the outlet over that of the inlet',
    temperatureRatio: 'static temperature of the outlet over that of the inlet',
    stagnationRatio: 'stagnation pressure of the outlet over that of the inlet',
    chokeLength: 'f·L*/D that would choke this inlet',
    choked: 'true when the pipe is as long as that or longer: this inlet Mach number cannot then be kept, and the ratios are those of a pipe that ends where it chokes',
  },
  bases: [fannoMachOutBasis, fannoFrictionLengthBasis, fannoPressureBasis, fannoTemperatureBasis, fannoStagnationBasis],
  run(values) {
    const machIn = numberGiven(values, 'machIn');
    const frictionLength = numberGiven(values, 'frictionLength');
    const gamma = numberGiven(values, 'gamma');
    const chokeLength = fannoFrictionLength(machIn, gamma);
    const machOut = fannoMachOut(machIn, frictionLength, gamma);
    return {
      machOut,
      pressureRatio: fannoPressureRatio(machOut, gamma) / fannoPressureRatio(machIn, gamma),
      temperatureRatio: fannoTemperatureRatio(machOut, gamma) / fannoTemperatureRatio(machIn, gamma),
      stagnationRatio: fannoStagnationRatio(machOut, gamma) / fannoStagnationRatio(machIn, gamma),
      chokeLength,
      choked: frictionLength >= chokeLength,
    };
  },
};
