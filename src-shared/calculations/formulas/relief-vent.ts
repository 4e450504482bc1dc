import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';

export const reliefVentBasis: Basis = {
  formula: 'A = Q/(C_d·√(2·Δp/ρ)),  Q = ṁ·s',
  source: 'incompressible orifice flow; the form to which ISO 21805:2023 and EN 15004-1 reduce is memory',
  caution: 'Whether peak or mean flow, air or mixture leaving, and which leakage may be counted differ between standards. A structural engineer states what the enclosure bears.',
};

/**
 * Free area of a relief vent that keeps an enclosure at its allowable pressure.
 *
 * @param massFlow_kg_s              ṁ, agent flowing in [kg/s], ≥ 0
 * @param specificVolume_m3_kg       s, of the agent at room temperature [m³/kg], > 0
 * @param allowablePressure_Pa       Δp, over the pressure outdoors [Pa], > 0
 * @param dischargeCoefficient       C_d, of the vent [-], above 0, at most 1
 * @param leavingDensity_kg_m3       ρ, of the gas that leaves [kg/m³], > 0
 * @returns free area [m²], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example reliefVentArea_m2(6.073, 0.85828, 500, 0.61, 1.205) // 0.2966
 */
export function reliefVentArea_m2(massFlow_kg_s: number, specificVolume_m3_kg: number, allowablePressure_Pa: number, dischargeCoefficient: number, leavingDensity_kg_m3: number): number {
  const flow_m3_s = notNegative('massFlow_kg_s', massFlow_kg_s) * positive('specificVolume_m3_kg', specificVolume_m3_kg);
  const velocity_m_s = Math.sqrt((2 * positive('allowablePressure_Pa', allowablePressure_Pa)) / positive('leavingDensity_kg_m3', leavingDensity_kg_m3));
  return flow_m3_s / (within('dischargeCoefficient', positive('dischargeCoefficient', dischargeCoefficient), 0, 1) * velocity_m_s);
}
