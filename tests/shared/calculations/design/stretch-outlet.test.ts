import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lastAnswer } from '#shared/calculations/design/last-answer';
import { outletOf_Pa } from '#shared/calculations/design/stretch-outlet';
import type { FlowStretch } from '#shared/calculations/discharge/discharge';
import { type PipeGas, pipeGasOf } from '#shared/calculations/discharge/pipe-gas';
import { meanPressure_Pa, stretchInlet } from '#shared/calculations/discharge/stretch-flow';
import { ATMOSPHERE_Pa } from '#shared/units/convert';

/** By looking at every halving, with nothing kept from one to the next. */
function byHalving_Pa(stretch: FlowStretch, gas: PipeGas, inlet_Pa: number, flow_kg_s: number): number | undefined {
  const inletOf = (end_Pa: number): number => stretchInlet(stretch, gas, end_Pa, flow_kg_s, meanPressure_Pa(inlet_Pa, end_Pa)).inlet_Pa;
  if (inletOf(ATMOSPHERE_Pa) > inlet_Pa) return undefined;
  let [low_Pa, high_Pa] = [ATMOSPHERE_Pa, inlet_Pa];
  for (let step = 0; step < 36; step += 1) {
    const middle_Pa = (low_Pa + high_Pa) / 2;
    if (inletOf(middle_Pa) > inlet_Pa) high_Pa = middle_Pa;
    else low_Pa = middle_Pa;
  }
  return low_Pa;
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const gases = fc.constantFrom('real' as const, 'ideal' as const);

test('the outlet of a stretch is digit for digit what every halving gives', () => {
  let passed = 0;
  fc.assert(
    fc.property(gases, number(130, 320), number(1.1e5, 2.5e7), number(0, 1.2), number(0, 30), number(0.008, 0.06), number(0, 30), (gas, temperature_K, inlet_Pa, flow_kg_s, length_m, bore_m, lossFactor) => {
      const stretch = { from: 0, to: 1, length_m, bore_m, roughness_m: 0.0457e-3, lossFactor };
      const pipeGas = pipeGasOf(gas)(temperature_K);
      const expected = byHalving_Pa(stretch, pipeGas, inlet_Pa, flow_kg_s);
      if (expected !== undefined) passed += 1;
      expect(outletOf_Pa(stretch, pipeGas, inlet_Pa, flow_kg_s)).toBe(expected);
    }),
    { numRuns: 2000 },
  );
  expect(passed).toBeGreaterThan(100);
});

test('the last answer stands for the same figures only', () => {
  let asked = 0;
  const sum = lastAnswer((a: number, b: number | null) => {
    asked += 1;
    return a + (b ?? 0);
  });
  expect([sum(1, 2), sum(1, 2), sum(1, null), sum(2, null), sum(2, null)]).toEqual([3, 3, 1, 2, 2]);
  expect(asked).toBe(3);
});
