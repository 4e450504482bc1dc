import { NITROGEN_R_J_kgK } from '../formulas/nitrogen-coefficients.ts';
import { NITROGEN_HEAT_RATIO as GAMMA, chokedFlowFunction, chokedPressureRatio } from '../formulas/orifice.ts';
import type { PipeGas } from './pipe-gas.ts';

const CHOKED_RATIO = chokedPressureRatio(GAMMA);
const FLOW_FUNCTION = chokedFlowFunction(GAMMA);
/** Nearer to the pressure behind it the flow is taken as straight: its slope, a root's, would be endless there. */
const STRAIGHT_WITHIN_Pa = 10;

/** Flow of a nozzle and its slope over the pressure before it. */
export interface NozzleFlow {
  readonly flow_kg_s: number;
  /** [kg/(s·Pa)] */
  readonly byPressure: number;
  readonly isChoked: boolean;
}

const STILL: NozzleFlow = { flow_kg_s: 0, byPressure: 0, isChoked: false };

/** Flow function of an orifice that is not choked, and its slope over p_b/p₀. */
function openFunction(ratio: number): [value: number, slope: number] {
  const scale = (2 * GAMMA) / (GAMMA - 1);
  const a = ratio ** (2 / GAMMA);
  const b = ratio ** ((GAMMA + 1) / GAMMA);
  const value = Math.sqrt(scale * (a - b));
  return [value, (scale * ((2 / GAMMA) * a - ((GAMMA + 1) / GAMMA) * b)) / (2 * value * ratio)];
}

/**
 * Flow through a nozzle, choked or not, nothing when the room presses more: the ideal flow times what real gas adds to a choked one.
 * @param effective_m2  C_d·A [m²]
 */
export function nozzleFlow(effective_m2: number, gas: PipeGas, pressure_Pa: number, back_Pa: number): NozzleFlow {
  const over_Pa = pressure_Pa - back_Pa;
  if (over_Pa <= 0) return STILL;
  if (over_Pa < STRAIGHT_WITHIN_Pa) {
    const { flow_kg_s } = nozzleFlow(effective_m2, gas, back_Pa + STRAIGHT_WITHIN_Pa, back_Pa);
    return { flow_kg_s: (flow_kg_s * over_Pa) / STRAIGHT_WITHIN_Pa, byPressure: flow_kg_s / STRAIGHT_WITHIN_Pa, isChoked: false };
  }
  const scale = (effective_m2 * gas.fluxRatio(pressure_Pa)) / Math.sqrt(NITROGEN_R_J_kgK * gas.temperature_K);
  const ratio = back_Pa / pressure_Pa;
  if (ratio <= CHOKED_RATIO) return { flow_kg_s: scale * pressure_Pa * FLOW_FUNCTION, byPressure: scale * FLOW_FUNCTION, isChoked: true };
  const [value, slope] = openFunction(ratio);
  return { flow_kg_s: scale * pressure_Pa * value, byPressure: scale * (value - ratio * slope), isChoked: false };
}
