import type { Basis } from '../topic.ts';
import { notNegative, positive } from './checked.ts';

/** A device on a two-wire run. */
export interface CircuitLoad {
  /** Along the run from the supply, one way [m]. */
  readonly distance_m: number;
  readonly current_A: number;
}

export const voltageDropBasis: Basis = {
  formula: 'U = Σ over stretches 2·ℓ·R·ΣI of the devices beyond',
  source: "Ohm's law along the run, both conductors",
};
/**
 * Voltage lost up to each device of a two-wire run, each drawing its own current at its own place.
 *
 * @param loads             the devices, in any order [m, A]
 * @param resistance_ohm_m  of one conductor [Ω/m], ≥ 0
 * @returns drop at each device, in the order given [V]
 * @throws {RangeError} a number not finite or below 0
 * @example voltageDrops_V([{ distance_m: 45.72, current_A: 2 }], 0.0254921)[0] // 4.662
 */
export function voltageDrops_V(loads: readonly CircuitLoad[], resistance_ohm_m: number): number[] {
  notNegative('resistance_ohm_m', resistance_ohm_m);
  for (const { distance_m, current_A } of loads) {
    notNegative('distance_m', distance_m);
    notNegative('current_A', current_A);
  }
  const outward = loads.map((load, index) => ({ ...load, index })).sort((a, b) => a.distance_m - b.distance_m);
  const drops = loads.map(() => 0);
  let beyond_A = loads.reduce((sum, { current_A }) => sum + current_A, 0);
  let at_m = 0;
  let drop_V = 0;
  for (const { distance_m, current_A, index } of outward) {
    drop_V += 2 * (distance_m - at_m) * resistance_ohm_m * beyond_A;
    drops[index] = drop_V;
    beyond_A = Math.max(0, beyond_A - current_A);
    at_m = distance_m;
  }
  return drops;
}

export const lumpedDropBasis: Basis = {
  formula: 'U = 2·L·R·ΣI',
  source: "Ohm's law, all current taken to the far end: an upper bound",
};
/**
 * Voltage lost if every device stood at the far end.
 *
 * @param loads             the devices [m, A]
 * @param resistance_ohm_m  of one conductor [Ω/m], ≥ 0
 * @returns drop [V]
 * @throws {RangeError} a number not finite or below 0
 * @example lumpedDrop_V([{ distance_m: 15.24, current_A: 0.5 }, { distance_m: 45.72, current_A: 1 }], 0.0100722) // 1.3815
 */
export function lumpedDrop_V(loads: readonly CircuitLoad[], resistance_ohm_m: number): number {
  const total_A = loads.reduce((sum, { current_A }) => sum + notNegative('current_A', current_A), 0);
  const farthest_m = loads.reduce((most, { distance_m }) => Math.max(most, notNegative('distance_m', distance_m)), 0);
  return 2 * farthest_m * notNegative('resistance_ohm_m', resistance_ohm_m) * total_A;
}

export const endOfBatteryBasis: Basis = {
  formula: '20.4 V = 85 % of 24 V',
  source: 'practice under UL 864 and NFPA 72, memory',
  caution: "The panel's own manual overrides it, as does the least voltage that the manual of a device gives.",
};
/** What a 24 V panel still gives at the end of its battery [V], unless its manual says otherwise. */
export const END_OF_BATTERY_V = 20.4;

export const longestRunBasis: Basis = {
  formula: 'L = (U_supply − U_least)/(2·R·I)',
  source: "Ohm's law, both conductors, all current taken to the far end",
};
/**
 * Longest run, one way, that still leaves a device its least voltage.
 *
 * @param supply_V          U_supply, at the panel [V], ≥ 0
 * @param leastVoltage_V    U_least, that the device needs [V], ≥ 0
 * @param current_A         I, of all devices, taken at the far end [A], > 0
 * @param resistance_ohm_m  R, of one conductor [Ω/m], > 0
 * @returns length [m], 0 when the panel itself gives too little
 * @throws {RangeError} argument not finite or out of range
 * @example longestRun_m(20.4, 16, 2, 0.0254921) // 43.15
 */
export function longestRun_m(supply_V: number, leastVoltage_V: number, current_A: number, resistance_ohm_m: number): number {
  const spare_V = notNegative('supply_V', supply_V) - notNegative('leastVoltage_V', leastVoltage_V);
  return Math.max(0, spare_V) / (2 * positive('resistance_ohm_m', resistance_ohm_m) * positive('current_A', current_A));
}
