import { NITROGEN_R_J_kgK } from '../formulas/nitrogen-coefficients.ts';
import { RELATIVE_ROUGHNESS_GREATEST, churchillFriction } from '../formulas/friction.ts';
import type { FlowStretch } from './discharge.ts';
import type { PipeGas } from './pipe-gas.ts';

/** Slower flow loses nothing that counts; faster flow is as rough as can be. */
const REYNOLDS_LEAST = 1e-3;
const REYNOLDS_GREATEST = 1e11;
/** Below it friction changes so fast with the flow that Newton's steps must know how. */
const SLOPE_BELOW_REYNOLDS = 1e4;
const MOST_STEPS = 40;

/** The pressure that a stretch needs at its inlet, and how fast that rises. */
export interface StretchInlet {
  readonly inlet_Pa: number;
  /** ∂p1/∂p2 [-]: 0 when choked. */
  readonly byOutlet: number;
  /** ∂p1/∂ṁ [Pa·s/kg]. */
  readonly byFlow: number;
  readonly isChoked: boolean;
}

const roughOf = (stretch: FlowStretch): number => Math.min(RELATIVE_ROUGHNESS_GREATEST, stretch.roughness_m / stretch.bore_m);
const reynoldsOf = (stretch: FlowStretch, flow_kg_s: number, viscosity_Pas: number): number => Math.min(REYNOLDS_GREATEST, Math.max(REYNOLDS_LEAST, (4 * flow_kg_s) / (Math.PI * stretch.bore_m * viscosity_Pas)));

/** f·L/D + ΣK of a stretch and its slope over the flow. */
function resistanceOf(stretch: FlowStretch, flow_kg_s: number, viscosity_Pas: number): { resistance: number; byFlow: number } {
  const lengthInBores = stretch.length_m / stretch.bore_m;
  if (lengthInBores === 0) return { resistance: stretch.lossFactor, byFlow: 0 };
  const rough = roughOf(stretch);
  const reynolds = reynoldsOf(stretch, flow_kg_s, viscosity_Pas);
  const friction = churchillFriction(reynolds, rough);
  const byFlow = reynolds < SLOPE_BELOW_REYNOLDS ? (churchillFriction(reynolds * 1.0001, rough) - friction) / (flow_kg_s * 0.0001) : 0;
  return { resistance: friction * lengthInBores + stretch.lossFactor, byFlow: byFlow * lengthInBores };
}

/**
 * (p1/p2)² = s of isothermal flow: s − 1 = g·(Φ + ln s).
 * @param squareMach  g, square of the isothermal Mach number at the outlet, 0 to 1
 * @param resistance  Φ = f·L/D + ΣK
 */
function squareRatio(squareMach: number, resistance: number): number {
  // Both bounds lie above the root and the function bends upwards: Newton's steps come down to it and never pass it.
  const choked = resistance + Math.sqrt(2 * resistance);
  let ratio = 1 + Math.min(choked, squareMach < 1 ? (squareMach * resistance) / (1 - squareMach) : choked);
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const step = (ratio - 1 - squareMach * (resistance + Math.log(ratio))) / (1 - squareMach / ratio);
    if (!(step > 1e-15 * ratio)) break;
    ratio -= step;
  }
  return Math.max(1, ratio);
}

/**
 * Inlet of a stretch through which a flow runs to an outlet, isothermal with friction.
 * A flow that would be faster than sound at the outlet chokes there: its pressure stays above that of the outlet.
 *
 * @param mean_Pa  pressure for the compressibility: the mean of both ends as far as it is known
 */
export function stretchInlet(stretch: FlowStretch, gas: PipeGas, outlet_Pa: number, flow_kg_s: number, mean_Pa: number): StretchInlet {
  if (flow_kg_s <= 0) return { inlet_Pa: outlet_Pa, byOutlet: 1, byFlow: 0, isChoked: false };
  const { resistance, byFlow: rising } = resistanceOf(stretch, flow_kg_s, gas.viscosity_Pas);
  const area_m2 = (Math.PI / 4) * stretch.bore_m ** 2;
  const sonic_Pa = (flow_kg_s / area_m2) * Math.sqrt(NITROGEN_R_J_kgK * gas.temperature_K * gas.compressibility(mean_Pa));
  const isChoked = sonic_Pa >= outlet_Pa;
  const end_Pa = isChoked ? sonic_Pa : outlet_Pa;
  if (resistance < 1e-12) return { inlet_Pa: end_Pa, byOutlet: isChoked ? 0 : 1, byFlow: isChoked ? end_Pa / flow_kg_s : 0, isChoked };
  const squareMach = isChoked ? 1 : (sonic_Pa / outlet_Pa) ** 2;
  const ratio = squareRatio(squareMach, resistance);
  const root = Math.sqrt(ratio);
  const inlet_Pa = end_Pa * root;
  const share = Math.max(1e-12, 1 - squareMach / ratio);
  const byResistance = (squareMach * end_Pa * rising) / (2 * root * share);
  if (isChoked) return { inlet_Pa, byOutlet: 0, byFlow: inlet_Pa / flow_kg_s + byResistance, isChoked };
  return { inlet_Pa, byOutlet: (1 - squareMach) / (share * root), byFlow: (end_Pa * (ratio - 1)) / (root * share * flow_kg_s) + byResistance, isChoked };
}

/** A stretch with one flow through it, whose inlet is asked for at many outlets. */
export interface SteadyStretch {
  /** The inlet that `stretchInlet` gives, digit for digit [Pa]. */
  inlet_Pa(outlet_Pa: number, mean_Pa: number): number;
  /** Square of the isothermal Mach number at an outlet, 1 when choked [-]. */
  squareMach(outlet_Pa: number, mean_Pa: number): number;
}

/** What of a stretch does not change while the flow stays is worked out once. */
export function steadyStretch(stretch: FlowStretch, gas: PipeGas, flow_kg_s: number): SteadyStretch {
  if (flow_kg_s <= 0) return { inlet_Pa: (outlet_Pa) => outlet_Pa, squareMach: () => 0 };
  const lengthInBores = stretch.length_m / stretch.bore_m;
  const resistance = lengthInBores === 0 ? stretch.lossFactor : churchillFriction(reynoldsOf(stretch, flow_kg_s, gas.viscosity_Pas), roughOf(stretch)) * lengthInBores + stretch.lossFactor;
  const flux_kg_m2s = flow_kg_s / ((Math.PI / 4) * stretch.bore_m ** 2);
  const energy_J_kg = NITROGEN_R_J_kgK * gas.temperature_K;
  const sonicAt_Pa = (mean_Pa: number): number => flux_kg_m2s * Math.sqrt(energy_J_kg * gas.compressibility(mean_Pa));
  const squareMachOf = (sonic_Pa: number, outlet_Pa: number): number => (sonic_Pa >= outlet_Pa ? 1 : (sonic_Pa / outlet_Pa) ** 2);
  return {
    inlet_Pa: (outlet_Pa, mean_Pa) => {
      const sonic_Pa = sonicAt_Pa(mean_Pa);
      const end_Pa = Math.max(sonic_Pa, outlet_Pa);
      return resistance < 1e-12 ? end_Pa : end_Pa * Math.sqrt(squareRatio(squareMachOf(sonic_Pa, outlet_Pa), resistance));
    },
    squareMach: (outlet_Pa, mean_Pa) => squareMachOf(sonicAt_Pa(mean_Pa), outlet_Pa),
  };
}

/** Mean pressure of a pipe along which the square of the pressure falls evenly. */
export const meanPressure_Pa = (inlet_Pa: number, outlet_Pa: number): number => (2 / 3) * (inlet_Pa + outlet_Pa - (inlet_Pa * outlet_Pa) / (inlet_Pa + outlet_Pa));
