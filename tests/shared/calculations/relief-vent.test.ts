import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reliefVentArea_m2 } from '#shared/calculations/formulas/relief-vent';
import { reliefVentTopic } from '#shared/calculations/relief-vent';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const vent = (massFlow_kg_s: number, allowablePressure_Pa: number): number =>
  numberOf(runTopic(reliefVentTopic, { massFlow_kg_s, allowablePressure_Pa, temperature_C: 20, agent: 'IG-100', dischargeCoefficient: 0.61 }), 'freeArea_m2');

/** What the vents here have in common. */
const PLAIN = { agent: 'IG-100', dischargeCoefficient: 0.61 };

describe('relief vent', () => {
  // Computed by hand from A = ṁ·s/(C_d·√(2Δp/ρ)): 240 m³, IG-100 at 20 °C, C_d 0.61, air of 1.205 kg/m³ leaving.
  test.each([
    ['mean flow, 500 Pa', 2.2494, 500, 0.1099],
    ['mean flow, 250 Pa', 2.2494, 250, 0.1554],
    ['peak flow 2.7 times the mean, 500 Pa', 6.073, 500, 0.2966],
    ['peak flow 2.7 times the mean, 250 Pa', 6.073, 250, 0.4195],
  ])('worked room: %s', (_, massFlow_kg_s, allowable_Pa, expected) => {
    expect(Math.abs(vent(massFlow_kg_s, allowable_Pa) - expected)).toBeLessThanOrEqual(1e-4);
  });

  test('worked room: the agent takes 5.2125 m³/s, 11 045 ft³/min, and the vent 3.193 ft²', () => {
    const result = runTopic(reliefVentTopic, { ...PLAIN, massFlow_kg_s: 6.073, allowablePressure_Pa: 500, temperature_C: 20 });
    expect(numberOf(result, 'volumeFlow_m3_s')).toBeCloseTo(5.2125, 3);
    expect(numberOf(result, 'volumeFlow_m3_s') * 2118.88).toBeCloseTo(11_045, -1);
    expect(numberOf(result, 'freeArea_m2') / 0.09290304).toBeCloseTo(3.193, 2);
  });

  test('Bernoulli: the jet of the vent has the dynamic pressure of what drives it', () => {
    const velocity_m_s = (1 * 0.85828) / reliefVentArea_m2(1, 0.85828, 400, 1, 1.205);
    expect((1.205 * velocity_m_s ** 2) / 2).toBeCloseTo(400, 9);
  });

  test('area goes with the flow and with one over the root of the pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), fc.double({ min: 10, max: 5000, noNaN: true }), (flow, pressure) => {
        expect(vent(2 * flow, pressure) / vent(flow, pressure)).toBeCloseTo(2, 9);
        expect(vent(flow, pressure) / vent(flow, 4 * pressure)).toBeCloseTo(2, 9);
      }),
    );
  });

  // By hand: 0.3 and 0.4 m² in turn are 0.24 m²; 1.205/2·(6.073·0.85828/(0.61·0.24))² = 763.7 Pa.
  test('openings in turn raise the pressure; without any it is not worked out', () => {
    const input = { ...PLAIN, massFlow_kg_s: 6.073, allowablePressure_Pa: 500, temperature_C: 20 };
    const result = runTopic(reliefVentTopic, { ...input, openings_m2: [0.3, 0.4] });
    expect(numberOf(result, 'chainArea_m2')).toBeCloseTo(0.24, 9);
    expect(numberOf(result, 'enclosurePressure_Pa')).toBeCloseTo(763.7, 1);
    const bare = runTopic(reliefVentTopic, input);
    expect([bare.chainArea_m2, bare.enclosurePressure_Pa]).toEqual([null, null]);
    const fits = runTopic(reliefVentTopic, { ...input, openings_m2: [numberOf(bare, 'freeArea_m2')] });
    expect(numberOf(fits, 'enclosurePressure_Pa')).toBeCloseTo(500, 6);
  });

  test('units in any form give the same answer', () => {
    const area = numberOf(runTopic(reliefVentTopic, { ...PLAIN, massFlow_kg_s: 2, allowablePressure_Pa: 478.8025898, temperature_K: 293.15 }), 'freeArea_m2');
    expect(numberOf(runTopic(reliefVentTopic, { ...PLAIN, massFlow_lb_s: 4.40924524, allowablePressure_psf: 10, temperature_F: 68 }), 'freeArea_m2')).toBeCloseTo(area, 8);
    expect(numberOf(runTopic(reliefVentTopic, { ...PLAIN, massFlow_kg_s: 2, allowablePressure_inH2O: 1.92227, temperature_C: 20 }), 'freeArea_m2')).toBeCloseTo(area, 6);
  });
});
