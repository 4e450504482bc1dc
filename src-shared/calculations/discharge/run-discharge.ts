import { type CylinderBank, type CylinderState, cylinderBankOf } from './cylinder-bank.ts';
import type { DischargeInput, DischargeResult } from './discharge.ts';
import { checkDischargeInput } from './input-check.ts';
import { type Network, createNetwork } from './network-solver.ts';
import { type PipeGas, pipeGasOf } from './pipe-gas.ts';
import { type Moment, recordOf } from './record.ts';
import { type Rooms, emptyRooms, roomsAfter } from './room.ts';
import { sourceOf } from './source.ts';

/** Share of the gas in the cylinders that leaves in a step. */
const STEP_SHARE = 0.02;
/** The same where steps are given: no step empties the cylinders. */
const GREATEST_SHARE = 0.1;
/** Share by which what still drives the gas may fall in a step. */
const FALL_SHARE = 0.2;
const FIRST_STEP_s = 0.02;
const STEP_GROWTH = 1.4;
/** Steps of the whole time followed, at least. */
const LEAST_STEPS = 100;
/** The cylinders count as empty when they have no more than this share over the room's pressure. */
const EMPTY_SHARE = 0.005;
/** The end of the regulator's hold is met this closely; so far a step that passes it is cut. */
const HOLD_SHARE = 1e-4;

/** What all moments of a run share. */
interface Unit {
  readonly input: DischargeInput;
  readonly bank: CylinderBank;
  readonly network: Network;
  readonly gasAt: (temperature_K: number) => PipeGas;
}

/** Pressure behind each nozzle. */
function backsOf({ nozzles, spaces, enclosures }: DischargeInput, rooms: Rooms): number[] {
  return nozzles.map(({ space }) => {
    const index = spaces[space]?.enclosure ?? 0;
    return (enclosures[index]?.ambient_Pa ?? 0) + (rooms.enclosures[index]?.overpressure_Pa ?? 0);
  });
}

/** @returns undefined when the gas is colder than it is known for */
function momentOf({ input, bank, network, gasAt }: Unit, time_s: number, cylinder: CylinderState, rooms: Rooms, before: Moment | undefined): Moment | undefined {
  const source = sourceOf(bank.gas, cylinder.gas, input.regulatorPressure_Pa, before?.source);
  return source && { time_s, cylinder, source, rooms, network: network.solve(source.pressure_Pa, gasAt(source.temperature_K), backsOf(input, rooms)) };
}

const outflowOf = ({ input }: Unit, { network, cylinder }: Moment) => ({ flow_kg_s: network.flow_kg_s / input.cylinders, enthalpy_J_kg: cylinder.gas.enthalpy_J_kg });

interface Stride {
  readonly cylinder: CylinderState;
  /** Halfway: its flows are those of the whole step. */
  readonly halfway: Moment;
}

/** A step by the midpoint rule. */
function strideOf(unit: Unit, start: Moment, step_s: number): Stride | undefined {
  const { cylinder } = start;
  const half = unit.bank.after(cylinder, outflowOf(unit, start), step_s / 2);
  const halfway = half && momentOf(unit, start.time_s + step_s / 2, half, start.rooms, start);
  const end = halfway && unit.bank.after(cylinder, outflowOf(unit, halfway), step_s, half);
  return end && { cylinder: end, halfway };
}

/** Into each space. */
function spaceFlows_kg_s({ nozzles, spaces }: DischargeInput, { network }: Moment): number[] {
  const flows_kg_s = spaces.map(() => 0);
  for (const [index, { space }] of nozzles.entries()) flows_kg_s[space] = (flows_kg_s[space] ?? 0) + (network.nozzles[index]?.flow_kg_s ?? 0);
  return flows_kg_s;
}

function stepOf({ input }: Unit, moment: Moment, before: Moment | undefined, least_Pa: number, given_s: number | undefined): number {
  const { network, cylinder, time_s } = moment;
  const emptying_s = network.flow_kg_s > 0 ? (cylinder.mass_kg * input.cylinders) / network.flow_kg_s : Number.POSITIVE_INFINITY;
  const left_s = input.until_s - time_s;
  const over_Pa = cylinder.gas.pressure_Pa - least_Pa;
  const fall_Pa_s = before ? (before.cylinder.gas.pressure_Pa - cylinder.gas.pressure_Pa) / (time_s - before.time_s) : 0;
  const falling_s = fall_Pa_s > 0 ? (FALL_SHARE * over_Pa) / fall_Pa_s : Number.POSITIVE_INFINITY;
  if (given_s !== undefined) return Math.min(left_s, given_s, GREATEST_SHARE * emptying_s, falling_s);
  const grown_s = before ? (time_s - before.time_s) * STEP_GROWTH : FIRST_STEP_s;
  return Math.min(left_s, STEP_SHARE * emptying_s, falling_s, input.until_s / LEAST_STEPS, Math.max(FIRST_STEP_s, grown_s));
}

/** Part of a step after which the regulator no longer holds; 1 when that does not happen within it. */
function holdShare(set_Pa: number | null, start_Pa: number, end_Pa: number): number {
  if (set_Pa === null || start_Pa <= set_Pa * (1 + HOLD_SHARE) || end_Pa >= set_Pa) return 1;
  return (start_Pa - set_Pa) / (start_Pa - end_Pa);
}

/**
 * The discharge of a whole unit over time, from all valves open at once until the cylinders are empty or the time is up.
 *
 * @param input    cylinders, regulator, pipe, nozzles and rooms, base SI
 * @param options  step_s: greatest step [s] in place of one that follows the flow
 * @returns curves of at most 300 moments, peaks of every moment
 * @throws {RangeError} input not finite, out of range or no tree of pipes
 */
export function runDischarge(input: DischargeInput, options: { readonly step_s?: number } = {}): DischargeResult {
  checkDischargeInput(input);
  const unit: Unit = {
    input,
    bank: cylinderBankOf(input),
    network: createNetwork(input.stretches, input.nodeCount, input.nozzles),
    gasAt: pipeGasOf(input.gas),
  };
  const nozzleMass_kg = input.nozzles.map(() => 0);
  const moments: Moment[] = [];
  let moment = momentOf(unit, 0, unit.bank.start, emptyRooms(input), undefined);
  if (!moment) throw new RangeError('The gas would be colder than its equation goes as soon as it is throttled.');
  for (;;) {
    const before = moments.at(-1);
    moments.push(moment);
    const least_Pa = Math.min(...backsOf(input, moment.rooms), moment.source.pressure_Pa);
    if (moment.time_s >= input.until_s) return recordOf(input, moments, nozzleMass_kg, 'time');
    if (moment.source.pressure_Pa <= least_Pa * (1 + EMPTY_SHARE) && input.nozzles.length > 0) return recordOf(input, moments, nozzleMass_kg, 'empty');
    let step_s = stepOf(unit, moment, before, least_Pa, options.step_s);
    let stride = strideOf(unit, moment, step_s);
    const share = stride ? holdShare(input.regulatorPressure_Pa, moment.cylinder.gas.pressure_Pa, stride.cylinder.gas.pressure_Pa) : 1;
    if (share < 1) {
      step_s *= share;
      stride = strideOf(unit, moment, step_s);
    }
    if (!stride) return recordOf(input, moments, nozzleMass_kg, 'gas-limit');
    for (const [index, { flow_kg_s }] of stride.halfway.network.nozzles.entries()) nozzleMass_kg[index] = (nozzleMass_kg[index] ?? 0) + flow_kg_s * step_s;
    const rooms = roomsAfter(moment.rooms, spaceFlows_kg_s(input, stride.halfway), moment.time_s, step_s);
    const isLast = input.until_s - (moment.time_s + step_s) < 1e-9 * input.until_s;
    const next = momentOf(unit, isLast ? input.until_s : moment.time_s + step_s, stride.cylinder, rooms, moment);
    if (!next) return recordOf(input, moments, nozzleMass_kg, 'gas-limit');
    moment = next;
  }
}
