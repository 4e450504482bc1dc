import type { Basis } from '../topic.ts';
import { positive } from './checked.ts';

const GRAVITY_m_s2 = 9.80665;

export const wallHeatBasis: Basis = {
  formula: 'Nu = 0.13·Ra^(1/3):  h = 0.13·λ·(g·β·|T_w − T|·ρ²·c_p/(λ·η))^(1/3),  β = 2/(T + T_w)',
  source: 'turbulent free convection at a tall wall after McAdams, textbook, memory',
  caution: 'An estimate within about a third: the jet that leaves stirs the gas, and β is that of an ideal gas. Real cylinders lie between adiabatic and isothermal, so look at both.',
};
/**
 * Heat that passes from the steel of a cylinder to the gas in it, per area and degree, by turbulent free convection.
 *
 * @param density_kg_m3        ρ, of the gas [kg/m³], > 0
 * @param temperature_K        T, of the gas [K], > 0
 * @param wallTemperature_K    T_w, of the steel [K], > 0
 * @param cp_J_kgK             c_p, of the gas [J/(kg·K)], > 0
 * @param viscosity_Pas        η, of the gas [Pa·s], > 0
 * @param conductivity_W_mK    λ, of the gas [W/(m·K)], > 0
 * @returns coefficient of heat transfer [W/(m²·K)], 0 when gas and steel are equally warm
 * @throws {RangeError} argument not finite or out of range
 * @example wallHeat_W_m2K(100, 250, 280, 1250, 1.9e-5, 0.03) // 113.03
 */
export function wallHeat_W_m2K(density_kg_m3: number, temperature_K: number, wallTemperature_K: number, cp_J_kgK: number, viscosity_Pas: number, conductivity_W_mK: number): number {
  const difference_K = Math.abs(positive('wallTemperature_K', wallTemperature_K) - positive('temperature_K', temperature_K));
  const expansion = 2 / (temperature_K + wallTemperature_K);
  const conductivity = positive('conductivity_W_mK', conductivity_W_mK);
  const rise = (GRAVITY_m_s2 * expansion * difference_K * positive('density_kg_m3', density_kg_m3) ** 2 * positive('cp_J_kgK', cp_J_kgK)) / (conductivity * positive('viscosity_Pas', viscosity_Pas));
  return 0.13 * conductivity * Math.cbrt(rise);
}
