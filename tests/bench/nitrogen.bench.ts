import { bench, describe } from 'vitest';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';
import { nitrogenDensity_kg_m3, nitrogenState } from '#shared/calculations/formulas/nitrogen';
import { realChokedFlux_kg_m2s } from '#shared/calculations/formulas/orifice';

/** Cylinder and pipe states, never the same twice in a row: one to 300 bar, 200 to 340 K. */
const STATES = Array.from({ length: 1000 }, (_, index) => ({ pressure_Pa: 1e5 + ((index * 7919) % 1000) * 29_900, temperature_K: 200 + ((index * 104_729) % 1000) * 0.14 }));

/** The same equation solved by halving: what needs no slope. */
function densityByHalving(pressure_Pa: number, temperature_K: number): number {
  let least = 0;
  let greatest = 949;
  for (let step = 0; step < 45; step += 1) {
    const middle = (least + greatest) / 2;
    if (nitrogenState(middle, temperature_K).pressure_Pa > pressure_Pa) greatest = middle;
    else least = middle;
  }
  return least;
}

/** Works through every state; the sum keeps the work from being left out. */
function throughAll(of: (pressure_Pa: number, temperature_K: number) => number): () => void {
  return () => {
    let sum = 0;
    for (const { pressure_Pa, temperature_K } of STATES) sum += of(pressure_Pa, temperature_K);
    if (!(sum > 0)) throw new Error('Every state has an answer.');
  };
}

// The budget is 200 000 densities a second: 200 rounds of these.
describe('nitrogen at 1000 pressures and temperatures', () => {
  bench('density, real gas, Newton', throughAll(nitrogenDensity_kg_m3));
  bench('density, real gas, plain halving', throughAll(densityByHalving));
  bench('density, ideal gas', throughAll((pressure_Pa, temperature_K) => pressure_Pa / (NITROGEN_R_J_kgK * temperature_K)));
  bench('all properties from density and temperature', throughAll((pressure_Pa, temperature_K) => nitrogenState(pressure_Pa / 1e5, temperature_K).soundSpeed_m_s));
  bench('choked flux of the real gas', throughAll((pressure_Pa, temperature_K) => realChokedFlux_kg_m2s(pressure_Pa, temperature_K + 60)));
});
