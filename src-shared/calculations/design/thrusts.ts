import type { DerivedNetwork } from '../../derived/derived.ts';
import { holeThrust_N, nozzleThrust } from '../formulas/thrust.ts';
import type { DischargeSums, SupportSums, ThrustSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Push of each nozzle at its highest pressure, with all holes open and with the worst one blocked. */
export function thrustsOf({ nozzles }: DerivedNetwork, discharge: Worked<DischargeSums>, supports: Worked<SupportSums>): Worked<readonly ThrustSums[]> {
  if (!discharge.isKnown) return discharge;
  const { input, result } = discharge.sums;
  return workOut(() => {
    const thrusts: ThrustSums[] = [];
    for (const [i, { ref, nozzle, holes_rad }] of nozzles.entries()) {
      // Input, result and network name the nozzles in one order.
      const [flow, peak] = [input.nozzles[i], result.nozzles[i]];
      const ambient_Pa = input.enclosures[input.spaces[flow?.space ?? -1]?.enclosure ?? -1]?.ambient_Pa;
      if (!flow || !peak || ambient_Pa === undefined || holes_rad.length === 0) return notWorked(`the holes of nozzle ${nozzle.name} are not known.`);
      const hole_N = holeThrust_N(Math.max(peak.peakPressure_Pa, ambient_Pa), flow.area_m2 / holes_rad.length, flow.dischargeCoefficient, ambient_Pa);
      const together = nozzleThrust(holes_rad.map((azimuth_rad) => ({ thrust_N: hole_N, azimuth_rad })));
      const support = supports.isKnown ? supports.sums.nozzles.find((each) => each.ref.id === nozzle.id)?.support : undefined;
      thrusts.push({ ref, name: nozzle.name, hole_N, open_N: together.size_N, blocked_N: together.worst_N, support });
    }
    return worked(thrusts);
  });
}
