import { nitrogenViscosity_Pas } from '../formulas/gas-transport.ts';
import { NITROGEN_R_J_kgK } from '../formulas/nitrogen-coefficients.ts';
import { NITROGEN_GREATEST_K, NITROGEN_LEAST_K, nitrogenDensity_kg_m3 } from '../formulas/nitrogen.ts';
import { NITROGEN_HEAT_RATIO, chokedFlowFunction, realChokedFlux_kg_m2s } from '../formulas/orifice.ts';
import { type PressureCurve, lazyTable } from './lazy-table.ts';

/** The gas in the pipe, all of it as warm as behind the regulator. */
export interface PipeGas {
  readonly temperature_K: number;
  /** Of the thin gas: friction in rough pipe hardly asks for more. */
  readonly viscosity_Pas: number;
  readonly compressibility: PressureCurve;
  /** Choked flux of the real gas over that of the ideal gas. */
  readonly fluxRatio: PressureCurve;
}

/** The viscosity is known no colder than this; the ideal gas may be. */
const viscosityOf = (temperature_K: number): number => nitrogenViscosity_Pas(Math.min(NITROGEN_GREATEST_K, Math.max(NITROGEN_LEAST_K, temperature_K)));

const unity: PressureCurve = () => 1;

/** Warmer by this until the throat of the nozzle no longer comes below the range of the equation. */
const WARMER_K = 5;
const WARMEST_K = 400;

function realFluxRatio(pressure_Pa: number, temperature_K: number): number {
  for (let warm_K = temperature_K; warm_K < WARMEST_K; warm_K += WARMER_K) {
    try {
      const ideal = (chokedFlowFunction(NITROGEN_HEAT_RATIO) * pressure_Pa) / Math.sqrt(NITROGEN_R_J_kgK * warm_K);
      return realChokedFlux_kg_m2s(pressure_Pa, warm_K) / ideal;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return 1;
}

const compressibilities = lazyTable((pressure_Pa, temperature_K) => pressure_Pa / (nitrogenDensity_kg_m3(pressure_Pa, temperature_K) * NITROGEN_R_J_kgK * temperature_K), {
  pressureStep_Pa: 5e5,
  temperatureStep_K: 5,
  leastTemperature_K: NITROGEN_LEAST_K,
});
const fluxRatios = lazyTable(realFluxRatio, { pressureStep_Pa: 2e6, temperatureStep_K: 15, leastTemperature_K: NITROGEN_LEAST_K });

/** The gas in the pipe by its temperature; what is costly is tabulated as it is asked for, once for every run. */
export function pipeGasOf(gas: 'real' | 'ideal'): (temperature_K: number) => PipeGas {
  if (gas === 'ideal') return (temperature_K) => ({ temperature_K, viscosity_Pas: viscosityOf(temperature_K), compressibility: unity, fluxRatio: unity });
  return (temperature_K) => ({ temperature_K, viscosity_Pas: viscosityOf(temperature_K), compressibility: compressibilities(temperature_K), fluxRatio: fluxRatios(temperature_K) });
}
