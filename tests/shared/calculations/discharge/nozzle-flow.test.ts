import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nozzleFlow } from '#shared/calculations/discharge/nozzle-flow';
import { pipeGasOf } from '#shared/calculations/discharge/pipe-gas';
import { idealOrificeFlow_kg_s } from '#shared/calculations/formulas/orifice';

const IDEAL = pipeGasOf('ideal');

test('orifice of 10 mm, C_d 0.85, 60 bar and 20 °C: 0.92982 kg/s (computed from isentropic flow)', () => {
  const { flow_kg_s, isChoked } = nozzleFlow(0.85 * Math.PI * 0.005 ** 2, IDEAL(293.15), 60e5, 101_325);
  expect(flow_kg_s).toBeCloseTo(0.92982, 5);
  expect(isChoked).toBe(true);
});

test('an ideal gas flows as the orifice formula says, choked or not, and the slope is that of the flow', () => {
  fc.assert(
    fc.property(fc.double({ min: 30, max: 1e7, noNaN: true }), fc.double({ min: 150, max: 350, noNaN: true }), (over_Pa, temperature_K) => {
      const pressure_Pa = 101_325 + over_Pa;
      const flow = nozzleFlow(0.8e-4, IDEAL(temperature_K), pressure_Pa, 101_325);
      expect(flow.flow_kg_s / idealOrificeFlow_kg_s(1e-4, 0.8, pressure_Pa, temperature_K, 101_325)).toBeCloseTo(1, 9);
      const aside_Pa = 1e-4 * over_Pa;
      const higher = nozzleFlow(0.8e-4, IDEAL(temperature_K), pressure_Pa + aside_Pa, 101_325).flow_kg_s;
      const lower = nozzleFlow(0.8e-4, IDEAL(temperature_K), pressure_Pa - aside_Pa, 101_325).flow_kg_s;
      expect((higher - lower) / (2 * aside_Pa) / flow.byPressure).toBeCloseTo(1, 3);
    }),
  );
});

test('near the pressure behind it the flow comes to nothing without a jump, and never turns', () => {
  const flowAt = (over_Pa: number): number => nozzleFlow(1e-4, IDEAL(288.15), 101_325 + over_Pa, 101_325).flow_kg_s;
  expect(flowAt(9.999) / flowAt(10.001)).toBeCloseTo(1, 3);
  expect(flowAt(5) / flowAt(10)).toBeCloseTo(0.5, 6);
  expect(flowAt(0)).toBe(0);
  expect(flowAt(-1000)).toBe(0);
});
