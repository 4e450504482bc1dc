import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nitrogenDensity_kg_m3, nitrogenState } from '#shared/calculations/formulas/nitrogen';
import { nitrogenAtEntropy, nitrogenExpandedTo } from '#shared/calculations/formulas/nitrogen-isentrope';

describe('nitrogen at constant entropy', () => {
  test('state of an entropy has that entropy, by density and by pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e5, max: 300e5, noNaN: true }), fc.double({ min: 220, max: 330, noNaN: true }), fc.double({ min: 0.4, max: 1.5, noNaN: true }), fc.double({ min: 130, max: 900, noNaN: true }), (pressure_Pa, temperature_K, factor, near_K) => {
        const start = nitrogenState(nitrogenDensity_kg_m3(pressure_Pa, temperature_K), temperature_K);
        const byDensity = nitrogenAtEntropy(start.density_kg_m3 * factor, start.entropy_J_kgK, near_K);
        const byPressure = nitrogenExpandedTo(pressure_Pa * factor, start.entropy_J_kgK, near_K);
        expect(byDensity?.entropy_J_kgK).toBeCloseTo(start.entropy_J_kgK, 4);
        expect(byPressure?.entropy_J_kgK).toBeCloseTo(start.entropy_J_kgK, 4);
        expect((byPressure?.pressure_Pa ?? 0) / (pressure_Pa * factor)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('ideal gas: thin gas of half the density has 2^−0.4 of the temperature', () => {
    const start = nitrogenState(0.001, 300);
    expect((nitrogenAtEntropy(0.0005, start.entropy_J_kgK, 250)?.temperature_K ?? 0) / 300).toBeCloseTo(2 ** -0.4, 3);
  });

  test('there is no state colder or warmer than the equation goes', () => {
    const { entropy_J_kgK } = nitrogenState(100, 200);
    expect(nitrogenAtEntropy(1, entropy_J_kgK, 150)).toBeUndefined();
    expect(nitrogenExpandedTo(1e5, entropy_J_kgK, 300)).toBeUndefined();
    expect(nitrogenAtEntropy(100, nitrogenState(100, 1000).entropy_J_kgK + 1, 500)).toBeUndefined();
    expect(nitrogenAtEntropy(100, nitrogenState(100, 126.2).entropy_J_kgK + 1e-3, 500)?.temperature_K).toBeGreaterThan(126.2);
  });
});
