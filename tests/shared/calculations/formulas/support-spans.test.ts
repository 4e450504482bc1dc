import { describe, expect, test } from 'vitest';
import { SUPPORT_TABLES, TURN_SUPPORT_m, nozzleSupport_m, supportSpan_m } from '#shared/calculations/formulas/support-spans';
import { PIPE_SIZES } from '#shared/profile/pipe-table';

describe('support spans', () => {
  // Feet in ASME B31.1 Table 121.5 (gas or air) and MSS SP-69 (steam or vapour, as an adapted table prints it); metres in ISO 14520-1, memory.
  test.each([
    ['b31.1', '1', 9],
    ['b31.1', '2', 13],
    ['b31.1', '3', 15],
    ['b31.1', '4', 17],
    ['mss-sp-69', '1/2', 8],
    ['mss-sp-69', '3/4', 9],
    ['mss-sp-69', '1', 9],
    ['mss-sp-69', '1-1/2', 12],
    ['mss-sp-69', '2', 13],
    ['mss-sp-69', '2-1/2', 14],
    ['mss-sp-69', '3', 15],
    ['mss-sp-69', '4', 17],
  ] as const)('%s: NPS %s %d ft', (table, size, span_ft) => {
    expect(supportSpan_m(table, size)).toBeCloseTo(span_ft * 0.3048, 12);
  });

  test.each([
    ['1/2', 1.5],
    ['3/4', 1.8],
    ['1', 2.1],
    ['1-1/4', 2.4],
    ['1-1/2', 2.7],
    ['2', 3.4],
    ['2-1/2', 3.5],
    ['3', 3.7],
    ['4', 4.3],
  ] as const)('ISO 14520-1 (memory): NPS %s %d m', (size, span_m) => {
    expect(supportSpan_m('iso-14520', size)).toBe(span_m);
  });

  // ASME B31.1 Table 121.5 as printed in metres.
  test.each([
    ['1', 2.7],
    ['2', 4],
    ['3', 4.6],
    ['4', 5.2],
  ] as const)('ASME B31.1 in metres: NPS %s %d m', (size, span_m) => {
    expect(supportSpan_m('b31.1', size)).toBeCloseTo(span_m, 1);
  });

  test.each([
    ['b31.1', '1-1/4', 9],
    ['b31.1', '1-1/2', 9],
    ['b31.1', '2-1/2', 13],
    ['mss-sp-69', '1-1/4', 9],
  ] as const)('a size left out takes the next smaller one: %s NPS %s %d ft', (table, size, span_ft) => {
    expect(supportSpan_m(table, size)).toBeCloseTo(span_ft * 0.3048, 12);
  });

  test.each([
    ['b31.1', '3/4'],
    ['b31.1', '1/2'],
    ['mss-sp-69', '3/8'],
    ['iso-14520', '1/4'],
  ] as const)('%s gives none for NPS %s', (table, size) => {
    expect(supportSpan_m(table, size)).toBeUndefined();
  });

  test('a larger pipe never needs supports closer together', () => {
    for (const table of SUPPORT_TABLES) {
      const spans = PIPE_SIZES.flatMap((size) => supportSpan_m(table, size) ?? []);
      expect(spans).toEqual([...spans].sort((a, b) => a - b));
    }
  });
});

describe('supports at nozzles and turns', () => {
  // ISO 14520-1:2000 as a trade-press series reports it; 12 in common practice.
  test.each([
    ['iso', '1/4', 0.1],
    ['iso', '1', 0.1],
    ['iso', '1-1/4', 0.25],
    ['iso', '4', 0.25],
    ['us', '1/2', 0.3048],
    ['us', '3', 0.3048],
  ] as const)('%s: NPS %s within %d m of the nozzle', (rule, size, expected) => {
    expect(nozzleSupport_m(rule, size)).toBeCloseTo(expected, 12);
  });

  test('common practice: a turn is held within 1 ft', () => {
    expect(TURN_SUPPORT_m).toBeCloseTo(0.3048, 12);
  });
});
