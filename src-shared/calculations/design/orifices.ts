import type { DerivedNetwork } from '../../derived/derived.ts';
import { remembered, rememberedPart } from '../../derived/remember.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import { ATMOSPHERE_Pa } from '../../units/convert.ts';
import type { DischargeInput } from '../discharge/discharge.ts';
import type { DischargeSource } from '../discharge/discharge-source.ts';
import { REAL_NITROGEN } from '../discharge/gas.ts';
import { pipeGasOf } from '../discharge/pipe-gas.ts';
import { sourceOf } from '../discharge/source.ts';
import { realOrificeFlow_kg_s } from '../formulas/orifice.ts';
import type { OrificeSums } from './design.ts';
import { usable } from './discharge.ts';
import type { FlowFrame } from './flow-input.ts';
import { lastAnswer } from './last-answer.ts';
import { outletOf_Pa } from './stretch-outlet.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Gas at the start of a discharge, where the pipe begins; undefined when throttling makes it colder than its equation goes. */
const startSource = lastAnswer((fill_Pa: number, fill_K: number, set_Pa: number | null) => sourceOf(REAL_NITROGEN, REAL_NITROGEN.stateOf(REAL_NITROGEN.densityOf(fill_Pa, fill_K), fill_K), set_Pa, undefined));

/** Float noise of an area that is made exactly as needed. */
const AS_NEEDED = 1e-3;

/** Areas for the flows that are wanted at the start of the discharge, in the order of the nozzles; or which nozzle its pipe starves. */
export function startAreasOf({ input, nozzles, tree }: FlowFrame, total_kg_s: number): readonly number[] | { readonly starved: string } {
  const total_m3 = input.spaces.reduce((sum, { volume_m3 }) => sum + volume_m3, 0);
  const flowOf = ({ space }: (typeof nozzles)[number]): number => (total_kg_s * (input.spaces[space]?.volume_m3 ?? 0)) / total_m3 / nozzles.filter((each) => each.space === space).length;
  const source = startSource(input.fillPressure_Pa, input.fillTemperature_K, input.regulatorPressure_Pa);
  if (!source) throw new RangeError('The gas would be colder than its equation goes as soon as it is throttled.');
  const { temperature_K } = source;
  const gas = pipeGasOf('real')(temperature_K);

  // Flow through each node: its nozzle's and all that goes on below it.
  const through = tree.nodeIds.map((_, node) => nozzles.filter((each) => each.node === node).reduce((sum, each) => sum + flowOf(each), 0));
  for (const { from, to } of [...tree.stretches].reverse()) through[from] = (through[from] ?? 0) + (through[to] ?? 0);
  const pressures: (number | undefined)[] = tree.nodeIds.map((_, node) => (node === 0 ? source.pressure_Pa : undefined));
  for (const stretch of tree.stretches) {
    const inlet_Pa = pressures[stretch.from];
    pressures[stretch.to] = inlet_Pa === undefined ? undefined : outletOf_Pa(stretch, gas, inlet_Pa, through[stretch.to] ?? 0);
  }
  const areas: number[] = [];
  for (const nozzle of nozzles) {
    const pressure_Pa = pressures[nozzle.node];
    if (pressure_Pa === undefined) return { starved: nozzle.name };
    areas.push(flowOf(nozzle) / realOrificeFlow_kg_s(1, nozzle.dischargeCoefficient, pressure_Pa, temperature_K, ATMOSPHERE_Pa));
  }
  return areas;
}

interface Sizing {
  readonly nozzles: FlowFrame['nozzles'];
  /** In their order. */
  readonly areas_m2: readonly number[];
  /** For a trial with them. */
  readonly input: DischargeInput;
}

/** Areas for the start with the trial that they ask for: one for one frame, so that who keeps results knows it again. */
const sizingOf = remembered((frame: FlowFrame, total_kg_s: number): Worked<Sizing> =>
  workOut(() => {
    const areas = startAreasOf(frame, total_kg_s);
    if ('starved' in areas) return notWorked(`the pipe to nozzle ${areas.starved} is too small for the flow that the manual states.`);
    const sized = frame.nozzles.map(({ name: _, ...nozzle }, i) => ({ ...nozzle, area_m2: areas[i] ?? 0 }));
    return worked({ nozzles: frame.nozzles, areas_m2: areas, input: { ...frame.input, nozzles: sized } });
  }),
);

/** Orifices that a nozzle is made with, largest first. */
const largestFirst = rememberedPart((orifices: UnitProfile['orifices']) => orifices.toSorted((a, b) => b.area_m2 - a.area_m2));

/** Orifices as much smaller as a trial with those of a sizing passed more than is wanted. */
const madeSmaller = remembered((sizing: Sizing, { network, profile }: DerivedNetwork, share: number): readonly OrificeSums[] => {
  const offered = largestFirst(profile?.orifices ?? []);
  return sizing.nozzles.map(({ id, name, area_m2 }, i) => {
    const needed_m2 = (sizing.areas_m2[i] ?? 0) * share;
    return { ref: { kind: 'nozzle', network: network.id, id }, name, drawn_m2: area_m2, needed_m2, made: offered.find((each) => each.area_m2 <= needed_m2 * (1 + AS_NEEDED)) };
  });
});

/**
 * Orifice areas with which every space gets its share, by net volume, of the greatest flow that the manual states, and
 * the nozzles of one space share alike. Sized for the start, they would pass more later, when the gas has become
 * cold and dense: a trial discharge says how much more, and all are made smaller by that.
 */
export function orificesOf(derived: DerivedNetwork, frame: Worked<FlowFrame>, dischargeOf: DischargeSource): Worked<readonly OrificeSums[]> {
  if (!frame.isKnown) return frame;
  const { network, profile } = derived;
  const stated_kg_s = profile?.limits.peakFlow_kg_s?.value;
  if (!stated_kg_s) return notWorked(`“Peak flow of one cylinder” is ${stated_kg_s === 0 ? '0' : 'blank'} in the unit profile of “${network.name}”.`);
  const total_kg_s = stated_kg_s * frame.sums.input.cylinders;
  const sizing = sizingOf(frame.sums, total_kg_s);
  if (!sizing.isKnown) return sizing;
  return workOut(() => {
    const trial = usable(dischargeOf(`${network.id}, sizing`, sizing.sums.input));
    if (!trial.isKnown) return trial;
    const { peakFlow_kg_s } = trial.sums.result;
    if (!(peakFlow_kg_s > 0)) return notWorked('nothing comes out.');
    return worked(madeSmaller(sizing.sums, derived, total_kg_s / peakFlow_kg_s));
  });
}
