import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orificeTopic } from '#shared/calculations/orifice';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const NOZZLE = { diameter_mm: 10, dischargeCoefficient: 0.85, pressure_bar: 60, temperature_C: 20, backPressure_atm: 1 };

describe('orifice', () => {
  test('computed by hand: 10 mm, C_d 0.85, 60 bar, 20 °C passes 0.92982 kg/s, choked', () => {
    const result = runTopic(orificeTopic, NOZZLE);
    expect(numberOf(result, 'massFlow_kg_s')).toBeCloseTo(0.92982, 5);
    expect(result.choked).toBe(true);
    expect(numberOf(result, 'chokePressure_Pa')).toBeCloseTo(0.528282 * 60e5, -1);
  });

  // Isentropic flow with Span et al. 2000, evaluated independently, from 15 °C.
  test.each([
    [10, 1.004],
    [40, 1.0161],
    [60, 1.0239],
    [100, 1.0385],
    [200, 1.0644],
    [300, 1.0726],
  ])('Span et al. 2000: at %d bar the real gas passes %d times as much', (pressure_bar, ratio) => {
    const result = runTopic(orificeTopic, { ...NOZZLE, pressure_bar, temperature_C: 15 });
    expect(numberOf(result, 'realToIdealFlux')).toBeCloseTo(ratio, 4);
    expect(numberOf(result, 'realMassFlow_kg_s') / numberOf(result, 'massFlow_kg_s')).toBeCloseTo(ratio, 4);
  });

  test('unchoked it says so, and at equal pressures nothing flows', () => {
    const { backPressure_atm: _, ...plain } = NOZZLE;
    expect(runTopic(orificeTopic, { ...plain, backPressure_bar: 40 }).choked).toBe(false);
    expect(runTopic(orificeTopic, { ...plain, backPressure_bar: 60 })).toMatchObject({ massFlow_kg_s: 0, realMassFlow_kg_s: 0, realToIdealFlux: null, choked: false });
    expect(() => runTopic(orificeTopic, { ...plain, backPressure_bar: 61 })).toThrow('backPressure_Pa');
  });

  test('gas too cold for the real equation has the ideal flow only, and nothing made up', () => {
    expect(runTopic(orificeTopic, { ...NOZZLE, temperature_C: -140 })).toMatchObject({ choked: true, realMassFlow_kg_s: null, realToIdealFlux: null });
  });

  test('units in any form give the same answer', () => {
    const flow = numberOf(runTopic(orificeTopic, NOZZLE), 'realMassFlow_kg_s');
    const same = { diameter_in: 10 / 25.4, dischargeCoefficient: 0.85, pressure_barg: 60 - 1.01325, temperature_F: 68, backPressure_psig: 0 };
    expect(numberOf(runTopic(orificeTopic, same), 'realMassFlow_kg_s')).toBeCloseTo(flow, 9);
  });

  test('flow grows with the pressure and with the area', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 250, noNaN: true }), fc.double({ min: 1.01, max: 1.1, noNaN: true }), (pressure_bar, factor) => {
        const flow = (changed: object): number => numberOf(runTopic(orificeTopic, { ...NOZZLE, pressure_bar, ...changed }), 'realMassFlow_kg_s');
        expect(flow({ pressure_bar: pressure_bar * factor })).toBeGreaterThan(flow({}));
        expect(flow({ diameter_mm: 20 }) / flow({})).toBeCloseTo(4, 9);
      }),
    );
  });
});
