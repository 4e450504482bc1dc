import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';
import { AIR_kg_m3, leakageArea_m2 } from './door-fan.ts';

/** Which way the boundary between gas and air moves. */
export type GasInterface = 'rising' | 'descending';

export const gasInterfaceBasis: Basis = {
  formula: 'ρ_m < ρ_a: rises from the floor; otherwise sinks from the ceiling',
  source: 'buoyancy; nitrogen mixed with air is lighter than air, argon and the blends with it are heavier',
};
/**
 * Which way the boundary between the gas mixture and fresh air moves.
 *
 * @param mixture_kg_m3  ρ_m, of the gas mixture [kg/m³], > 0
 * @returns rising when lighter than air, so the lowest protected point loses its gas first; descending otherwise [-]
 * @throws {RangeError} argument not finite or out of range
 */
export const gasInterface = (mixture_kg_m3: number): GasInterface => (positive('mixture_kg_m3', mixture_kg_m3) < AIR_kg_m3 ? 'rising' : 'descending');

export const gasHeightLeftBasis: Basis = {
  formula: 'rising: H = H0 − z, z lowest protected point; descending: H = z, z highest protected point',
  source: 'geometry: gas is measured from where it gathers, the ceiling when lighter than air, the floor when heavier',
};
/**
 * Height of gas that is still there when the boundary has come to a protected point.
 *
 * @param way                which way the boundary moves [-]
 * @param height_m           H0, of the room [m], > 0
 * @param protectedPoint_m   z, above the floor: the lowest protected point when rising, the highest when descending [m], 0 to H0
 * @returns height [m], 0 to H0
 * @throws {RangeError} argument not finite or out of range
 * @example gasHeightLeft_m('rising', 2.9, 0.3) // 2.6
 */
export function gasHeightLeft_m(way: GasInterface, height_m: number, protectedPoint_m: number): number {
  const point_m = within('protectedPoint_m', protectedPoint_m, 0, positive('height_m', height_m));
  return way === 'rising' ? height_m - point_m : point_m;
}

/** The most that a room may leak to hold its gas for a wanted time. */
export interface AllowedLeakage {
  /** k1, flow of air [m³/s] at 1 Pa. */
  readonly fanCoefficient: number;
  /** Equivalent leakage area at 10 Pa [m²]. */
  readonly leakageArea_m2: number;
}

export const allowedLeakageBasis: Basis = {
  formula: 'k1 = k1_now·t/t_wanted;  A at 10 Pa with the same n',
  source: 'in every hold-time model the time goes with one over k1, all else equal',
  caution: 'Holds while the exponent, the share of leaks below and the ventilation stay as they are.',
};
/**
 * Leakage at which a hold time comes out exactly as wanted, whichever model gave the time.
 *
 * @param fanCoefficient  k1, for which the hold time was worked out [m³/s at 1 Pa], > 0
 * @param fanExponent     n [-], 0.5 to 1
 * @param holdTime_s      t, of the chosen model with that k1 [s], ≥ 0
 * @param wanted_s        how long the gas must hold [s], > 0
 * @returns coefficient and leakage area at 10 Pa, both 0 when no leakage is small enough [m³/s at 1 Pa, m²]
 * @throws {RangeError} argument not finite or out of range
 * @example holdTimeAllowedLeakage(0.0624240, 0.6, 701.6, 600).fanCoefficient // 0.07299
 */
export function holdTimeAllowedLeakage(fanCoefficient: number, fanExponent: number, holdTime_s: number, wanted_s: number): AllowedLeakage {
  const share = notNegative('holdTime_s', holdTime_s) / positive('wanted_s', wanted_s);
  const allowed = positive('fanCoefficient', fanCoefficient) * share;
  return { fanCoefficient: allowed, leakageArea_m2: leakageArea_m2(fanCoefficient, fanExponent, 10) * share };
}
