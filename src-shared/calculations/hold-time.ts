import { AIR_kg_m3, leakageAreaBasis } from './formulas/door-fan.ts';
import { allowedLeakageBasis, gasInterface, gasInterfaceBasis, holdTimeAllowedLeakage } from './formulas/hold-leakage.ts';
import { type LeakyEnclosure, interfaceTimeBasis, interfaceTime_s, mixingTimeBasis, mixingTime_s, mixtureDensityBasis, mixtureDensity_kg_m3, wideInterfaceHeight_m } from './formulas/hold-time.ts';
import { INERT_AGENTS, specificVolume_m3_kg } from './formulas/specific-volume.ts';
import { choiceGiven, numberGiven, optionalNumber } from './given.ts';
import type { Topic } from './topic.ts';

const ROOM_K = 293.15;
const MODELS = ['sharp', 'wide', 'mixing'] as const;

/** How long an enclosure holds its concentration, by three models. */
export const holdTimeTopic: Topic = {
  id: 'hold-time',
  title: 'Time for which a leaking enclosure holds its concentration',
  inputs: [
    { kind: 'choice', name: 'agent', choices: INERT_AGENTS, help: 'Agent' },
    { kind: 'number', name: 'concentration', quantity: 'percent', least: 1, greatest: 99, help: 'Concentration at the end of discharge' },
    { kind: 'number', name: 'agentDensity', quantity: 'density', least: 0.1, greatest: 10, isOptional: true, help: 'Density of the pure agent; at 20 °C from its specific volume unless given' },
    { kind: 'number', name: 'volume', quantity: 'volume', least: 0.01, greatest: 1e6, help: 'Net volume' },
    { kind: 'number', name: 'height', quantity: 'length', least: 0.1, greatest: 100, help: 'Greatest height of the enclosure' },
    {
      kind: 'number',
      name: 'protectedHeight',
      quantity: 'length',
      least: 0,
      greatest: 100,
      help: 'How much height needs the gas: from the floor up when the mixture is heavier than air, from the ceiling down to the lowest protected point when it is lighter',
    },
    { kind: 'number', name: 'fanCoefficient', quantity: 'ratio', least: 1e-7, greatest: 1000, help: 'k1 of the door fan, flow of air in m³/s at 1 Pa' },
    { kind: 'number', name: 'fanExponent', quantity: 'ratio', least: 0.5, greatest: 0.999, help: 'n of the door fan' },
    { kind: 'number', name: 'lowerLeakFraction', quantity: 'ratio', least: 0.01, greatest: 0.99, help: 'Share of the leaks through which the gas leaves; 0.5 if unknown' },
    { kind: 'number', name: 'endFraction', quantity: 'percent', least: 1, greatest: 100, help: 'Share of the concentration that must be left at the end; 85 % in ISO 14520-1' },
    { kind: 'number', name: 'bias', quantity: 'pressureDifference', least: 0, greatest: 1000, standard: 0, help: 'Steady pressure of the ventilation that goes on' },
    { kind: 'number', name: 'wantedTime', quantity: 'time', least: 1, greatest: 86_400, standard: 600, help: 'How long the gas must hold, for the leakage allowed; 10 min in ISO 14520-1 and NFPA 2001' },
    { kind: 'choice', name: 'model', choices: MODELS, standard: 'wide', help: 'Model by which the leakage allowed is worked out' },
  ],
  outputs: {
    sharp_s: 'time by the sharp interface',
    wide_s: 'time by the wide interface',
    mixing_s: 'time if the gas stays mixed',
    interface: 'descending: heavier than air, judged at the highest protected point; rising: lighter than air, judged at the lowest',
    mixtureDensity_kg_m3: 'density of agent and air',
    columnPressure_Pa: 'pressure of the gas column over air, below 0 when lighter',
    allowedFanCoefficient: 'k1 with which the gas holds exactly as long as wanted, flow of air in m³/s at 1 Pa',
    allowedLeakageArea_m2: 'the same as an equivalent leakage area at 10 Pa',
  },
  bases: [interfaceTimeBasis, mixingTimeBasis, mixtureDensityBasis, gasInterfaceBasis, allowedLeakageBasis, leakageAreaBasis],
  run(values) {
    const height_m = numberGiven(values, 'height');
    const protectedHeight_m = numberGiven(values, 'protectedHeight');
    if (protectedHeight_m > height_m) throw new RangeError(`protectedHeight must not be above height, ${height_m} m.`);
    const room: LeakyEnclosure = {
      volume_m3: numberGiven(values, 'volume'),
      height_m,
      fanCoefficient: numberGiven(values, 'fanCoefficient'),
      fanExponent: numberGiven(values, 'fanExponent'),
      lowerLeakFraction: numberGiven(values, 'lowerLeakFraction'),
      bias_Pa: numberGiven(values, 'bias'),
    };
    const start_pct = numberGiven(values, 'concentration');
    const least_pct = (start_pct * numberGiven(values, 'endFraction')) / 100;
    const agentDensity_kg_m3 = optionalNumber(values, 'agentDensity') ?? 1 / specificVolume_m3_kg(choiceGiven(values, 'agent', INERT_AGENTS), ROOM_K, 'iso');
    const mixture_kg_m3 = mixtureDensity_kg_m3(agentDensity_kg_m3, start_pct);
    const times = {
      sharp: interfaceTime_s(room, mixture_kg_m3, protectedHeight_m),
      wide: interfaceTime_s(room, mixture_kg_m3, wideInterfaceHeight_m(height_m, protectedHeight_m, start_pct, least_pct)),
      mixing: mixingTime_s(room, agentDensity_kg_m3, start_pct, least_pct),
    };
    const allowed = holdTimeAllowedLeakage(room.fanCoefficient, room.fanExponent, times[choiceGiven(values, 'model', MODELS)], numberGiven(values, 'wantedTime'));
    return {
      sharp_s: times.sharp,
      wide_s: times.wide,
      mixing_s: times.mixing,
      allowedFanCoefficient: allowed.fanCoefficient,
      allowedLeakageArea_m2: allowed.leakageArea_m2,
      interface: gasInterface(mixture_kg_m3),
      mixtureDensity_kg_m3: mixture_kg_m3,
      columnPressure_Pa: 9.80665 * height_m * (mixture_kg_m3 - AIR_kg_m3),
    };
  },
};
