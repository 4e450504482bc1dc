import type { DischargeInput, DischargeResult } from './discharge.ts';
import type { CylinderState } from './cylinder-bank.ts';
import type { NetworkFlow } from './network-solver.ts';
import type { Rooms } from './room.ts';
import type { Source } from './source.ts';

/** All that is known of one moment. */
export interface Moment {
  readonly time_s: number;
  readonly cylinder: CylinderState;
  readonly source: Source;
  readonly network: NetworkFlow;
  readonly rooms: Rooms;
}

/** As many moments as a curve needs. */
const MOST_SAMPLES = 300;

/** Evenly chosen, first and last included. */
function sampled(moments: readonly Moment[]): readonly Moment[] {
  if (moments.length <= MOST_SAMPLES) return moments;
  const stride = (moments.length - 1) / (MOST_SAMPLES - 1);
  return Array.from({ length: MOST_SAMPLES }, (_, index) => moments[Math.round(index * stride)]).filter((moment) => moment !== undefined);
}

const greatest = (values: Iterable<number>): number => {
  let most = 0;
  for (const value of values) most = Math.max(most, value);
  return most;
};

function peakOfNozzle(moments: readonly Moment[], index: number): { flow_kg_s: number; isChoked: boolean } {
  let peak = { flow_kg_s: 0, isChoked: false };
  for (const { network } of moments) {
    const flow = network.nozzles[index];
    if (flow && flow.flow_kg_s > peak.flow_kg_s) peak = flow;
  }
  return peak;
}

/** The result from all moments of a run. Peaks are those of every moment, also of those that the curves leave out. */
export function recordOf(input: DischargeInput, moments: readonly Moment[], nozzleMass_kg: readonly number[], ended: DischargeResult['ended']): DischargeResult {
  const samples = sampled(moments);
  const [first] = moments;
  const last = moments.at(-1);
  if (!first || !last) throw new RangeError('A discharge has a start.');
  const nodePeaks_Pa = Array.from({ length: input.nodeCount }, (_, node) => greatest(moments.map(({ network }) => network.pressures_Pa[node] ?? 0)));
  const times95_s = last.rooms.spaces.map(({ timeTo95_s }) => timeTo95_s);
  const known95_s = times95_s.filter((time_s) => time_s !== undefined);
  return {
    times_s: samples.map(({ time_s }) => time_s),
    flow_kg_s: samples.map(({ network }) => network.flow_kg_s),
    cylinderPressure_Pa: samples.map(({ cylinder }) => cylinder.gas.pressure_Pa),
    cylinderTemperature_K: samples.map(({ cylinder }) => cylinder.gas.temperature_K),
    sourcePressure_Pa: samples.map(({ source }) => source.pressure_Pa),
    sourceTemperature_K: samples.map(({ source }) => source.temperature_K),
    nozzles: input.nozzles.map(({ id, node }, index) => {
      const peak = peakOfNozzle(moments, index);
      return { id, mass_kg: nozzleMass_kg[index] ?? 0, peakFlow_kg_s: peak.flow_kg_s, peakPressure_Pa: nodePeaks_Pa[node] ?? 0, isChokedAtPeak: peak.isChoked };
    }),
    nodes: nodePeaks_Pa.map((peakPressure_Pa) => ({ peakPressure_Pa })),
    spaces: last.rooms.spaces.map(({ space, mass_kg, timeTo95_s }, index) => ({
      id: space.id,
      mass_kg,
      concentration_pct: samples.map(({ rooms }) => 100 * (rooms.spaces[index]?.share ?? 0)),
      timeTo95_s,
    })),
    enclosures: last.rooms.enclosures.map(({ enclosure }, index) => ({
      id: enclosure.id,
      overpressure_Pa: samples.map(({ rooms }) => rooms.enclosures[index]?.overpressure_Pa ?? 0),
      peakOverpressure_Pa: greatest(moments.map(({ rooms }) => rooms.enclosures[index]?.overpressure_Pa ?? 0)),
    })),
    timeTo95_s: known95_s.length === times95_s.length && known95_s.length > 0 ? Math.max(...known95_s) : undefined,
    peakFlow_kg_s: greatest(moments.map(({ network }) => network.flow_kg_s)),
    peakPipePressure_Pa: greatest(nodePeaks_Pa),
    leastSourceTemperature_K: moments.reduce((least, { source }) => Math.min(least, source.temperature_K), first.source.temperature_K),
    leastCylinderTemperature_K: moments.reduce((least, { cylinder }) => Math.min(least, cylinder.gas.temperature_K), first.cylinder.gas.temperature_K),
    massAtStart_kg: first.cylinder.mass_kg * input.cylinders,
    massLeft_kg: last.cylinder.mass_kg * input.cylinders,
    isNetworkSolved: moments.every(({ network }) => network.isSolved),
    ended,
  };
}
