import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { conduitFillTopic } from '#shared/calculations/conduit-fill';
import { allowedFill, conductorArea_m2, conduitArea_m2 } from '#shared/calculations/formulas/conduit-fill';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const SQUARE_INCH_m2 = 0.00064516;
const fill = (count: number, conduit = 'EMT', tradeSize = '1/2', type = 'THHN', wireGauge: string | number = '14') =>
  runTopic(conduitFillTopic, { conduit, tradeSize, conductors: [{ type, wireGauge, count }] });

describe('conduit fill', () => {
  // NEC Chapter 9 Table 4: area [mm²], then [in²] at 40, 31 and 53 %.
  test.each([
    ['FMC', '3/8', 74.8, 0.046, 0.036, 0.061],
    ['FMC', '1/2', 204.5, 0.127, 0.098, 0.168],
    ['EMT', '1/2', 196.1, 0.122, 0.094, 0.161],
    ['EMT', '3/4', 343.9, 0.213, 0.165, 0.283],
  ] as const)('NEC Table 4: %s %s', (conduit, size, area_mm2, many, two, single) => {
    const area_m2 = conduitArea_m2(conduit, size);
    expect(area_m2 * 1e6).toBeGreaterThan(area_mm2 * 0.9985);
    expect(area_m2 * 1e6).toBeLessThan(area_mm2 * 1.0015);
    for (const [count, expected] of [
      [3, many],
      [2, two],
      [1, single],
    ] as const)
      expect(Math.abs(numberOf(fill(count, conduit, size), 'allowed_m2') / SQUARE_INCH_m2 - expected)).toBeLessThanOrEqual(0.001);
  });

  // NEC Chapter 9 Table 5 [in²]; TFFN from memory.
  test.each([
    ['THHN', '14', 0.0097],
    ['THHN', '12', 0.0133],
    ['THHN', '10', 0.0211],
    ['TFFN', '18', 0.0055],
    ['TFFN', '16', 0.0072],
  ] as const)('NEC Table 5: %s %s AWG', (type, gauge, expected) => {
    expect(conductorArea_m2(type, gauge) / SQUARE_INCH_m2).toBeCloseTo(expected, 8);
  });

  test('NEC Table 1: 53 % for one, 31 % for two, 40 % for more', () => {
    expect([allowedFill(1), allowedFill(2), allowedFill(3), allowedFill(50)]).toEqual([0.53, 0.31, 0.4, 0.4]);
  });

  // NEC Annex C: conductors of one size allowed in EMT (memory).
  test.each([
    ['1/2', '14', 12],
    ['1/2', '12', 9],
    ['1/2', '10', 5],
    ['3/4', '12', 16],
    ['3/4', '10', 10],
  ])('NEC Annex C (memory): EMT %s takes THHN %s AWG to the number of %d', (size, gauge, most) => {
    expect(fill(most, 'EMT', size, 'THHN', gauge).fits).toBe(true);
    expect(fill(most + 1, 'EMT', size, 'THHN', gauge).fits).toBe(false);
  });

  test('groups add up and fill goes with the number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 40 }), fc.integer({ min: 1, max: 10 }), (count, more) => {
        const split = runTopic(conduitFillTopic, {
          conduit: 'EMT',
          tradeSize: '3/4',
          conductors: [
            { type: 'THHN', wireGauge: 14, count },
            { type: 'THHN', wireGauge: 14, count: more },
          ],
        });
        const joined = fill(count + more, 'EMT', '3/4');
        expect(numberOf(split, 'fill_pct')).toBeCloseTo(numberOf(joined, 'fill_pct'), 9);
        expect(numberOf(joined, 'fill_pct')).toBeGreaterThan(numberOf(fill(count, 'EMT', '3/4'), 'fill_pct'));
      }),
    );
  });

  test.each([
    ['a size that the table does not have', () => fill(3, 'EMT', '3/8'), 'tradeSize'],
    ['a gauge that the type does not have', () => fill(3, 'EMT', '1/2', 'THHN', '18'), 'wireGauge'],
    ['half a wire', () => fill(2.5), 'count'],
  ])('%s is refused', (_, run, named) => {
    expect(run).toThrow(named);
  });
});
