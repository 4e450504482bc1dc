import { type Gas, type GasState, throttledTemperature_K } from './gas.ts';

/** Gas at node 0: behind the regulator, or as the cylinder gives it. */
export interface Source {
  readonly pressure_Pa: number;
  readonly temperature_K: number;
}

/**
 * What an ideal regulator makes of the gas in the cylinder: its set pressure as long as the cylinder has more, at constant enthalpy; then all that the cylinder has.
 * @param set_Pa    null: no regulator
 * @param before    the source of the moment before, to start from
 * @returns undefined when throttling makes the gas colder than it is known for
 */
export function sourceOf(gas: Gas, cylinder: GasState, set_Pa: number | null, before: Source | undefined): Source | undefined {
  if (set_Pa === null || cylinder.pressure_Pa <= set_Pa) return { pressure_Pa: cylinder.pressure_Pa, temperature_K: cylinder.temperature_K };
  const temperature_K = throttledTemperature_K(gas, cylinder.enthalpy_J_kg, set_Pa, before?.temperature_K ?? cylinder.temperature_K);
  return temperature_K === undefined ? undefined : { pressure_Pa: set_Pa, temperature_K };
}
