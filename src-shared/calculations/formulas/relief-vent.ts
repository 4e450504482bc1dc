import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';

const SOURCE = 'incompressible orifice flow; the form to which ISO 21805:2023 and EN 15004-1 reduce is memory';

export const reliefVentBasis: Basis = {
  formula: 'A = Q/(C_d·√(2·Δp/ρ)),  Q = ṁ·s',
  source: SOURCE,
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

export const enclosurePressureBasis: Basis = {
  formula: 'Δp = ρ/2·(ṁ·s/(C_d·A))²',
  source: SOURCE,
  caution: 'Steady flow through an open vent. A damper that opens late or not at all lets the pressure rise far above this.',
};
/**
 * Pressure in an enclosure, over that outdoors, while a flow of agent leaves through a vent.
 *
 * @param massFlow_kg_s          ṁ, agent flowing in [kg/s], ≥ 0
 * @param specificVolume_m3_kg   s, of the agent at room temperature [m³/kg], > 0
 * @param area_m2                A, free area of the vent [m²], > 0
 * @param dischargeCoefficient   C_d, of the vent [-], above 0, at most 1
 * @param leavingDensity_kg_m3   ρ, of the gas that leaves [kg/m³], > 0
 * @returns pressure over outdoors [Pa], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example enclosurePressure_Pa(2.2494, 0.85828, 0.1554, 0.61, 1.205) // 249.9
 */
export function enclosurePressure_Pa(massFlow_kg_s: number, specificVolume_m3_kg: number, area_m2: number, dischargeCoefficient: number, leavingDensity_kg_m3: number): number {
  const flow_m3_s = notNegative('massFlow_kg_s', massFlow_kg_s) * positive('specificVolume_m3_kg', specificVolume_m3_kg);
  const jet_m2 = positive('area_m2', area_m2) * within('dischargeCoefficient', positive('dischargeCoefficient', dischargeCoefficient), 0, 1);
  return (positive('leavingDensity_kg_m3', leavingDensity_kg_m3) / 2) * (flow_m3_s / jet_m2) ** 2;
}

/** One opening on the way outdoors. */
export interface VentOpening {
  /** Free area [m²]. */
  readonly area_m2: number;
  readonly dischargeCoefficient: number;
}

/** The single opening that lets through as much as a chain of them. */
export interface VentChain {
  /** Its free area [m²]: never more than that of the smallest opening. */
  readonly area_m2: number;
  readonly dischargeCoefficient: number;
  /** C_d·A [m²]. */
  readonly jetArea_m2: number;
}

export const ventChainBasis: Basis = {
  formula: '1/A² = Σ 1/A_i²,  1/(C_d·A)² = Σ 1/(C_d·A)_i²',
  source: 'orifice flow with the pressure lost at each opening in turn, the speed not carried on to the next',
  caution: 'Every opening counts: vent, damper, duct, louvre, weather cowl. Ducts lose more by friction and turns, which is not in it.',
};
/**
 * The one opening that stands for openings in series on the way outdoors.
 *
 * @param openings  each opening that the gas passes, in any order [m², -], one or more
 * @returns free area, coefficient and their product [m², -]
 * @throws {RangeError} no opening, or one whose area or coefficient is not above 0 or too large
 * @example ventChain([{ area_m2: 0.3, dischargeCoefficient: 0.61 }, { area_m2: 0.4, dischargeCoefficient: 0.61 }]).area_m2 // 0.24
 */
export function ventChain(openings: readonly VentOpening[]): VentChain {
  if (openings.length === 0) throw new RangeError('openings must name at least one opening: without one there is no way outdoors.');
  let areas = 0;
  let jets = 0;
  for (const { area_m2, dischargeCoefficient } of openings) {
    const coefficient = within('dischargeCoefficient', positive('dischargeCoefficient', dischargeCoefficient), 0, 1);
    areas += positive('area_m2', area_m2) ** -2;
    jets += (area_m2 * coefficient) ** -2;
  }
  const [area_m2, jetArea_m2] = [areas ** -0.5, jets ** -0.5];
  return { area_m2, dischargeCoefficient: jetArea_m2 / area_m2, jetArea_m2 };
}
