import { concentrationBasis, concentrationOf_pct } from './formulas/agent-quantity.ts';
import { ALTITUDE_METHODS, altitudeBasis, altitudeFactor } from './formulas/altitude.ts';
import { EXPOSURE_JUDGEMENTS, bandByConcentration, bandByOxygen, egressKept, exposureBand, exposureBasis, exposureConditionsBasis, longestExposure_s } from './formulas/exposure.ts';
import { residualOxygenBasis, residualOxygen_pct, seaLevelOxygenBasis, seaLevelOxygen_pct } from './formulas/oxygen.ts';
import { INERT_AGENTS, SPECIFIC_VOLUME_SETS, specificVolumeBasis, specificVolume_m3_kg } from './formulas/specific-volume.ts';
import { choiceGiven, numberGiven, optionalNumber } from './given.ts';
import type { Topic } from './topic.ts';

/** What an installed mass does to people in the room. */
export const exposureTopic: Topic = {
  id: 'exposure',
  title: 'Oxygen that is left and how long people may be in it',
  inputs: [
    { kind: 'choice', name: 'agent', choices: INERT_AGENTS, help: 'Agent' },
    { kind: 'number', name: 'mass', quantity: 'mass', least: 0, greatest: 1e6, help: 'Installed mass: whole cylinders' },
    { kind: 'number', name: 'volume', quantity: 'volume', least: 0.01, greatest: 1e6, help: 'Net volume' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: 173.15, greatest: 373.15, help: 'Highest temperature of the room' },
    { kind: 'number', name: 'altitude', quantity: 'altitude', least: -2000, greatest: 11_000, standard: 0, help: 'Above sea level; iso answers from -1000 m to 4500 m, nfpa from -3000 ft to 10 000 ft' },
    { kind: 'choice', name: 'altitudeMethod', choices: ALTITUDE_METHODS, standard: 'iso', help: 'Table of ISO 14520-1, table of NFPA 2001, or standard atmosphere' },
    { kind: 'choice', name: 'constants', choices: SPECIFIC_VOLUME_SETS, standard: 'iso', help: 'Whose specific volume; they differ for IG-01 only' },
    { kind: 'number', name: 'oxygenBase', quantity: 'percent', least: 20, greatest: 21, standard: 20.95, help: 'Oxygen of the air before; 20.9 and 21 are in use too' },
    { kind: 'choice', name: 'judgedBy', choices: EXPOSURE_JUDGEMENTS, standard: 'stricter', help: 'What decides where the two ways of judging differ' },
    { kind: 'number', name: 'egressTime', quantity: 'time', least: 0, greatest: 3600, isOptional: true, help: 'Time people need to leave the room' },
    { kind: 'number', name: 'delay', quantity: 'time', least: 0, greatest: 3600, isOptional: true, help: 'From the alarm to the first gas' },
  ],
  outputs: {
    concentration_pct: 'agent in the room',
    oxygen_pct: 'oxygen left in the room',
    oxygenSeaLevel_pct: 'what it is worth at sea level',
    altitudeFactor: 'pressure there over that at sea level',
    bandByConcentration: '5-min, 3-min, 30-s or none: how long people may be in it, by the concentration',
    bandByOxygen: 'the same by the oxygen at its sea-level equivalent',
    bandsAgree: 'whether the two are the same',
    band: 'the one that counts',
    longestExposure_s: 'what it allows',
    egressKept: 'whether people are out within it, no delay taken off; null without egressTime',
    delayCoversEgress: 'whether people are out before the gas comes; null without egressTime and delay',
  },
  bases: [exposureBasis, exposureConditionsBasis, concentrationBasis, residualOxygenBasis, seaLevelOxygenBasis, altitudeBasis, specificVolumeBasis],
  run(values) {
    const factor = altitudeFactor(numberGiven(values, 'altitude'), choiceGiven(values, 'altitudeMethod', ALTITUDE_METHODS));
    const specificVolume = specificVolume_m3_kg(choiceGiven(values, 'agent', INERT_AGENTS), numberGiven(values, 'temperature'), choiceGiven(values, 'constants', SPECIFIC_VOLUME_SETS));
    // The same mass takes more room where the air is thinner.
    const concentration_pct = concentrationOf_pct(numberGiven(values, 'mass'), specificVolume / factor, numberGiven(values, 'volume'));
    const oxygen_pct = residualOxygen_pct(concentration_pct, numberGiven(values, 'oxygenBase'));
    const oxygenSeaLevel_pct = seaLevelOxygen_pct(oxygen_pct, factor);
    const byConcentration = bandByConcentration(concentration_pct);
    const byOxygen = bandByOxygen(oxygenSeaLevel_pct);
    const band = exposureBand(concentration_pct, oxygenSeaLevel_pct, choiceGiven(values, 'judgedBy', EXPOSURE_JUDGEMENTS));
    const egress_s = optionalNumber(values, 'egressTime');
    const delay_s = optionalNumber(values, 'delay');
    return {
      concentration_pct,
      oxygen_pct,
      oxygenSeaLevel_pct,
      altitudeFactor: factor,
      bandByConcentration: byConcentration,
      bandByOxygen: byOxygen,
      bandsAgree: byConcentration === byOxygen,
      band,
      longestExposure_s: longestExposure_s(band),
      egressKept: egress_s === undefined ? null : egressKept(egress_s, band),
      delayCoversEgress: egress_s === undefined || delay_s === undefined ? null : delay_s >= egress_s,
    };
  },
};
