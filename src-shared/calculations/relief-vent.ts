import { reliefVentArea_m2, reliefVentBasis } from './formulas/relief-vent.ts';
import { INERT_AGENTS, specificVolumeBasis, specificVolume_m3_kg } from './formulas/specific-volume.ts';
import { choiceGiven, numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** Relief vent of an enclosure from the peak flow of agent. */
export const reliefVentTopic: Topic = {
  id: 'relief-vent',
  title: 'Free area of the pressure relief vent',
  inputs: [
    { kind: 'number', name: 'massFlow', quantity: 'massFlow', least: 0, greatest: 1000, help: 'Peak flow of agent into the enclosure' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: 173.15, greatest: 373.15, help: 'Room temperature' },
    { kind: 'number', name: 'allowablePressure', quantity: 'pressureDifference', least: 1, greatest: 100_000, help: 'What the weakest part of the enclosure bears, over outdoors' },
    { kind: 'number', name: 'dischargeCoefficient', quantity: 'ratio', least: 0.01, greatest: 1, help: "The vent's own; 0.61 is a sharp-edged opening" },
    { kind: 'choice', name: 'agent', choices: INERT_AGENTS, help: 'Agent' },
    { kind: 'number', name: 'leavingDensity', quantity: 'density', least: 0.1, greatest: 10, standard: 1.205, help: 'Density of the gas leaving: air at 20 °C unless given' },
  ],
  outputs: {
    freeArea_m2: 'free area of the vent, every opening on the way outdoors',
    volumeFlow_m3_s: 'agent at room temperature',
  },
  bases: [reliefVentBasis, specificVolumeBasis],
  run(values) {
    const specificVolume = specificVolume_m3_kg(choiceGiven(values, 'agent', INERT_AGENTS), numberGiven(values, 'temperature'), 'iso');
    const massFlow_kg_s = numberGiven(values, 'massFlow');
    return {
      freeArea_m2: reliefVentArea_m2(massFlow_kg_s, specificVolume, numberGiven(values, 'allowablePressure'), numberGiven(values, 'dischargeCoefficient'), numberGiven(values, 'leavingDensity')),
      volumeFlow_m3_s: massFlow_kg_s * specificVolume,
    };
  },
};
