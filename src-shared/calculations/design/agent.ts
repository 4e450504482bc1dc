import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Enclosure } from '../../model/plan.ts';
import { celsius_K } from '../../units/convert.ts';
import { cylindersNeeded, floodingMass_kg, referenceVolume_m3 } from '../formulas/agent-quantity.ts';
import { altitudeFactor } from '../formulas/altitude.ts';
import { designSourceOf, minimumDesign_pct } from '../formulas/design-concentration.ts';
import { specificVolume_m3_kg } from '../formulas/specific-volume.ts';
import type { AgentSums, EnclosureDesign, SupplySums, VolumeSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** The units of this program hold nitrogen. */
export const AGENT = 'IG-100';
/** Volumes of agent are stated at this temperature (EN 15004, ISO 14520). */
export const REFERENCE_K = celsius_K(20);

/** Lowest and highest temperature of an enclosure. */
export function temperaturesOf({ name, temperature }: Enclosure): Worked<NonNullable<Enclosure['temperature']>> {
  if (!temperature) return notWorked(`the temperatures of “${name}” are not known.`);
  return temperature.least_K > temperature.greatest_K ? notWorked(`the lowest temperature of “${name}” is above its highest.`) : worked(temperature);
}

/** Temperature at which agent fills a room while it is vented, as the basis of design says. */
export const ventTemperature_K = ({ ventTemperature }: BasisOfDesign, greatest_K: number): number => (ventTemperature === 'hottest' ? greatest_K : REFERENCE_K);

/** Agent that an enclosure needs: at its lowest temperature and its altitude. */
export function agentOf(enclosure: Enclosure, volume: Worked<VolumeSums>, basis: BasisOfDesign): Worked<AgentSums> {
  if (!volume.isKnown) return volume;
  const { name, concentration_pct, altitude_m } = enclosure;
  if (concentration_pct === null || concentration_pct === 0) return notWorked(`no design concentration is chosen for “${name}”.`);
  const temperatures = temperaturesOf(enclosure);
  if (!temperatures.isKnown) return temperatures;
  if (altitude_m === null) return notWorked(`the height of “${name}” above the sea is not known.`);
  const temperature = temperatures.sums;
  const { net_m3 } = volume.sums;
  return workOut(() => {
    const specific = (temperature_K: number): number => specificVolume_m3_kg(AGENT, temperature_K, basis.constants);
    const factor = altitudeFactor(altitude_m, basis.altitudeMethod);
    const massSeaLevel_kg = floodingMass_kg(net_m3, specific(temperature.least_K), concentration_pct, basis.logarithm);
    const massNeeded_kg = massSeaLevel_kg * factor;
    return worked({
      net_m3,
      concentration_pct,
      ...temperature,
      altitude_m,
      altitudeFactor: factor,
      coldSpecificVolume_m3_kg: specific(temperature.least_K),
      hotSpecificVolume_m3_kg: specific(temperature.greatest_K),
      massSeaLevel_kg,
      massNeeded_kg,
      referenceVolume_m3: referenceVolume_m3(massNeeded_kg, specific(REFERENCE_K)),
      floodingFactor_kg_m3: massSeaLevel_kg / net_m3,
    });
  });
}

/** Least concentration that the adopted edition allows for what can burn here. */
export function minimumOf({ hazardClass }: Enclosure, { designSet }: BasisOfDesign): EnclosureDesign['minimum'] {
  if (hazardClass === 'unknown') return notWorked('what can burn in the enclosure is not known.');
  const concentration_pct = minimumDesign_pct(AGENT, hazardClass, designSet);
  if (concentration_pct === undefined) return notWorked('the chosen edition gives no least concentration for this hazard. Take it from the listing.');
  return worked({ concentration_pct, source: designSourceOf(AGENT, designSet) });
}

/** Whole cylinders that hold the agent needed. */
export function cylindersNeededFor(agent: Worked<AgentSums>, supply: Worked<SupplySums>): Worked<number> {
  if (!agent.isKnown) return agent;
  if (!supply.isKnown) return supply;
  return workOut(() => {
    const count = cylindersNeeded(agent.sums.massNeeded_kg, supply.sums.massEach_kg);
    return Number.isFinite(count) ? worked(count) : notWorked('a cylinder holds next to nothing.');
  });
}
