import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nitrogenTopic } from '#shared/calculations/nitrogen';
import { numberOf, runTopic } from '../../support/run-topic.ts';

describe('nitrogen', () => {
  // Span et al. 2000, evaluated independently; enthalpy of the thin gas from 8670 J/mol at 298.15 K and 29.1 J/(mol·K).
  test('Span et al. 2000: 200 bar, 15 °C', () => {
    const result = runTopic(nitrogenTopic, { pressure_bar: 200, temperature_C: 15 });
    expect(numberOf(result, 'density_kg_m3')).toBeCloseTo(223.187, 3);
    expect(numberOf(result, 'compressibility')).toBeCloseTo(1.04779, 5);
    expect(numberOf(result, 'cp_J_kgK')).toBeCloseTo(1330.4, 1);
    expect(numberOf(result, 'cv_J_kgK')).toBeCloseTo(784.3, 1);
    expect(numberOf(result, 'soundSpeed_m_s')).toBeCloseTo(420.55, 2);
    expect(numberOf(result, 'isentropicExponent')).toBeCloseTo(1.9736, 4);
    expect(numberOf(result, 'viscosity_Pas') * 1e6).toBeCloseTo(23.05, 2);
    expect(numberOf(result, 'conductivity_W_mK')).toBeGreaterThan(0.03);
  });

  test('Span et al. 2000: enthalpy and entropy of the thin gas at 298.15 K are 8670 J/mol and, at 1 atm, 191.5 J/(mol·K)', () => {
    const thin = runTopic(nitrogenTopic, { pressure_Pa: 1, temperature_K: 298.15 });
    expect(numberOf(thin, 'enthalpy_J_kg') * 0.02801348).toBeCloseTo(8670, 0);
    expect((numberOf(thin, 'entropy_J_kgK') - 296.804 * Math.log(101_325)) * 0.02801348).toBeCloseTo(191.5, 1);
  });

  test('units in any form give the same answer', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 300, noNaN: true }), fc.double({ min: -40, max: 80, noNaN: true }), (pressure_bar, temperature_C) => {
        const density = numberOf(runTopic(nitrogenTopic, { pressure_bar, temperature_C }), 'density_kg_m3');
        const others = [
          { pressure_Pa: pressure_bar * 1e5, temperature_K: temperature_C + 273.15 },
          { pressure_kPa: pressure_bar * 100, temperature_F: temperature_C * 1.8 + 32 },
          { pressure_barg: pressure_bar - 1.01325, temperature_C },
          { pressure_psi: pressure_bar * 14.503773773, temperature_C },
          { pressure_psig: pressure_bar * 14.503773773 - 14.695948775, temperature_C },
          { pressure_atm: pressure_bar / 1.01325, temperature_C },
        ];
        for (const other of others) expect(numberOf(runTopic(nitrogenTopic, other), 'density_kg_m3') / density).toBeCloseTo(1, 8);
      }),
    );
  });

  test('what lies outside the range of the equation is refused and named', () => {
    expect(() => runTopic(nitrogenTopic, { pressure_bar: 200, temperature_C: -150 })).toThrow('temperature_C is -150, but must be from -146.95');
    expect(() => runTopic(nitrogenTopic, { pressure_bar: 1001, temperature_C: 15 })).toThrow('pressure_bar');
    expect(() => runTopic(nitrogenTopic, { pressure_bar: 200 })).toThrow('temperature is missing');
  });
});
