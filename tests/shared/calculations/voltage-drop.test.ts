import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lumpedDrop_V, voltageDrops_V } from '#shared/calculations/formulas/voltage-drop';
import { wireResistance_ohm_m } from '#shared/calculations/formulas/wire';
import { voltageDropTopic } from '#shared/calculations/voltage-drop';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const one = { supplyVoltage_V: 20.4, stranding: 'solid', loads: [{ distance_ft: 150, current_A: 2 }] };

describe('wire', () => {
  // NEC Chapter 9 Table 8, uncoated copper at 75 °C, ohm per km.
  test.each([
    ['18', 25.49, 26.08],
    ['16', 16.04, 16.37],
    ['14', 10.07, 10.3],
    ['12', 6.33, 6.5],
    ['10', 3.97, 4.07],
  ] as const)('NEC Table 8: %s AWG', (gauge, solid, stranded) => {
    expect(Math.abs(wireResistance_ohm_m(gauge, 'solid', 348.15) * 1000 - solid)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(wireResistance_ohm_m(gauge, 'stranded', 348.15) * 1000 - stranded)).toBeLessThanOrEqual(0.01);
  });

  // Computed from the factor 0.00323 of NEC Chapter 9 Table 8, note 2; ohm per 1000 ft.
  test.each([
    [20, 6.39],
    [25, 6.515],
  ])('18 AWG solid at %d °C', (temperature_C, expected) => {
    expect(wireResistance_ohm_m('18', 'solid', temperature_C + 273.15) * 304.8).toBeCloseTo(expected, 2);
  });
});

describe('voltage drop', () => {
  // Computed by hand: 20.4 V, 2.0 A at 150 ft one way, solid.
  test.each([
    ['18', 4.662, 15.738],
    ['16', 2.934, 17.466],
    ['14', 1.842, 18.558],
    ['12', 1.158, 19.242],
  ])('worked: %s AWG', (wireGauge, drop_V, endVoltage_V) => {
    const result = runTopic(voltageDropTopic, { ...one, wireGauge });
    expect(numberOf(result, 'drop_V')).toBeCloseTo(drop_V, 6);
    expect(numberOf(result, 'endVoltage_V')).toBeCloseTo(endVoltage_V, 6);
    expect(numberOf(result, 'lumpedDrop_V')).toBeCloseTo(drop_V, 6);
  });

  test.each([
    ['18', 141.6],
    ['16', 224.9],
    ['14', 358.3],
    ['12', 569.9],
    ['10', 909.1],
  ])('worked: %s AWG reaches 16 V at %d ft', (wireGauge, distance_ft) => {
    const result = runTopic(voltageDropTopic, { ...one, wireGauge, loads: [{ distance_ft, current_A: 2 }] });
    expect(numberOf(result, 'endVoltage_V')).toBeCloseTo(16, 2);
  });

  test('worked: 3 × 0.5 A at 50, 100 and 150 ft of 14 AWG solid', () => {
    const loads = [100, 50, 150].map((distance_ft) => ({ distance_ft, current_A: 0.5 }));
    const result = runTopic(voltageDropTopic, { supplyVoltage_V: 24, wireGauge: 14, stranding: 'solid', loads });
    expect(numberOf(result, 'drop_V')).toBeCloseTo(0.921, 6);
    expect(numberOf(result, 'lumpedDrop_V')).toBeCloseTo(1.3815, 6);
    const volts = result.deviceVoltages_V;
    expect(Array.isArray(volts) ? volts.map((each: number) => 24 - each) : []).toEqual([expect.closeTo(0.7675, 6), expect.closeTo(0.4605, 6), expect.closeTo(0.921, 6)]);
  });

  // Computed by hand: 4.4 V/(2·2.0 A·R).
  test('worked: 14 AWG may run 358.3 ft to 16 V', () => {
    const result = runTopic(voltageDropTopic, { ...one, wireGauge: '14', leastVoltage_V: 16 });
    expect(Math.abs(numberOf(result, 'longestRun_m') / 0.3048 - 358.3)).toBeLessThanOrEqual(0.05);
    expect(runTopic(voltageDropTopic, { ...one, wireGauge: '14' }).longestRun_m).toBeNull();
    expect(runTopic(voltageDropTopic, { ...one, wireGauge: '14', leastVoltage_V: 16, loads: [{ distance_ft: 150, current_A: 0 }] }).longestRun_m).toBeNull();
    expect(runTopic(voltageDropTopic, { ...one, wireGauge: '14', leastVoltage_V: 22 }).longestRun_m).toBe(0);
  });

  test('each load drops alone what all drop together, and lumped is an upper bound', () => {
    const load = fc.record({ distance_m: fc.double({ min: 0, max: 500, noNaN: true }), current_A: fc.double({ min: 0, max: 3, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(load, { minLength: 1, maxLength: 8 }), (loads) => {
        const drops = voltageDrops_V(loads, 0.01);
        const end_V = Math.max(...drops);
        const summed_V = loads.reduce((sum, { distance_m, current_A }) => sum + 2 * 0.01 * distance_m * current_A, 0);
        expect(end_V).toBeCloseTo(summed_V, 6);
        expect(end_V).toBeLessThanOrEqual(lumpedDrop_V(loads, 0.01) + 1e-9);
      }),
    );
  });

  test('units in any form give the same answer', () => {
    const at = (load: Readonly<Record<string, number>>): number => numberOf(runTopic(voltageDropTopic, { supplyVoltage_V: 24, wireGauge: '16', stranding: 'stranded', loads: [load] }), 'drop_V');
    expect(at({ distance_m: 30.48, current_mA: 1500 })).toBeCloseTo(at({ distance_ft: 100, current_A: 1.5 }), 9);
  });

  test('a bad load is named by its place', () => {
    expect(() => runTopic(voltageDropTopic, { ...one, wireGauge: '14', loads: [{ distance_m: 1, current_A: 1 }, { distance_m: -1, current_A: 1 }] })).toThrow('loads[1].distance_m');
    expect(() => voltageDrops_V([{ distance_m: 1, current_A: Number.NaN }], 1)).toThrow('current_A');
  });
});
