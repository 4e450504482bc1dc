import type { DerivedNetwork } from '../../derived/derived.ts';
import { nitrogenDensity_kg_m3, nitrogenState } from '../formulas/nitrogen.ts';
import { realOrificeFlow_kg_s } from '../formulas/orifice.ts';
import { ATMOSPHERE_Pa } from '../../units/convert.ts';
import { pipeGasOf } from '../discharge/pipe-gas.ts';
import type { FlowStretch } from '../discharge/discharge.ts';
import type { DischargeSource } from '../discharge/discharge-source.ts';
import { stretchInlet } from '../discharge/stretch-flow.ts';
import type { OrificeSums } from './design.ts';
import type { FlowFrame } from './flow-input.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Temperature to which gas of a state falls when it is throttled to a pressure: its enthalpy stays. */
function throttledTo_K(enthalpy_J_kg: number, pressure_Pa: number, from_K: number): number {
  let temperature_K = from_K;
  for (let step = 0; step < 40; step += 1) {
    const state = nitrogenState(nitrogenDensity_kg_m3(pressure_Pa, temperature_K), temperature_K);
    const change_K = (enthalpy_J_kg - state.enthalpy_J_kg) / state.cp_J_kgK;
    temperature_K += change_K;
    if (Math.abs(change_K) < 1e-6) break;
  }
  return temperature_K;
}

/** Pressure at the end of a stretch that a flow enters at a pressure; undefined when it cannot pass. */
function outlet_Pa(stretch: FlowStretch, gas: ReturnType<ReturnType<typeof pipeGasOf>>, inlet_Pa: number, flow_kg_s: number): number | undefined {
  const inletOf = (end_Pa: number): number => stretchInlet(stretch, gas, end_Pa, flow_kg_s, (inlet_Pa + end_Pa) / 2).inlet_Pa;
  if (inletOf(ATMOSPHERE_Pa) > inlet_Pa) return undefined;
  let [low_Pa, high_Pa] = [ATMOSPHERE_Pa, inlet_Pa];
  for (let step = 0; step < 60; step += 1) {
    const middle_Pa = (low_Pa + high_Pa) / 2;
    if (inletOf(middle_Pa) > inlet_Pa) high_Pa = middle_Pa;
    else low_Pa = middle_Pa;
  }
  return low_Pa;
}

/** Float noise of an area that is made exactly as needed. */
const AS_NEEDED = 1e-3;

/** Areas for the flows that are wanted at the start of the discharge, in the order of the nozzles; or which nozzle its pipe starves. */
export function startAreasOf({ input, nozzles, tree }: FlowFrame, total_kg_s: number): readonly number[] | { readonly starved: string } {
  const total_m3 = input.spaces.reduce((sum, { volume_m3 }) => sum + volume_m3, 0);
  const flowOf = ({ space }: (typeof nozzles)[number]): number => (total_kg_s * (input.spaces[space]?.volume_m3 ?? 0)) / total_m3 / nozzles.filter((each) => each.space === space).length;
  const source_Pa = Math.min(input.regulatorPressure_Pa ?? input.fillPressure_Pa, input.fillPressure_Pa);
  const filled = nitrogenState(nitrogenDensity_kg_m3(input.fillPressure_Pa, input.fillTemperature_K), input.fillTemperature_K);
  const temperature_K = throttledTo_K(filled.enthalpy_J_kg, source_Pa, input.fillTemperature_K);
  const gas = pipeGasOf('real')(temperature_K);

  // Flow through each node: its nozzle's and all that goes on below it.
  const through = tree.nodeIds.map((_, node) => nozzles.filter((each) => each.node === node).reduce((sum, each) => sum + flowOf(each), 0));
  for (const { from, to } of [...tree.stretches].reverse()) through[from] = (through[from] ?? 0) + (through[to] ?? 0);
  const pressures: (number | undefined)[] = tree.nodeIds.map((_, node) => (node === 0 ? source_Pa : undefined));
  for (const stretch of tree.stretches) {
    const inlet_Pa = pressures[stretch.from];
    pressures[stretch.to] = inlet_Pa === undefined ? undefined : outlet_Pa(stretch, gas, inlet_Pa, through[stretch.to] ?? 0);
  }
  const areas: number[] = [];
  for (const nozzle of nozzles) {
    const pressure_Pa = pressures[nozzle.node];
    if (pressure_Pa === undefined) return { starved: nozzle.name };
    areas.push(flowOf(nozzle) / realOrificeFlow_kg_s(1, nozzle.dischargeCoefficient, pressure_Pa, temperature_K, ATMOSPHERE_Pa));
  }
  return areas;
}

/**
 * Orifice areas with which every space gets its share, by net volume, of the greatest flow that the manual states, and
 * the nozzles of one space share alike. Sized for the start, they would pass more later, when the gas has become
 * cold and dense: a trial discharge says how much more, and all are made smaller by that.
 */
export function orificesOf(derived: DerivedNetwork, frame: Worked<FlowFrame>, dischargeOf: DischargeSource): Worked<readonly OrificeSums[]> {
  if (!frame.isKnown) return frame;
  const stated_kg_s = derived.profile?.limits.peakFlow_kg_s?.value;
  if (!stated_kg_s) return notWorked('“Peak flow of one cylinder” is blank in the unit profile.');
  const { input, nozzles } = frame.sums;
  return workOut(() => {
    const total_kg_s = stated_kg_s * input.cylinders;
    const areas = startAreasOf(frame.sums, total_kg_s);
    if ('starved' in areas) return notWorked(`the pipe to nozzle ${areas.starved} is too small for the flow that the manual states.`);
    const sized = nozzles.map(({ name: _, ...nozzle }, i) => ({ ...nozzle, area_m2: areas[i] ?? 0 }));
    const trial = dischargeOf(`${derived.network.id}, sizing`, { ...input, nozzles: sized });
    if (trial === undefined) return notWorked('the discharge is being worked out.');
    if (typeof trial === 'string') return notWorked(trial);
    const smaller = total_kg_s / trial.result.peakFlow_kg_s;
    const offered = [...(derived.profile?.orifices ?? [])].sort((a, b) => b.area_m2 - a.area_m2);
    return worked(
      nozzles.map((nozzle, i): OrificeSums => {
        const needed_m2 = (areas[i] ?? 0) * smaller;
        return { ref: { kind: 'nozzle', network: derived.network.id, id: nozzle.id }, name: nozzle.name, drawn_m2: nozzle.area_m2, needed_m2, made: offered.find(({ area_m2 }) => area_m2 <= needed_m2 * (1 + AS_NEEDED)) };
      }),
    );
  });
}
