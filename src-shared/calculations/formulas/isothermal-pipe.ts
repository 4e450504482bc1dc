import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';
import { NITROGEN_R_J_kgK } from './nitrogen-coefficients.ts';
import { nitrogenDensity_kg_m3 } from './nitrogen.ts';

export const PIPE_GASES = ['ideal', 'real'] as const;
export type PipeGas = (typeof PIPE_GASES)[number];

export const pipeResistanceBasis: Basis = {
  formula: 'K = f·L/D + ΣK,  f Darcy friction factor',
  source: 'TP-410, Flow of Fluids; f here is four times that of Fanning',
};
/**
 * What a pipe with its fittings resists, as one loss coefficient.
 *
 * @param darcyFriction    f [-], ≥ 0
 * @param length_m         L, straight and equivalent [m], ≥ 0; 0 leaves the fittings alone
 * @param bore_m           D [m], > 0
 * @param lossCoefficient  ΣK of fittings, entrance and exit, for this bore [-], ≥ 0
 * @returns loss coefficient [-]
 * @throws {RangeError} argument not finite or out of range
 * @example pipeResistance(0.0222, 20, 0.0266446, 0) // 16.6638
 */
export function pipeResistance(darcyFriction: number, length_m: number, bore_m: number, lossCoefficient: number): number {
  const friction = (notNegative('darcyFriction', darcyFriction) * notNegative('length_m', length_m)) / positive('bore_m', bore_m);
  return friction + notNegative('lossCoefficient', lossCoefficient);
}

export const nitrogenPressureOverDensityBasis: Basis = {
  formula: 'p/ρ = Z·R·T; Z = 1 for an ideal gas, else from the equation of state at the mean pressure of the pipe, ⅔·(p1³ − p2³)/(p1² − p2²)',
  source: 'mean pressure as gas transmission takes it, common practice; Z by Span et al. (2000)',
};
/**
 * Z·R·T of nitrogen that runs from one pressure to another.
 *
 * @param gas            ideal or real [-]
 * @param temperature_K  T [K], > 0; 126.2 to 1000 for the real gas
 * @param inlet_Pa       p1, absolute [Pa], > 0; up to 1e8 for the real gas
 * @param outlet_Pa      p2, absolute [Pa], 0 to p1
 * @returns pressure over density [J/kg]
 * @throws {RangeError} argument not finite or out of range
 * @example nitrogenPressureOverDensity_J_kg('ideal', 288.15, 60e5, 50e5) // 85524
 */
export function nitrogenPressureOverDensity_J_kg(gas: PipeGas, temperature_K: number, inlet_Pa: number, outlet_Pa: number): number {
  const p1 = positive('inlet_Pa', inlet_Pa);
  const p2 = within('outlet_Pa', outlet_Pa, 0, p1);
  if (gas === 'ideal') return NITROGEN_R_J_kgK * positive('temperature_K', temperature_K);
  const mean_Pa = ((2 / 3) * (p1 ** 2 + p1 * p2 + p2 ** 2)) / (p1 + p2);
  return mean_Pa / nitrogenDensity_kg_m3(mean_Pa, temperature_K);
}

export const isothermalChokeBasis: Basis = {
  formula: '(p1/p2*)² − 1 = K + ln (p1/p2*)²,  where M2 = 1/√γ',
  source: 'greatest flow of the isothermal pipe equation, derived; as in Shapiro and in Rennels & Hudson',
};
/**
 * Outlet pressure below which no more gas runs through a pipe of constant temperature.
 *
 * @param resistance  K = f·L/D + ΣK [-], ≥ 0
 * @param inlet_Pa    p1, absolute [Pa], > 0
 * @returns pressure, absolute [Pa]
 * @throws {RangeError} argument not finite or out of range
 * @example isothermalChokePressure_Pa(3.7, 1e6) // 389_699.7
 */
export function isothermalChokePressure_Pa(resistance: number, inlet_Pa: number): number {
  const k = notNegative('resistance', resistance);
  // The square of the pressure ratio, from above: the curve bends one way only, so Newton comes down to it.
  let square = 1 + k + 2 * Math.sqrt(k);
  for (let step = 0; step < 60 && square > 1; step += 1) {
    const change = (square - 1 - Math.log(square) - k) / (1 - 1 / square);
    square = Math.max(1, square - change);
    if (Math.abs(change) <= 1e-15 * square) break;
  }
  return positive('inlet_Pa', inlet_Pa) / Math.sqrt(square);
}

export const isothermalFlowBasis: Basis = {
  formula: 'ṁ² = A²·(p1² − p2²)/{Z·R·T·[f·L/D + ΣK + 2·ln(p1/p2)]}; p2 not below p2*',
  source: 'isothermal pipe flow as in Rennels & Hudson, Wilkes and the open library fluids',
  caution: 'p1 is the static pressure in the inlet of the pipe. Gas that cools on its way behaves otherwise near choking; the friction factor must fit the flow.',
};
/**
 * Mass flow through a pipe in which the gas keeps its temperature; the choked flow when the outlet pressure is below choking.
 *
 * @param bore_m                    D [m], > 0
 * @param resistance                K = f·L/D + ΣK [-], ≥ 0
 * @param pressureOverDensity_J_kg  Z·R·T of the gas, p1/ρ1 [J/kg], > 0
 * @param inlet_Pa                  p1, absolute [Pa], > 0
 * @param outlet_Pa                 p2, absolute [Pa], 0 to p1
 * @returns mass flow [kg/s]
 * @throws {RangeError} argument not finite or out of range
 * @example isothermalFlow_kg_s(0.5, 3.7, 1e6 / 11.3, 1e6, 0.9e6) // 145.484757
 */
export function isothermalFlow_kg_s(bore_m: number, resistance: number, pressureOverDensity_J_kg: number, inlet_Pa: number, outlet_Pa: number): number {
  const area_m2 = (Math.PI / 4) * positive('bore_m', bore_m) ** 2;
  const energy_J_kg = positive('pressureOverDensity_J_kg', pressureOverDensity_J_kg);
  const choke_Pa = isothermalChokePressure_Pa(resistance, inlet_Pa);
  const outlet = within('outlet_Pa', outlet_Pa, 0, inlet_Pa);
  if (outlet === inlet_Pa) return 0;
  // Choked: the gas leaves at its isothermal speed of sound. Also where nothing resists and the other form would be 0/0.
  if (outlet <= choke_Pa) return (area_m2 * choke_Pa) / Math.sqrt(energy_J_kg);
  return area_m2 * Math.sqrt((inlet_Pa ** 2 - outlet ** 2) / (energy_J_kg * (resistance + 2 * Math.log(inlet_Pa / outlet))));
}
