import type { DerivedNetwork } from '../../derived/derived.ts';
import { gaugeOf_Pa } from '../../units/convert.ts';
import { nitrogenDensity_kg_m3 } from '../formulas/nitrogen.ts';
import { elbowThrust_N } from '../formulas/thrust.ts';
import type { DischargeSums, TurnThrustSums } from './design.ts';
import { type Worked, workOut, worked } from './worked.ts';

/**
 * Force on each elbow at the greatest flow through it: what the flow alone pulls at its support, and all of it with the
 * pressure, most of which the wall of the pipe carries. The pressure is the greatest in the pipe and the gas at its
 * warmest, so thinnest and fastest: both err upward.
 */
export function turnThrustsOf(derived: DerivedNetwork, discharge: Worked<DischargeSums>): Worked<readonly TurnThrustSums[]> {
  if (!discharge.isKnown) return discharge;
  const { result } = discharge.sums;
  return workOut(() => {
    const pressure_Pa = result.peakPipePressure_Pa;
    const warmest_K = Math.max(...result.sourceTemperature_K);
    // The thinnest gas is the fastest.
    const density_kg_m3 = nitrogenDensity_kg_m3(pressure_Pa, warmest_K);
    const flows = new Map(result.nozzles.map(({ id, peakFlow_kg_s }) => [id, peakFlow_kg_s]));
    return worked(
      derived.fittings
        .filter(({ turn_rad }) => turn_rad > 0)
        .flatMap((fitting): TurnThrustSums[] => {
          const bore_m = Math.min(...derived.pipes.filter(({ pipe }) => fitting.pipes.includes(pipe.id)).map((pipe) => pipe.bore_m));
          const flow_kg_s = derived.paths.filter(({ nodes }) => nodes.includes(fitting.node)).reduce((sum, { nozzle }) => sum + (flows.get(nozzle) ?? 0), 0);
          if (!Number.isFinite(bore_m) || flow_kg_s === 0) return [];
          const area_m2 = (Math.PI / 4) * bore_m ** 2;
          const velocity_m_s = flow_kg_s / (density_kg_m3 * area_m2);
          return [
            {
              fitting,
              flow_kg_s,
              velocity_m_s,
              pressure_Pa,
              area_m2,
              support_N: elbowThrust_N(0, area_m2, flow_kg_s, velocity_m_s, fitting.turn_rad),
              pipe_N: elbowThrust_N(gaugeOf_Pa(pressure_Pa), area_m2, flow_kg_s, velocity_m_s, fitting.turn_rad),
            },
          ];
        }),
    );
  });
}
