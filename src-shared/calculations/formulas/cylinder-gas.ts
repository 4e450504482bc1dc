import type { Basis } from '../topic.ts';
import { positive, within } from './checked.ts';
import { NITROGEN_R_J_kgK } from './nitrogen-coefficients.ts';
import { nitrogenBasis, nitrogenDensity_kg_m3, nitrogenState } from './nitrogen.ts';

export const cylinderMassBasis: Basis = { formula: 'm = ρ(p, T)·V', source: nitrogenBasis.source, caution: 'Fill pressures are stated on the gauge by some and absolute by others; the nameplate and the manual say which, and at what temperature.' };
/**
 * Nitrogen in a cylinder, as a real gas.
 *
 * @param volume_m3      V, water volume [m³], > 0
 * @param pressure_Pa    p, absolute [Pa], 1 to 1e8
 * @param temperature_K  T [K], 126.2 to 1000
 * @returns mass [kg]
 * @throws {RangeError} argument not finite or out of range
 * @example cylinderMass_kg(0.08, 200e5, 288.15) // 17.855
 */
export function cylinderMass_kg(volume_m3: number, pressure_Pa: number, temperature_K: number): number {
  return nitrogenDensity_kg_m3(pressure_Pa, temperature_K) * positive('volume_m3', volume_m3);
}

export const idealCylinderMassBasis: Basis = { formula: 'm = p·V/(R·T), R = 296.80 J/(kg·K)', source: 'ideal gas law', caution: 'For comparison only: 5 % too much at 200 bar, 14 % at 300 bar.' };
/**
 * What an ideal gas would weigh in a cylinder.
 *
 * @param volume_m3      V, water volume [m³], > 0
 * @param pressure_Pa    p, absolute [Pa], > 0
 * @param temperature_K  T [K], > 0
 * @returns mass [kg]
 * @throws {RangeError} argument not finite or out of range
 * @example idealCylinderMass_kg(0.08, 200e5, 288.15) // 18.708
 */
export function idealCylinderMass_kg(volume_m3: number, pressure_Pa: number, temperature_K: number): number {
  return (positive('pressure_Pa', pressure_Pa) * positive('volume_m3', volume_m3)) / (NITROGEN_R_J_kgK * positive('temperature_K', temperature_K));
}

export const expectedPressureBasis: Basis = { formula: 'p(ρ₀, T),  ρ₀ = ρ(p₀, T₀): the same gas in the same volume', source: nitrogenBasis.source, caution: 'The gas itself must be at that temperature: a cylinder takes hours to follow its room. The chart of the manual governs.' };
/**
 * Pressure of a full cylinder at another temperature: what its gauge should show there, and what its pipe must bear when hot.
 *
 * @param fillPressure_Pa     p₀, at the filling temperature, absolute [Pa], 1 to 1e8
 * @param fillTemperature_K   T₀ [K], 126.2 to 1000
 * @param temperature_K       T, now [K], 126.2 to 1000
 * @returns pressure, absolute [Pa]
 * @throws {RangeError} argument not finite or out of range
 * @example expectedPressure_Pa(200e5, 288.15, 323.15) // 23_456_977
 */
export function expectedPressure_Pa(fillPressure_Pa: number, fillTemperature_K: number, temperature_K: number): number {
  return nitrogenState(nitrogenDensity_kg_m3(fillPressure_Pa, fillTemperature_K), temperature_K).pressure_Pa;
}

export const pressureAfterLossBasis: Basis = {
  formula: 'p((1 − x)·ρ₀, T): x is the share of the mass that is gone',
  source: expectedPressureBasis.source,
  caution: 'That a container with 5 % less is refilled or replaced is NFPA 2001 and ISO 14520-1, memory; compare with the adopted edition.',
};
/**
 * Pressure of a cylinder that has lost a share of its mass: at or below it the loss is as great.
 *
 * @param fillPressure_Pa     p₀, at the filling temperature, absolute [Pa], 1 to 1e8
 * @param fillTemperature_K   T₀ [K], 126.2 to 1000
 * @param temperature_K       T, now [K], 126.2 to 1000
 * @param lossShare           x, share of the mass lost [-], 0 to 0.99
 * @returns pressure, absolute [Pa]
 * @throws {RangeError} argument not finite or out of range
 * @example pressureAfterLoss_Pa(200e5, 288.15, 288.15, 0.05) // 18_851_590
 */
export function pressureAfterLoss_Pa(fillPressure_Pa: number, fillTemperature_K: number, temperature_K: number, lossShare: number): number {
  const left = 1 - within('lossShare', lossShare, 0, 0.99);
  return nitrogenState(nitrogenDensity_kg_m3(fillPressure_Pa, fillTemperature_K) * left, temperature_K).pressure_Pa;
}

export const pressureShortBasis: Basis = {
  formula: '(1 − x)·p(ρ₀, T): x is the share of the pressure that is gone, corrected for temperature',
  source: pressureAfterLossBasis.source,
  caution: 'At 200 bar a loss of 5 % of the pressure is a loss of 4.3 % of the mass, so it warns earlier than a loss of 5 % of the mass.',
};
/**
 * Pressure of a cylinder that has lost a share of its pressure, temperature taken into account.
 *
 * @param fillPressure_Pa     p₀, at the filling temperature, absolute [Pa], 1 to 1e8
 * @param fillTemperature_K   T₀ [K], 126.2 to 1000
 * @param temperature_K       T, now [K], 126.2 to 1000
 * @param lossShare           x, share of the expected pressure lost [-], 0 to 0.99
 * @returns pressure, absolute [Pa]
 * @throws {RangeError} argument not finite or out of range
 * @example pressureShort_Pa(200e5, 288.15, 288.15, 0.05) // 19_000_000
 */
export function pressureShort_Pa(fillPressure_Pa: number, fillTemperature_K: number, temperature_K: number, lossShare: number): number {
  return (1 - within('lossShare', lossShare, 0, 0.99)) * expectedPressure_Pa(fillPressure_Pa, fillTemperature_K, temperature_K);
}

/** One temperature of the pressure–temperature chart of a fill. */
export interface PressureRow {
  readonly temperature_K: number;
  readonly expected_Pa: number;
  /** A share of the mass is gone. */
  readonly afterLoss_Pa: number;
  /** A share of the pressure is gone. */
  readonly short_Pa: number;
}

export const pressureChartBasis: Basis = expectedPressureBasis;
/**
 * Pressure–temperature chart of a fill.
 *
 * @param fillPressure_Pa     p₀, at the filling temperature, absolute [Pa], 1 to 1e8
 * @param fillTemperature_K   T₀ [K], 126.2 to 1000
 * @param temperatures_K      the temperatures of the rows [K], each 126.2 to 1000
 * @param lossShare           x, the loss that is supervised [-], 0 to 0.99
 * @returns a row of pressures for each temperature [Pa]
 * @throws {RangeError} argument not finite or out of range
 */
export function pressureChart(fillPressure_Pa: number, fillTemperature_K: number, temperatures_K: readonly number[], lossShare: number): PressureRow[] {
  return temperatures_K.map((temperature_K) => ({
    temperature_K,
    expected_Pa: expectedPressure_Pa(fillPressure_Pa, fillTemperature_K, temperature_K),
    afterLoss_Pa: pressureAfterLoss_Pa(fillPressure_Pa, fillTemperature_K, temperature_K, lossShare),
    short_Pa: pressureShort_Pa(fillPressure_Pa, fillTemperature_K, temperature_K, lossShare),
  }));
}
