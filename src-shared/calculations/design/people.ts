import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import { concentrationOf_pct } from '../formulas/agent-quantity.ts';
import { bandByConcentration, bandByOxygen, exposureBand, longestExposure_s } from '../formulas/exposure.ts';
import { residualOxygen_pct, seaLevelOxygen_pct } from '../formulas/oxygen.ts';
import { specificVolume_m3_kg } from '../formulas/specific-volume.ts';
import { AGENT } from './agent.ts';
import type { AgentSums, Atmosphere, PeopleSums, SupplySums } from './design.ts';
import { type Worked, workOut, worked } from './worked.ts';

function atmosphereAt(temperature_K: number, installed_kg: number, { net_m3, altitudeFactor }: AgentSums, basis: BasisOfDesign): Atmosphere {
  // At altitude a kilogram of agent takes up more room.
  const specificVolume = specificVolume_m3_kg(AGENT, temperature_K, basis.constants) / altitudeFactor;
  const concentration_pct = concentrationOf_pct(installed_kg, specificVolume, net_m3);
  const oxygen_pct = residualOxygen_pct(concentration_pct, basis.oxygenBase_pct);
  const oxygenSeaLevel_pct = seaLevelOxygen_pct(oxygen_pct, altitudeFactor);
  return { temperature_K, concentration_pct, oxygen_pct, oxygenSeaLevel_pct, byConcentration: bandByConcentration(concentration_pct), byOxygen: bandByOxygen(oxygenSeaLevel_pct) };
}

/** What people breathe when everything installed has come out: coldest and hottest. */
export function peopleOf(agent: Worked<AgentSums>, supply: Worked<SupplySums>, basis: BasisOfDesign): Worked<PeopleSums> {
  if (!agent.isKnown) return agent;
  if (!supply.isKnown) return supply;
  return workOut(() => {
    const { least_K, greatest_K } = agent.sums;
    const [cold, hot] = [least_K, greatest_K].map((temperature_K) => atmosphereAt(temperature_K, supply.sums.installed_kg, agent.sums, basis)) as [Atmosphere, Atmosphere];
    const exposure = exposureBand(hot.concentration_pct, hot.oxygenSeaLevel_pct, basis.exposureBy);
    return worked({ cold, hot, doBandsAgree: hot.byConcentration === hot.byOxygen, exposure, longest_s: longestExposure_s(exposure) });
  });
}
