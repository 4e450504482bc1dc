import { describe, expect, test } from 'vitest';
import { effectiveThread_m } from '#shared/calculations/formulas/pipe-threads';
import { pipeWeight_kg_m } from '#shared/calculations/formulas/pipe-weight';

const INCH_m = 0.0254;

describe('weight of pipe', () => {
  // ASME B36.10M, metric columns and inch columns; computed from wall and outside diameter.
  test.each([
    ['1/2', '40', 1.27, 0.85],
    ['3/4', '40', 1.69, 1.13],
    ['3/4', '80', 2.2, 1.48],
    ['1', '40', 2.5, 1.68],
    ['1-1/4', '40', 3.39, 2.27],
    ['2', '80', 7.48, 5.03],
    ['2', '160', 11.11, 7.47],
    ['4', '40', 16.08, 10.8],
    ['4', '160', 33.54, 22.53],
  ] as const)('ASME B36.10M: NPS %s schedule %s is %d kg/m, %d lb/ft', (size, schedule, metric_kg_m, inch_lb_ft) => {
    const weight_kg_m = pipeWeight_kg_m(size, schedule);
    // The metric columns round wall and outside diameter first.
    expect(Math.abs(weight_kg_m / metric_kg_m - 1)).toBeLessThan(0.006);
    expect(Math.abs((weight_kg_m * 0.3048) / 0.45359237 - inch_lb_ft)).toBeLessThan(0.0075);
  });
});

describe('effective thread', () => {
  // ASME B1.20.1, L2 as printed in its table.
  test.each([
    ['1/4', 0.4018],
    ['3/8', 0.4078],
    ['1/2', 0.5337],
    ['3/4', 0.5457],
    ['1', 0.6828],
    ['1-1/4', 0.7068],
    ['1-1/2', 0.7235],
    ['2', 0.7565],
    ['2-1/2', 1.1375],
    ['3', 1.2],
    ['4', 1.3],
  ] as const)('ASME B1.20.1: NPS %s has %d in', (size, expected_in) => {
    expect(effectiveThread_m(size) / INCH_m).toBeCloseTo(expected_in, 4);
  });
});
