import { END_OF_BATTERY_V, endOfBatteryBasis, longestRunBasis, longestRun_m, lumpedDropBasis, lumpedDrop_V, voltageDropBasis, voltageDrops_V } from './formulas/voltage-drop.ts';
import { STRANDINGS, WIRE_GAUGES, wireResistanceBasis, wireResistance_ohm_m } from './formulas/wire.ts';
import { choiceGiven, listGiven, numberGiven, optionalNumber } from './given.ts';
import type { Topic } from './topic.ts';

/** Voltage at the devices of a releasing circuit. */
export const voltageDropTopic: Topic = {
  id: 'voltage-drop',
  title: 'Voltage at the devices of a releasing circuit',
  inputs: [
    { kind: 'choice', name: 'wireGauge', choices: WIRE_GAUGES, help: 'American wire gauge of the copper conductors' },
    { kind: 'choice', name: 'stranding', choices: STRANDINGS, help: 'Solid, or of seven strands' },
    { kind: 'number', name: 'supplyVoltage', quantity: 'voltage', least: 1, greatest: 240, help: `At the panel; ${END_OF_BATTERY_V} V at the end of the battery of a 24 V system is common practice` },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: 223.15, greatest: 423.15, standard: 348.15, help: 'Of the conductors' },
    { kind: 'number', name: 'leastVoltage', quantity: 'voltage', least: 0, greatest: 240, isOptional: true, help: 'What a device needs; 16 V is common for a 24 V device' },
    {
      kind: 'list',
      name: 'loads',
      help: 'Every device on the run, in any order',
      inputs: [
        { kind: 'number', name: 'distance', quantity: 'length', least: 0, greatest: 10_000, help: 'Along the run from the panel, one way' },
        { kind: 'number', name: 'current', quantity: 'current', least: 0, greatest: 100, help: 'What the device draws' },
      ],
    },
  ],
  outputs: {
    drop_V: 'lost up to the farthest device',
    endVoltage_V: 'left there; not above 0 when the run cannot carry this current',
    lumpedDrop_V: 'lost if every device stood at the far end: an upper bound',
    deviceVoltages_V: 'left at each device, in the order given',
    longestRun_m: 'one way, with all devices at the far end and the least voltage left there; null when none is given or nothing is drawn',
  },
  bases: [voltageDropBasis, lumpedDropBasis, longestRunBasis, wireResistanceBasis, endOfBatteryBasis],
  run(values) {
    const resistance = wireResistance_ohm_m(choiceGiven(values, 'wireGauge', WIRE_GAUGES), choiceGiven(values, 'stranding', STRANDINGS), numberGiven(values, 'temperature'));
    const loads = listGiven(values, 'loads').map((load) => ({ distance_m: numberGiven(load, 'distance'), current_A: numberGiven(load, 'current') }));
    const supply_V = numberGiven(values, 'supplyVoltage');
    const drops = voltageDrops_V(loads, resistance);
    const drop_V = Math.max(...drops);
    const least_V = optionalNumber(values, 'leastVoltage');
    const current_A = loads.reduce((sum, load) => sum + load.current_A, 0);
    return {
      drop_V,
      endVoltage_V: supply_V - drop_V,
      lumpedDrop_V: lumpedDrop_V(loads, resistance),
      deviceVoltages_V: drops.map((each) => supply_V - each),
      longestRun_m: least_V === undefined || current_A === 0 ? null : longestRun_m(supply_V, least_V, current_A, resistance),
    };
  },
};
