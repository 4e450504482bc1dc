import { enclosurePressureBasis, enclosurePressure_Pa, reliefVentArea_m2, reliefVentBasis, ventChain, ventChainBasis } from './formulas/relief-vent.ts';
import { INERT_AGENTS, specificVolumeBasis, specificVolume_m3_kg } from './formulas/specific-volume.ts';
import { choiceGiven, numberGiven, numbersGiven } from './given.ts';
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
    { kind: 'numbers', name: 'openings', quantity: 'area', least: 1e-6, greatest: 1000, isOptional: true, help: 'Free area of each opening that stands one after the other on the way outdoors' },
  ],
  outputs: {
    freeArea_m2: 'free area of the vent, every opening on the way outdoors',
    volumeFlow_m3_s: 'agent at room temperature',
    chainArea_m2: 'the one opening that stands for those given; null when none are given',
    enclosurePressure_Pa: 'over outdoors, with the openings given; null when none are given',
  },
  bases: [reliefVentBasis, enclosurePressureBasis, ventChainBasis, specificVolumeBasis],
  run(values) {
    const specificVolume = specificVolume_m3_kg(choiceGiven(values, 'agent', INERT_AGENTS), numberGiven(values, 'temperature'), 'iso');
    const massFlow_kg_s = numberGiven(values, 'massFlow');
    const dischargeCoefficient = numberGiven(values, 'dischargeCoefficient');
    const leaving_kg_m3 = numberGiven(values, 'leavingDensity');
    const chain = values.openings === undefined ? undefined : ventChain(numbersGiven(values, 'openings').map((area_m2) => ({ area_m2, dischargeCoefficient })));
    return {
      freeArea_m2: reliefVentArea_m2(massFlow_kg_s, specificVolume, numberGiven(values, 'allowablePressure'), dischargeCoefficient, leaving_kg_m3),
      volumeFlow_m3_s: massFlow_kg_s * specificVolume,
      chainArea_m2: chain?.area_m2 ?? null,
      enclosurePressure_Pa: chain ? enclosurePressure_Pa(massFlow_kg_s, specificVolume, chain.area_m2, dischargeCoefficient, leaving_kg_m3) : null,
    };
  },
};
