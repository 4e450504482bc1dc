import { type CylinderBank, type CylinderState, type Outflow, cylinderBankOf } from './cylinder-bank.ts';
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
/** After so many moments a step is at least this part of the time followed: a cylinder that follows the pressure of a room would go on for ever. */
const MANY_MOMENTS = 1000;
const MOST_LATE_STEPS = 2000;
/** Share of the gas over the pressure of the rooms that leaves in a step, at most. */
const DRAIN_SHARE = 0.5;
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
  if (!source) return undefined;
  const pipe_K = input.pipeWarmth === 'warmed' ? Math.max(source.temperature_K, input.fillTemperature_K) : source.temperature_K;
  return { time_s, cylinder, source, rooms, network: network.solve(source.pressure_Pa, gasAt(pipe_K), backsOf(input, rooms)) };
}

/** Least pressure that the gas runs to. */
const leastBack_Pa = (input: DischargeInput, { rooms, source }: Moment): number => Math.min(...backsOf(input, rooms), source.pressure_Pa);

interface Stride {
  readonly cylinder: CylinderState;
  /** Of each nozzle through the whole step. */
  readonly nozzleFlows_kg_s: readonly number[];
}

/** A step by the midpoint rule. A flow that would fall short of the rooms' pressure within the step is cut: so no step is too long. */
function strideOf(unit: Unit, start: Moment, step_s: number): Stride | undefined {
  const { cylinder } = start;
  const { cylinders } = unit.input;
  const drainable_kg = DRAIN_SHARE * cylinder.mass_kg * (1 - leastBack_Pa(unit.input, start) / cylinder.gas.pressure_Pa);
  const shareOf = ({ network }: Moment): number => Math.min(1, (drainable_kg * cylinders) / (network.flow_kg_s * step_s || 1));
  const outflowOf = (moment: Moment): Outflow => ({ flow_kg_s: (shareOf(moment) * moment.network.flow_kg_s) / cylinders, enthalpy_J_kg: moment.cylinder.gas.enthalpy_J_kg });
  const half = unit.bank.after(cylinder, outflowOf(start), step_s / 2);
  const halfway = half && momentOf(unit, start.time_s + step_s / 2, half, start.rooms, start);
  const end = halfway && unit.bank.after(cylinder, outflowOf(halfway), step_s, half);
  return end && { cylinder: end, nozzleFlows_kg_s: halfway.network.nozzles.map(({ flow_kg_s }) => shareOf(halfway) * flow_kg_s) };
}

/** Into each space. */
function spaceFlows_kg_s({ nozzles, spaces }: DischargeInput, { nozzleFlows_kg_s }: Stride): number[] {
  const flows_kg_s = spaces.map(() => 0);
  for (const [index, { space }] of nozzles.entries()) flows_kg_s[space] = (flows_kg_s[space] ?? 0) + (nozzleFlows_kg_s[index] ?? 0);
  return flows_kg_s;
}

function stepOf({ input }: Unit, moments: readonly Moment[], moment: Moment, given_s = Number.POSITIVE_INFINITY): number {
  const { network, cylinder, time_s } = moment;
  const before = moments.at(-2);
  const emptying_s = network.flow_kg_s > 0 ? (cylinder.mass_kg * input.cylinders) / network.flow_kg_s : Number.POSITIVE_INFINITY;
  const left_s = input.until_s - time_s;
  const over_Pa = cylinder.gas.pressure_Pa - leastBack_Pa(input, moment);
  const fall_Pa_s = before ? (before.cylinder.gas.pressure_Pa - cylinder.gas.pressure_Pa) / (time_s - before.time_s) : 0;
  const falling_s = fall_Pa_s > 0 ? (FALL_SHARE * over_Pa) / fall_Pa_s : Number.POSITIVE_INFINITY;
  const late_s = moments.length > MANY_MOMENTS ? input.until_s / MOST_LATE_STEPS : 0;
  if (Number.isFinite(given_s)) return Math.min(left_s, given_s, Math.max(late_s, Math.min(GREATEST_SHARE * emptying_s, falling_s)));
  const grown_s = before ? (time_s - before.time_s) * STEP_GROWTH : FIRST_STEP_s;
  return Math.min(left_s, input.until_s / LEAST_STEPS, Math.max(late_s, Math.min(STEP_SHARE * emptying_s, falling_s, Math.max(FIRST_STEP_s, grown_s))));
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
    moments.push(moment);
    if (moment.time_s >= input.until_s) return recordOf(input, moments, nozzleMass_kg, 'time');
    if (moment.source.pressure_Pa <= leastBack_Pa(input, moment) * (1 + EMPTY_SHARE) && input.nozzles.length > 0) return recordOf(input, moments, nozzleMass_kg, 'empty');
    let step_s = stepOf(unit, moments, moment, options.step_s);
    let stride = strideOf(unit, moment, step_s);
    const share = stride ? holdShare(input.regulatorPressure_Pa, moment.cylinder.gas.pressure_Pa, stride.cylinder.gas.pressure_Pa) : 1;
    if (share < 1) {
      step_s *= share;
      stride = strideOf(unit, moment, step_s);
    }
    if (!stride) return recordOf(input, moments, nozzleMass_kg, 'gas-limit');
    for (const [index, flow_kg_s] of stride.nozzleFlows_kg_s.entries()) nozzleMass_kg[index] = (nozzleMass_kg[index] ?? 0) + flow_kg_s * step_s;
    const rooms = roomsAfter(moment.rooms, spaceFlows_kg_s(input, stride), moment.time_s, step_s);
    const isLast = input.until_s - (moment.time_s + step_s) < 1e-9 * input.until_s;
    const next = momentOf(unit, isLast ? input.until_s : moment.time_s + step_s, stride.cylinder, rooms, moment);
    if (!next) return recordOf(input, moments, nozzleMass_kg, 'gas-limit');
    moment = next;
  }
}
