import { remembered } from '../../derived/remember.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Enclosure } from '../../model/plan.ts';
import { EXPOSURE_LIMITS } from '../formulas/exposure.ts';
import { type FixedFill, feasibleCounts, fixedFillBand } from '../formulas/fixed-fill.ts';
import type { AgentSums, Exposure, FillSums, SupplySums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** More cylinders than any one enclosure has. */
const MOST_CYLINDERS = 200;

/** Least sea-level oxygen for the stay that is counted on, as the basis of design judges it. */
function oxygenLimit_pct(exposure: Exposure, { altitudeFactor }: AgentSums, basis: BasisOfDesign): number {
  const { greatest_pct, leastOxygen_pct } = EXPOSURE_LIMITS[exposure];
  const atConcentration_pct = basis.oxygenBase_pct * altitudeFactor * (1 - greatest_pct / 100);
  if (basis.exposureBy === 'oxygen') return leastOxygen_pct;
  return basis.exposureBy === 'concentration' ? atConcentration_pct : Math.max(leastOxygen_pct, atConcentration_pct);
}

/** The bands of a number of cylinders and of its neighbours. */
const bandsOf = remembered((agent: AgentSums, exposure: Exposure, cylinders: number, massEach_kg: number, basis: BasisOfDesign): Worked<FillSums> =>
  workOut(() => {
    const { net_m3, concentration_pct, coldSpecificVolume_m3_kg, hotSpecificVolume_m3_kg, altitudeFactor } = agent;
    const limit_pct = oxygenLimit_pct(exposure, agent, basis);
    const fill: FixedFill = { massEach_kg, concentration_pct, coldSpecificVolume_m3_kg, hotSpecificVolume_m3_kg, oxygenLimit_pct: limit_pct, oxygenBase_pct: basis.oxygenBase_pct, altitudeFactor, logarithm: basis.logarithm };
    const band = fixedFillBand({ ...fill, count: cylinders });
    if (!band) return notWorked('at this altitude even plain air has less oxygen than the limit.');
    const around = [cylinders - 1, cylinders, cylinders + 1].filter((count) => count >= 1);
    const bands = around.flatMap((count) => {
      const each = fixedFillBand({ ...fill, count });
      return each ? [{ cylinders: count, ...each }] : [];
    });
    return worked({ net_m3, cylinders, ...band, oxygenLimit_pct: limit_pct, fitting: feasibleCounts(net_m3, fill, MOST_CYLINDERS), bands });
  }),
);

/** Volumes that the cylinders fit, whose fill cannot be chosen: enough agent when cold, enough oxygen when hot. */
export function fillOf({ people }: Enclosure, agent: Worked<AgentSums>, supply: Worked<SupplySums>, basis: BasisOfDesign): Worked<FillSums> {
  if (!agent.isKnown) return agent;
  if (!supply.isKnown) return supply;
  if (people.exposure === 'none') return notWorked('nobody can be inside: there is no oxygen limit and so no band.');
  const { cylinders, massEach_kg, networks } = supply.sums;
  const parted = networks.find(({ share }) => share !== 1);
  if (parted) return notWorked(`“${parted.name}” also serves another enclosure, so that whole cylinders cannot be counted here. Agent and oxygen are worked out by themselves.`);
  return bandsOf(agent.sums, people.exposure, cylinders, massEach_kg, basis);
}
