import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isothermalPipeTopic } from '#shared/calculations/isothermal-pipe';
import { PIPE_SCHEDULES, PIPE_SIZES } from '#shared/profile/pipe-table';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const PIPE = { nominalSize: '1', schedule: '40', length_m: 20, darcyFriction: 0.0222, temperature_K: 288.15, inletPressure_bar: 60, gas: 'ideal' };
const flowOf = (json: Readonly<Record<string, unknown>>): number => numberOf(runTopic(isothermalPipeTopic, { ...PIPE, ...json }), 'massFlow_kg_s');

describe('isothermal pipe', () => {
  test.each([
    [50, 1.5324, false],
    [40, 2.0397, false],
    [20, 2.4835, false],
    [15, 2.5124, false],
    [13, 2.51477, true],
    [1, 2.51477, true],
  ])('computed independently: from 60 bar to %d bar', (outletPressure_bar, flow_kg_s, choked) => {
    const result = runTopic(isothermalPipeTopic, { ...PIPE, outletPressure_bar });
    expect(Math.abs(numberOf(result, 'massFlow_kg_s') - flow_kg_s)).toBeLessThan(6e-5);
    expect(Math.abs(numberOf(result, 'chokePressure_Pa') - 13.19e5)).toBeLessThan(60);
    expect([result.choked, result.compressibility]).toEqual([choked, 1]);
  });

  // Span et al. (2000): Z of nitrogen at 288.15 K is 0.9919 at 50 bar and hardly less at the mean pressure of 55.2 bar.
  test('the real gas is denser where Z is below 1', () => {
    const real = runTopic(isothermalPipeTopic, { ...PIPE, outletPressure_bar: 50, gas: 'real' });
    expect(numberOf(real, 'massFlow_kg_s') / flowOf({ outletPressure_bar: 50 })).toBeCloseTo(1 / Math.sqrt(numberOf(real, 'compressibility')), 9);
    expect(numberOf(real, 'compressibility')).toBeCloseTo(0.9919, 3);
  });

  test('a choked real gas does not feel what is behind the pipe', () => {
    const at = (outletPressure_bar: number) => runTopic(isothermalPipeTopic, { ...PIPE, outletPressure_bar, gas: 'real' });
    expect(at(1)).toEqual(at(13));
    expect(at(1).choked).toBe(true);
  });

  test('no pressure difference, no flow, not choked', () => {
    expect(runTopic(isothermalPipeTopic, { ...PIPE, outletPressure_bar: 60 })).toMatchObject({ massFlow_kg_s: 0, choked: false });
    expect(runTopic(isothermalPipeTopic, { ...PIPE, length_m: 0, outletPressure_bar: 60 })).toMatchObject({ massFlow_kg_s: 0, choked: false });
  });

  test('a pipe of no length is its fittings alone', () => {
    const fittings = runTopic(isothermalPipeTopic, { ...PIPE, length_m: 0, lossCoefficient: 16.6638, outletPressure_bar: 40 });
    expect(numberOf(fittings, 'massFlow_kg_s')).toBeCloseTo(2.0397, 4);
  });

  test('flow falls with length and rises with pressure and bore', () => {
    const sizes = fc.integer({ min: 1, max: PIPE_SIZES.length - 1 });
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 500, noNaN: true }), fc.double({ min: 2, max: 100, noNaN: true }), sizes, fc.constantFrom(...PIPE_SCHEDULES), (length_m, inletPressure_bar, size, schedule) => {
        const json = { length_m, inletPressure_bar, outletPressure_bar: 1, nominalSize: PIPE_SIZES[size], schedule };
        expect(flowOf({ ...json, length_m: length_m * 1.1 })).toBeLessThan(flowOf(json));
        expect(flowOf({ ...json, inletPressure_bar: inletPressure_bar * 1.1 })).toBeGreaterThan(flowOf(json));
        expect(flowOf({ ...json, nominalSize: PIPE_SIZES[size - 1] })).toBeLessThan(flowOf(json));
        expect(flowOf({ ...json, gas: 'real', length_m: length_m * 1.1 })).toBeLessThan(flowOf({ ...json, gas: 'real' }));
      }),
    );
  });

  test('units in any form give the same answer', () => {
    const metric = flowOf({ outletPressure_bar: 20 });
    const { length_m: _l, temperature_K: _t, inletPressure_bar: _p, ...rest } = PIPE;
    const flow = (json: Readonly<Record<string, unknown>>): number => numberOf(runTopic(isothermalPipeTopic, { ...rest, ...json }), 'massFlow_kg_s');
    expect(flow({ length_ft: 20 / 0.3048, temperature_C: 15, inletPressure_psi: 6e6 / 6894.757293168, outletPressure_kPa: 2000 })).toBeCloseTo(metric, 9);
    expect(flow({ length_mm: 20_000, temperature_F: 59, inletPressure_barg: 58.98675, outletPressure_barg: 18.98675 })).toBeCloseTo(metric, 9);
  });

  test.each([
    [{ outletPressure_bar: 61 }, 'outletPressure'],
    [{ outletPressure_bar: 1, nominalSize: '5' }, 'nominalSize'],
    [{ outletPressure_bar: 1, length_m: -1 }, 'length_m'],
    [{}, 'outletPressure is missing'],
  ])('%j is refused by name', (json, name) => {
    expect(() => runTopic(isothermalPipeTopic, { ...PIPE, ...json })).toThrow(name);
  });
});
