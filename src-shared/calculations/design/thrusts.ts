import type { DerivedNetwork } from '../../derived/derived.ts';
import { holeThrust_N, nozzleThrust } from '../formulas/thrust.ts';
import type { DischargeSums, SupportSums, ThrustSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Push of each nozzle at its highest pressure, with all holes open and with the worst one blocked. */
export function thrustsOf(derived: DerivedNetwork, discharge: Worked<DischargeSums>, supports: Worked<SupportSums>): Worked<readonly ThrustSums[]> {
  if (!discharge.isKnown) return discharge;
  const coefficient = derived.profile?.limits.nozzleCoefficient?.value;
  if (coefficient === undefined) return notWorked('“Discharge coefficient” is blank in the unit profile.');
  return workOut(() => {
    const thrusts: ThrustSums[] = [];
    for (const { ref, nozzle, holes_rad } of derived.nozzles) {
      const peak = discharge.sums.result.nozzles.find(({ id }) => id === nozzle.id);
      if (!peak || !nozzle.orificeArea_m2 || holes_rad.length === 0) return notWorked(`the holes of nozzle ${nozzle.name} are not known.`);
      const hole_N = holeThrust_N(peak.peakPressure_Pa, nozzle.orificeArea_m2 / holes_rad.length, coefficient);
      const together = nozzleThrust(holes_rad.map((azimuth_rad) => ({ thrust_N: hole_N, azimuth_rad })));
      const support = supports.isKnown ? supports.sums.nozzles.find((each) => each.ref.id === nozzle.id)?.support : undefined;
      thrusts.push({ ref, name: nozzle.name, hole_N, open_N: together.size_N, blocked_N: together.worst_N, support });
    }
    return worked(thrusts);
  });
}
