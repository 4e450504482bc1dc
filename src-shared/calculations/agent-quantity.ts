import {
  LOGARITHMS,
  concentrationBasis,
  concentrationOf_pct,
  cylindersNeeded,
  cylindersNeededBasis,
  floodingFactor,
  floodingMassBasis,
  floodingMass_kg,
  massShareTo95,
  massShareTo95Basis,
  referenceVolumeBasis,
  referenceVolume_m3,
} from './formulas/agent-quantity.ts';
import { ALTITUDE_METHODS, altitudeBasis, altitudeFactor } from './formulas/altitude.ts';
import { DESIGN_SETS, HAZARD_CLASSES, designConcentrationBases, dischargeLimitBasis, dischargeLimit_s, minimumDesign_pct } from './formulas/design-concentration.ts';
import { feasibleCounts, fixedFillBand, fixedFillBasis } from './formulas/fixed-fill.ts';
import { INERT_AGENTS, SPECIFIC_VOLUME_SETS, specificVolumeBasis, specificVolume_m3_kg } from './formulas/specific-volume.ts';
import { choiceGiven, numberGiven, optionalNumber } from './given.ts';
import type { Topic, TopicInput, TopicResult, TopicValues } from './topic.ts';

/** Most cylinders among which a fixed fill looks for a count. */
const GREATEST_COUNT = 100;
const NO_CYLINDERS = { cylinders: null, installedMass_kg: null, installedConcentration_pct: null };
const NO_BAND = { leastVolume_m3: null, greatestVolume_m3: null, feasibleCounts: null };

const INPUTS: readonly TopicInput[] = [
  { kind: 'choice', name: 'agent', choices: INERT_AGENTS, help: 'Agent' },
  { kind: 'number', name: 'volume', quantity: 'volume', least: 0.01, greatest: 1e6, help: 'Net volume' },
  { kind: 'number', name: 'temperature', quantity: 'temperature', least: 173.15, greatest: 373.15, help: 'Lowest temperature of the room' },
  { kind: 'number', name: 'concentration', quantity: 'percent', least: 1, greatest: 99, help: 'Design concentration' },
  { kind: 'number', name: 'altitude', quantity: 'altitude', least: -2000, greatest: 11_000, standard: 0, help: 'Above sea level; iso answers from -1000 m to 4500 m, nfpa from -3000 ft to 10 000 ft' },
  { kind: 'choice', name: 'altitudeMethod', choices: ALTITUDE_METHODS, standard: 'iso', help: 'Table of ISO 14520-1, table of NFPA 2001, or standard atmosphere' },
  { kind: 'choice', name: 'constants', choices: SPECIFIC_VOLUME_SETS, standard: 'iso', help: 'Whose specific volume; they differ for IG-01 only' },
  { kind: 'choice', name: 'logarithm', choices: LOGARITHMS, standard: 'exact', help: 'Natural logarithm, or 2.303 times the common one' },
  { kind: 'number', name: 'referenceTemperature', quantity: 'temperature', least: 273.15, greatest: 313.15, standard: 293.15, help: 'For the reference volume: 20 °C (ISO, EN) unless given; NFPA 2001 has 70 °F' },
  { kind: 'number', name: 'massEach', quantity: 'mass', least: 0.1, greatest: 1000, isOptional: true, help: 'Fill of one cylinder, for their count' },
  { kind: 'number', name: 'hottestTemperature', quantity: 'temperature', least: 173.15, greatest: 373.15, isOptional: true, help: 'Highest temperature of the room, for the volumes that suit the count' },
  { kind: 'number', name: 'oxygenLimit', quantity: 'percent', least: 1, greatest: 20, standard: 12, help: 'Least oxygen, sea-level equivalent, for those volumes' },
  { kind: 'number', name: 'oxygenBase', quantity: 'percent', least: 20, greatest: 21, standard: 20.95, help: 'Oxygen of the air before' },
  { kind: 'choice', name: 'hazardClass', choices: HAZARD_CLASSES, isOptional: true, help: 'Class of the fire, for the least design concentration' },
  { kind: 'choice', name: 'designSet', choices: DESIGN_SETS, isOptional: true, help: 'Whose rules for it' },
];

/** What the chosen rules ask for; null where they have no figure or nothing was chosen. */
function rulesOf(values: TopicValues): TopicResult {
  if (values.hazardClass === undefined || values.designSet === undefined) return { minimumDesign_pct: null, dischargeLimit_s: null };
  const hazard = choiceGiven(values, 'hazardClass', HAZARD_CLASSES);
  const set = choiceGiven(values, 'designSet', DESIGN_SETS);
  return { minimumDesign_pct: minimumDesign_pct(choiceGiven(values, 'agent', INERT_AGENTS), hazard, set) ?? null, dischargeLimit_s: dischargeLimit_s(hazard, set) ?? null };
}

/** Volumes that suit a count of cylinders, and the counts that suit the room; null without the highest temperature. */
function bandOf(values: TopicValues, massEach_kg: number, count: number, factor: number): TopicResult {
  const hottest_K = optionalNumber(values, 'hottestTemperature');
  if (hottest_K === undefined) return NO_BAND;
  const coldest_K = numberGiven(values, 'temperature');
  if (hottest_K < coldest_K) throw new RangeError(`hottestTemperature must not be below temperature, ${coldest_K} K.`);
  const agent = choiceGiven(values, 'agent', INERT_AGENTS);
  const constants = choiceGiven(values, 'constants', SPECIFIC_VOLUME_SETS);
  const fill = {
    massEach_kg,
    concentration_pct: numberGiven(values, 'concentration'),
    coldSpecificVolume_m3_kg: specificVolume_m3_kg(agent, coldest_K, constants),
    hotSpecificVolume_m3_kg: specificVolume_m3_kg(agent, hottest_K, constants),
    oxygenLimit_pct: numberGiven(values, 'oxygenLimit'),
    oxygenBase_pct: numberGiven(values, 'oxygenBase'),
    altitudeFactor: factor,
    logarithm: choiceGiven(values, 'logarithm', LOGARITHMS),
  };
  const band = fixedFillBand({ ...fill, count });
  return { leastVolume_m3: band?.least_m3 ?? null, greatestVolume_m3: band?.greatest_m3 ?? null, feasibleCounts: feasibleCounts(numberGiven(values, 'volume'), fill, GREATEST_COUNT) };
}

/** How much agent floods a room, and in how many cylinders. */
export const agentQuantityTopic: Topic = {
  id: 'agent-quantity',
  title: 'Agent that floods an enclosure',
  inputs: INPUTS,
  outputs: {
    specificVolume_m3_kg: 'of the agent at the temperature, sea-level pressure',
    mass_kg: 'agent at sea level',
    massAtAltitude_kg: 'agent at the altitude: what is needed',
    volumeAtReference_m3: 'volume of mass_kg at the reference temperature',
    floodingFactor: 'that volume for each volume of room',
    massFactor_kg_m3: 'mass_kg for each volume of room',
    altitudeFactor: 'pressure there over that at sea level',
    massShareTo95: 'share of the agent with which 95 % of the concentration is reached',
    cylinders: 'whole cylinders; null without massEach',
    installedMass_kg: 'what they hold; null without massEach',
    installedConcentration_pct: 'what that gives at the temperature; null without massEach',
    leastVolume_m3: 'below it the cylinders leave too little oxygen in the hottest room; null without hottestTemperature, or if even air has too little',
    greatestVolume_m3: 'above it the cylinders hold too little; null as leastVolume_m3',
    feasibleCounts: 'counts of cylinders, up to 100, that hold enough and leave enough oxygen; null as leastVolume_m3',
    minimumDesign_pct: 'least design concentration of the rules; null without hazardClass and designSet, or where they have no figure',
    dischargeLimit_s: 'longest time to 95 % of it; null as minimumDesign_pct',
  },
  bases: [
    floodingMassBasis,
    specificVolumeBasis,
    altitudeBasis,
    referenceVolumeBasis,
    massShareTo95Basis,
    cylindersNeededBasis,
    concentrationBasis,
    fixedFillBasis,
    ...DESIGN_SETS.map((set) => designConcentrationBases[set]),
    dischargeLimitBasis,
  ],
  run(values) {
    const agent = choiceGiven(values, 'agent', INERT_AGENTS);
    const constants = choiceGiven(values, 'constants', SPECIFIC_VOLUME_SETS);
    const logarithm = choiceGiven(values, 'logarithm', LOGARITHMS);
    const volume_m3 = numberGiven(values, 'volume');
    const concentration_pct = numberGiven(values, 'concentration');
    const specificVolume = specificVolume_m3_kg(agent, numberGiven(values, 'temperature'), constants);
    const reference = specificVolume_m3_kg(agent, numberGiven(values, 'referenceTemperature'), constants);
    const factor = altitudeFactor(numberGiven(values, 'altitude'), choiceGiven(values, 'altitudeMethod', ALTITUDE_METHODS));
    const mass_kg = floodingMass_kg(volume_m3, specificVolume, concentration_pct, logarithm);
    const massEach_kg = optionalNumber(values, 'massEach');
    const cylinders = massEach_kg === undefined ? 0 : cylindersNeeded(mass_kg * factor, massEach_kg);
    return {
      specificVolume_m3_kg: specificVolume,
      mass_kg,
      massAtAltitude_kg: mass_kg * factor,
      volumeAtReference_m3: referenceVolume_m3(mass_kg, reference),
      floodingFactor: floodingFactor(specificVolume, reference, concentration_pct, logarithm),
      massFactor_kg_m3: mass_kg / volume_m3,
      altitudeFactor: factor,
      massShareTo95: massShareTo95(concentration_pct),
      ...(massEach_kg === undefined
        ? NO_CYLINDERS
        : { cylinders, installedMass_kg: cylinders * massEach_kg, installedConcentration_pct: concentrationOf_pct(cylinders * massEach_kg, specificVolume / factor, volume_m3) }),
      ...(massEach_kg === undefined ? NO_BAND : bandOf(values, massEach_kg, cylinders, factor)),
      ...rulesOf(values),
    };
  },
};
