import type { DerivedNetwork, Space } from '../../derived/derived.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Network } from '../../model/plan.ts';
import type { LimitKey } from '../../profile/limit-catalogue.ts';
import { LIMIT_CATALOGUE } from '../../profile/limit-catalogue.ts';
import { celsius_K } from '../../units/convert.ts';
import type { DischargeInput, FlowEnclosure, FlowNozzle, FlowSpace } from '../discharge/discharge.ts';
import { atmospherePressure_Pa } from '../formulas/altitude.ts';
import { nitrogenState } from '../formulas/nitrogen.ts';
import { type FlowTree, flowTreeOf } from './flow-tree.ts';
import { netVolumeOf_m3 } from './net-volume.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Cylinders are filled at this temperature: ISO 14520 and EN 15004 state the pressure at 15 °C. */
export const FILL_K = celsius_K(15);
/** Nobody waits longer for a discharge [s]. */
const FOLLOWED_s = 300;

/** The figures of the manual that a discharge needs, or the first that is blank. */
function limitsOf<K extends LimitKey>(network: DerivedNetwork, keys: readonly K[]): Worked<Record<K, number>> {
  const { profile } = network;
  if (!profile) return notWorked('the network has no unit profile.');
  const blank = keys.find((key) => !profile.limits[key]);
  if (blank) return notWorked(`“${LIMIT_CATALOGUE[blank].label}” is blank in the unit profile “${profile.name}”.`);
  return worked(Object.fromEntries(keys.map((key) => [key, profile.limits[key]?.value ?? 0])) as Record<K, number>);
}

/** Set pressure of the regulator of a network; null: it has none. */
export function regulatorOf({ network, profile }: DerivedNetwork): Worked<number | null> {
  const regulator = network.assembly.find(({ kind }) => kind === 'regulator');
  if (!regulator) return worked(null);
  const set_Pa = regulator.setPressure_Pa ?? profile?.limits.regulatorPressure_Pa?.value;
  return set_Pa === undefined ? notWorked(`the set pressure of “${regulator.name}” is not known.`) : worked(set_Pa);
}

/** The spaces that a network blows into, in the order of its nozzles. */
export const spacesServed = ({ nozzles }: DerivedNetwork): Space[] => [...new Map(nozzles.flatMap(({ space }) => (space ? [[space.key, space] as const] : []))).values()];

/** Spaces and enclosures of a discharge, or what is missing of them. */
function roomsOf(network: DerivedNetwork, basis: BasisOfDesign): Worked<{ spaces: FlowSpace[]; enclosures: FlowEnclosure[] }> {
  const served = spacesServed(network);
  const enclosures: FlowEnclosure[] = [];
  const spaces: FlowSpace[] = [];
  for (const space of served) {
    const { enclosure } = space;
    const volume_m3 = netVolumeOf_m3(space);
    if (volume_m3 === undefined || !(volume_m3 > 0)) return notWorked(`the volume of “${space.name}” is not known.`);
    if (!enclosure.temperature) return notWorked(`the temperatures of “${enclosure.name}” are not known.`);
    if (enclosure.altitude_m === null) return notWorked(`the height of “${enclosure.name}” above the sea is not known.`);
    if (!enclosure.concentration_pct) return notWorked(`no design concentration is chosen for “${enclosure.name}”.`);
    let index = enclosures.findIndex(({ id }) => id === enclosure.id);
    if (index < 0) {
      const vents = Object.values(enclosure.openings).filter(({ kind }) => kind === 'relief-vent');
      index =
        enclosures.push({
          id: enclosure.id,
          temperature_K: enclosure.temperature.least_K,
          ambient_Pa: atmospherePressure_Pa(enclosure.altitude_m, basis.altitudeMethod),
          ventArea_m2: vents.reduce((sum, { freeArea_m2 }) => sum + (freeArea_m2 ?? 0), 0),
          ventCoefficient: basis.ventCoefficient,
        }) - 1;
    }
    spaces.push({ id: space.key, volume_m3, enclosure: index, designConcentration_pct: enclosure.concentration_pct });
  }
  return worked({ spaces, enclosures });
}

/** What a discharge needs of a network besides the areas of its orifices. */
export interface FlowFrame {
  readonly input: Omit<DischargeInput, 'nozzles'>;
  readonly nozzles: readonly (Omit<FlowNozzle, 'area_m2'> & { readonly area_m2: number | null; readonly name: string })[];
  readonly tree: FlowTree;
}

/** Puts together what a discharge needs, or says what is missing. */
export function flowFrameOf(derived: DerivedNetwork, basis: BasisOfDesign): Worked<FlowFrame> {
  const network: Network = derived.network;
  if (derived.nozzles.length === 0) return notWorked('the network has no nozzle yet.');
  const [fault] = derived.faults;
  if (fault) return notWorked(`the pipe is not one sound tree yet. ${fault.text}`);
  const cylinders = Object.keys(network.cylinders).length;
  if (cylinders === 0) return notWorked('the network has no cylinder yet.');
  const homeless = derived.nozzles.find(({ space }) => !space);
  if (homeless) return notWorked(`nozzle ${homeless.nozzle.name} serves no space.`);
  const limits = limitsOf(derived, ['cylinderVolume_m3', 'agentMass_kg', 'filledMass_kg', 'cylinderDiameter_m', 'nozzleCoefficient']);
  if (!limits.isKnown) return limits;
  const regulator = regulatorOf(derived);
  if (!regulator.isKnown) return regulator;
  return workOut(() => {
    const rooms = roomsOf(derived, basis);
    if (!rooms.isKnown) return rooms;
    const { cylinderVolume_m3, agentMass_kg, filledMass_kg, cylinderDiameter_m, nozzleCoefficient } = limits.sums;
    const tree = flowTreeOf(derived, basis);
    const diameter_m = Math.max(cylinderDiameter_m, 0.01);
    return worked({
      tree,
      nozzles: derived.nozzles.map(({ nozzle, space }) => ({
        id: nozzle.id,
        name: nozzle.name,
        node: tree.nodeIds.indexOf(nozzle.node),
        area_m2: nozzle.orificeArea_m2,
        dischargeCoefficient: nozzleCoefficient,
        space: rooms.sums.spaces.findIndex(({ id }) => id === space?.key),
      })),
      input: {
        gas: 'real',
        process: basis.cylinderProcess,
        cylinders,
        cylinderVolume_m3,
        fillPressure_Pa: nitrogenState(agentMass_kg / cylinderVolume_m3, FILL_K).pressure_Pa,
        fillTemperature_K: FILL_K,
        steelMass_kg: Math.max(0, filledMass_kg - agentMass_kg),
        // A plain cylinder of that volume and diameter: side and two ends.
        innerArea_m2: (4 * cylinderVolume_m3) / diameter_m + (Math.PI / 2) * diameter_m ** 2,
        regulatorPressure_Pa: regulator.sums,
        stretches: tree.stretches,
        nodeCount: tree.nodeIds.length,
        ...rooms.sums,
        until_s: FOLLOWED_s,
      },
    });
  });
}
