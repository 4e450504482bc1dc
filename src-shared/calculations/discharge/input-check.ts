import { notNegative, positive, within } from '../formulas/checked.ts';
import type { DischargeInput, FlowStretch } from './discharge.ts';

/** Far beyond any cylinder: 600 bar, and as cold and warm as a store of cylinders can be. */
const GREATEST_Pa = 6e7;
const LEAST_FILL_K = 200;
const GREATEST_FILL_K = 400;

/** An index into a list. */
function indexOf(name: string, value: number, count: number): void {
  if (!Number.isInteger(value) || value < 0 || value >= count) throw new RangeError(`${name} must be one of ${count}, not ${value}.`);
}

/** A tree in flow order: every stretch begins where the gas already is and ends where it is not yet. */
function checkTree(stretches: readonly FlowStretch[], nodeCount: number): void {
  const reached = new Set([0]);
  for (const { from, to, length_m, bore_m, roughness_m, lossFactor } of stretches) {
    indexOf('from', from, nodeCount);
    indexOf('to', to, nodeCount);
    if (!reached.has(from)) throw new RangeError(`The stretch from node ${from} comes before the gas has come there.`);
    if (reached.has(to)) throw new RangeError(`Two stretches lead to node ${to}: the pipes must be a tree.`);
    reached.add(to);
    notNegative('length_m', length_m);
    positive('bore_m', bore_m);
    notNegative('roughness_m', roughness_m);
    notNegative('lossFactor', lossFactor);
  }
  if (reached.size !== nodeCount) throw new RangeError(`Pipes reach ${reached.size} of ${nodeCount} nodes.`);
}

/** @throws {RangeError} what a discharge cannot be worked out from */
export function checkDischargeInput(input: DischargeInput): void {
  if (!Number.isInteger(input.cylinders)) throw new RangeError(`cylinders must be a whole number, not ${input.cylinders}.`);
  positive('cylinders', input.cylinders);
  positive('cylinderVolume_m3', input.cylinderVolume_m3);
  within('fillPressure_Pa', input.fillPressure_Pa, 1e5, GREATEST_Pa);
  within('fillTemperature_K', input.fillTemperature_K, LEAST_FILL_K, GREATEST_FILL_K);
  notNegative('steelMass_kg', input.steelMass_kg);
  notNegative('innerArea_m2', input.innerArea_m2);
  if (input.regulatorPressure_Pa !== null) within('regulatorPressure_Pa', input.regulatorPressure_Pa, 1e5, GREATEST_Pa);
  positive('until_s', input.until_s);
  checkTree(input.stretches, input.nodeCount);
  for (const nozzle of input.nozzles) {
    indexOf('node', nozzle.node, input.nodeCount);
    indexOf('space', nozzle.space, input.spaces.length);
    notNegative('area_m2', nozzle.area_m2);
    within('dischargeCoefficient', nozzle.dischargeCoefficient, 0, 1);
  }
  for (const space of input.spaces) {
    indexOf('enclosure', space.enclosure, input.enclosures.length);
    positive('volume_m3', space.volume_m3);
    within('designConcentration_pct', space.designConcentration_pct, 0, 100);
  }
  for (const enclosure of input.enclosures) {
    within('temperature_K', enclosure.temperature_K, LEAST_FILL_K, GREATEST_FILL_K);
    positive('ambient_Pa', enclosure.ambient_Pa);
    notNegative('ventArea_m2', enclosure.ventArea_m2);
    within('ventCoefficient', enclosure.ventCoefficient, 0, 1);
  }
}
