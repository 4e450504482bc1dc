import type { DerivedNetwork, Space } from '../../derived/derived.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { LimitKey } from '../../profile/limit-catalogue.ts';
import { LIMIT_CATALOGUE } from '../../profile/limit-catalogue.ts';
import { celsius_K } from '../../units/convert.ts';
import type { DischargeInput, FlowEnclosure, FlowNozzle, FlowSpace } from '../discharge/discharge.ts';
import { temperaturesOf, ventTemperature_K } from './agent.ts';
import { atmospherePressure_Pa } from '../formulas/altitude.ts';
import { nitrogenState } from '../formulas/nitrogen.ts';
import { type FlowTree, flowTreeOf } from './flow-tree.ts';
import { lastAnswer } from './last-answer.ts';
import { netVolumeOf_m3 } from './net-volume.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Cylinders are filled at this temperature: ISO 14520 and EN 15004 state the pressure at 15 °C. */
export const FILL_K = celsius_K(15);
/** Nobody waits longer for a discharge [s]. */
const FOLLOWED_s = 300;

/** The figures of the manual that a discharge needs, or the first that is blank or nothing. */
function limitsOf<K extends LimitKey>(network: DerivedNetwork, keys: readonly K[]): Worked<Record<K, number>> {
  const { profile } = network;
  if (!profile) return notWorked('the network has no unit profile.');
  const blank = keys.find((key) => !profile.limits[key]?.value);
  if (blank) return notWorked(`“${LIMIT_CATALOGUE[blank].label}” is ${profile.limits[blank] ? '0' : 'blank'} in the unit profile “${profile.name}”.`);
  return worked(Object.fromEntries(keys.map((key) => [key, profile.limits[key]?.value ?? 0])) as Record<K, number>);
}

/**
 * Set pressure of the regulator of a network; null: it has none. While nobody has listed the discharge assembly it is
 * the unit's own, as its manual gives it; of several regulators the lowest decides.
 */
export function regulatorOf({ network: { name, assembly }, profile }: DerivedNetwork): Worked<number | null> {
  const stated_Pa = profile?.limits.regulatorPressure_Pa?.value;
  if (assembly.length === 0) return stated_Pa === undefined ? notWorked(`whether “${name}” has a regulator is not known: list its discharge assembly.`) : worked(stated_Pa);
  const regulators = assembly.filter(({ kind }) => kind === 'regulator');
  if (regulators.length === 0 && stated_Pa !== undefined) return notWorked(`the discharge assembly of “${name}” lists no regulator, but the unit profile gives a set pressure for one.`);
  let lowest_Pa: number | null = null;
  for (const regulator of regulators) {
    const set_Pa = regulator.setPressure_Pa ?? stated_Pa;
    if (set_Pa === undefined) return notWorked(`the set pressure of “${regulator.name}” is not known.`);
    lowest_Pa = Math.min(lowest_Pa ?? set_Pa, set_Pa);
  }
  return worked(lowest_Pa);
}

/** The spaces that a network blows into, in the order of its nozzles. */
export const spacesServed = ({ nozzles }: DerivedNetwork): Space[] => [...new Map(nozzles.flatMap(({ space }) => (space ? [[space.key, space] as const] : []))).values()];

interface FlowRooms {
  readonly spaces: FlowSpace[];
  /** As warm as the relief vent is sized for: the pressure in the room must not come out low. */
  readonly enclosures: FlowEnclosure[];
  /** At their coldest, where the agent takes up least: the time must not come out short. */
  readonly coldest: FlowEnclosure[];
}

/** Spaces and enclosures of a discharge, or what is missing of them. */
function roomsOf(network: DerivedNetwork, basis: BasisOfDesign): Worked<FlowRooms> {
  const served = spacesServed(network);
  const enclosures: FlowEnclosure[] = [];
  const coldest: FlowEnclosure[] = [];
  const spaces: FlowSpace[] = [];
  for (const space of served) {
    const { enclosure } = space;
    const volume_m3 = netVolumeOf_m3(space);
    if (volume_m3 === undefined || !(volume_m3 > 0)) return notWorked(`the volume of “${space.name}” is not known.`);
    const temperatures = temperaturesOf(enclosure);
    if (!temperatures.isKnown) return temperatures;
    if (enclosure.altitude_m === null) return notWorked(`the height of “${enclosure.name}” above the sea is not known.`);
    if (!enclosure.concentration_pct) return notWorked(`no design concentration is chosen for “${enclosure.name}”.`);
    let index = enclosures.findIndex(({ id }) => id === enclosure.id);
    if (index < 0) {
      const vents = Object.values(enclosure.openings).filter(({ kind }) => kind === 'relief-vent');
      const unsized = vents.find(({ freeArea_m2 }) => freeArea_m2 === null);
      if (unsized) return notWorked(`the free area of “${unsized.name}” is not known.`);
      const { least_K, greatest_K } = temperatures.sums;
      const coldestRoom: FlowEnclosure = {
        id: enclosure.id,
        temperature_K: least_K,
        ambient_Pa: atmospherePressure_Pa(enclosure.altitude_m, basis.altitudeMethod),
        ventArea_m2: vents.reduce((sum, { freeArea_m2 }) => sum + (freeArea_m2 ?? 0), 0),
        ventCoefficient: basis.ventCoefficient,
      };
      coldest.push(coldestRoom);
      index = enclosures.push({ ...coldestRoom, temperature_K: ventTemperature_K(basis, greatest_K) }) - 1;
    }
    spaces.push({ id: space.key, volume_m3, enclosure: index, designConcentration_pct: enclosure.concentration_pct });
  }
  return worked({ spaces, enclosures, coldest });
}

const fillPressure_Pa = lastAnswer((density_kg_m3: number) => nitrogenState(density_kg_m3, FILL_K).pressure_Pa);

/** What a discharge needs of a network besides the areas of its orifices. */
export interface FlowFrame {
  readonly input: Omit<DischargeInput, 'nozzles'>;
  /** The same enclosures at their coldest. */
  readonly coldest: readonly FlowEnclosure[];
  readonly nozzles: readonly (Omit<FlowNozzle, 'area_m2'> & { readonly area_m2: number | null; readonly name: string })[];
  readonly tree: FlowTree;
}

/** Puts together what a discharge needs, or says what is missing. */
export function flowFrameOf(derived: DerivedNetwork, basis: BasisOfDesign): Worked<FlowFrame> {
  const { network } = derived;
  if (derived.nozzles.length === 0) return notWorked('the network has no nozzle yet.');
  // A turn that no fitting makes is reckoned as the next larger elbow: the flow does not wait for it.
  const fault = derived.faults.find(({ kind }) => kind !== 'unbuildable');
  if (fault) return notWorked(`the pipe is not one sound tree yet. ${fault.text}`);
  const cylinders = Object.keys(network.cylinders).length;
  if (cylinders === 0) return notWorked('the network has no cylinder yet.');
  const homeless = derived.nozzles.find(({ space }) => !space);
  if (homeless) return notWorked(`nozzle ${homeless.nozzle.name} serves no space.`);
  const limits = limitsOf(derived, ['cylinderVolume_m3', 'agentMass_kg', 'filledMass_kg', 'cylinderDiameter_m', 'nozzleCoefficient']);
  if (!limits.isKnown) return limits;
  const { cylinderVolume_m3, agentMass_kg, filledMass_kg, cylinderDiameter_m, nozzleCoefficient } = limits.sums;
  if (filledMass_kg <= agentMass_kg) return notWorked(`“${LIMIT_CATALOGUE.filledMass_kg.label}” is not more than “${LIMIT_CATALOGUE.agentMass_kg.label}” in the unit profile.`);
  const regulator = regulatorOf(derived);
  if (!regulator.isKnown) return regulator;
  return workOut(() => {
    const rooms = roomsOf(derived, basis);
    if (!rooms.isKnown) return rooms;
    const tree = flowTreeOf(derived, basis);
    const { spaces, enclosures, coldest } = rooms.sums;
    return worked({
      tree,
      coldest,
      nozzles: derived.nozzles.map(({ nozzle, space }) => ({
        id: nozzle.id,
        name: nozzle.name,
        node: tree.nodeIds.indexOf(nozzle.node),
        area_m2: nozzle.orificeArea_m2,
        dischargeCoefficient: nozzleCoefficient,
        space: spaces.findIndex(({ id }) => id === space?.key),
      })),
      input: {
        gas: 'real',
        process: basis.cylinderProcess,
        pipeWarmth: 'as-throttled',
        cylinders,
        cylinderVolume_m3,
        fillPressure_Pa: fillPressure_Pa(agentMass_kg / cylinderVolume_m3),
        fillTemperature_K: FILL_K,
        steelMass_kg: filledMass_kg - agentMass_kg,
        // A plain cylinder of that volume and diameter: side and two ends.
        innerArea_m2: (4 * cylinderVolume_m3) / cylinderDiameter_m + (Math.PI / 2) * cylinderDiameter_m ** 2,
        regulatorPressure_Pa: regulator.sums,
        stretches: tree.stretches,
        nodeCount: tree.nodeIds.length,
        spaces,
        enclosures,
        until_s: FOLLOWED_s,
      },
    });
  });
}
