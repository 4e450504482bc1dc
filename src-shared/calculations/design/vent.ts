import type { DerivedNetwork } from '../../derived/derived.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Enclosure, Plan, RefOf } from '../../model/plan.ts';
import { thingName } from '../../model/thing-name.ts';
import { AIR_kg_m3 } from '../formulas/door-fan.ts';
import { enclosurePressure_Pa, reliefVentArea_m2 } from '../formulas/relief-vent.ts';
import { specificVolume_m3_kg } from '../formulas/specific-volume.ts';
import { AGENT, ventTemperature_K } from './agent.ts';
import type { AgentSums, DischargeSums, LeakSums, SupplySums, VentSums, WeakestSums } from './design.ts';
import { type NotWorked, type Worked, notWorked, workOut, worked } from './worked.ts';

/** Discharge coefficient of the sharp-edged opening that a leakage area stands for. */
const LEAK_COEFFICIENT = 0.61;

/** The wall that bears least; not known while one wall is. */
export function weakestOf(ref: RefOf<'enclosure'>, { outline, holes }: Enclosure, plan: Pick<Plan, 'levels' | 'networks'>): Worked<WeakestSums> {
  let weakest: WeakestSums | undefined;
  for (const corner of [outline, ...holes].flat()) {
    const wall: RefOf<'wall'> = { kind: 'wall', level: ref.level, enclosure: ref.id, id: corner.id };
    const { allowablePressure_Pa } = corner.wall;
    if (allowablePressure_Pa === null) return notWorked(`the pressure that ${thingName(plan, wall)} bears is not known.`);
    if (!weakest || allowablePressure_Pa < weakest.pressure_Pa) weakest = { pressure_Pa: allowablePressure_Pa, wall, wallName: thingName(plan, wall) };
  }
  return weakest ? worked(weakest) : notWorked('the enclosure has no wall.');
}

interface VentFlow {
  readonly flow_kg_s: number;
  readonly flowSource: string;
}

/** Flow that the vent is sized for, as the basis of design says. */
function ventFlowOf(supply: SupplySums, networks: readonly DerivedNetwork[], dischargeOf: (network: DerivedNetwork) => Worked<DischargeSums> | undefined, basis: BasisOfDesign): VentFlow | NotWorked {
  let flow_kg_s = 0;
  const sources = new Set<string>();
  for (const network of networks) {
    const part = supply.networks.find(({ ref }) => ref.id === network.ref.id);
    if (!part) continue;
    if (basis.ventFlow === 'manual') {
      const stated = network.profile?.limits.peakFlow_kg_s;
      if (!stated?.value) return notWorked(`“Peak flow of one cylinder” is ${stated ? '0' : 'blank'} in the unit profile of “${part.name}”.`);
      flow_kg_s += stated.value * part.cylinders * part.share;
      sources.add(`unit profile: ${stated.source}`);
    } else {
      const discharge = dischargeOf(network);
      if (!discharge?.isKnown) return notWorked(`the discharge is not worked out: ${discharge ? discharge.because : 'it has not been run.'}`);
      flow_kg_s += discharge.sums.result.peakFlow_kg_s * part.share;
      sources.add('peak of the calculated discharge');
    }
  }
  return { flow_kg_s, flowSource: [...sources].join('; ') };
}

/** What the relief vent needs and what is drawn. */
export function ventOf(
  ref: RefOf<'enclosure'>,
  enclosure: Enclosure,
  agent: Worked<AgentSums>,
  supply: Worked<SupplySums>,
  weakest: Worked<WeakestSums>,
  leaks: Worked<LeakSums>,
  networks: readonly DerivedNetwork[],
  dischargeOf: (network: DerivedNetwork) => Worked<DischargeSums> | undefined,
  basis: BasisOfDesign,
): Worked<VentSums> {
  if (!agent.isKnown) return agent;
  if (!supply.isKnown) return supply;
  if (!weakest.isKnown) return weakest;
  if (weakest.sums.pressure_Pa === 0) return notWorked(`no vent is large enough: ${weakest.sums.wallName} bears no pressure at all.`);
  const flow = ventFlowOf(supply.sums, networks, dischargeOf, basis);
  if ('because' in flow) return flow;
  const openings = Object.values(enclosure.openings).filter(({ kind }) => kind === 'relief-vent');
  const unsized = openings.find(({ freeArea_m2 }) => freeArea_m2 === null);
  if (unsized) return notWorked(`the free area of “${unsized.name}” is not known.`);
  if (basis.ventCountsLeakage && !leaks.isKnown) return leaks;
  return workOut(() => {
    const { altitudeFactor, greatest_K } = agent.sums;
    const temperature_K = ventTemperature_K(basis, greatest_K);
    const specificVolume = specificVolume_m3_kg(AGENT, temperature_K, basis.constants) / altitudeFactor;
    const leaving_kg_m3 = AIR_kg_m3 * altitudeFactor;
    const vents = openings.map(({ id, name, freeArea_m2, leadsTo }) => ({ ref: { kind: 'opening' as const, level: ref.level, enclosure: ref.id, id }, name, freeArea_m2: freeArea_m2 ?? 0, leadsTo }));
    const countedLeakage_m2 = basis.ventCountsLeakage && leaks.isKnown ? (leaks.sums.area_m2 * LEAK_COEFFICIENT) / basis.ventCoefficient : 0;
    const provided_m2 = vents.reduce((sum, { freeArea_m2 }) => sum + freeArea_m2, 0) + countedLeakage_m2;
    return worked({
      ...flow,
      temperature_K,
      specificVolume_m3_kg: specificVolume,
      allowable_Pa: weakest.sums.pressure_Pa,
      needed_m2: reliefVentArea_m2(flow.flow_kg_s, specificVolume, weakest.sums.pressure_Pa, basis.ventCoefficient, leaving_kg_m3),
      provided_m2,
      vents,
      countedLeakage_m2,
      pressureWithVents_Pa: provided_m2 > 0 ? enclosurePressure_Pa(flow.flow_kg_s, specificVolume, provided_m2, basis.ventCoefficient, leaving_kg_m3) : undefined,
    });
  });
}
