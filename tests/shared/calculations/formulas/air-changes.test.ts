import { describe, expect, test } from 'vitest';
import { airChangeTime_s, leftAfterChanges } from '#shared/calculations/formulas/air-changes';

describe('changes of air', () => {
  test('a room of 40 m³ with 0.1 m³/s is changed four times in 1600 s', () => expect(airChangeTime_s(40, 0.1, 4)).toBeCloseTo(1600, 9));
  test('what is left is what a mixed room loses step by step', () => {
    // The same by small steps of dC/dt = −C·Q/V.
    const steps = 100_000;
    let left = 1;
    for (let i = 0; i < steps; i += 1) left -= (left * 4) / steps;
    expect(leftAfterChanges(4)).toBeCloseTo(left, 5);
    expect(leftAfterChanges(0)).toBe(1);
  });
  test.each([[() => airChangeTime_s(0, 1, 1)], [() => airChangeTime_s(1, 0, 1)], [() => airChangeTime_s(1, 1, -1)], [() => leftAfterChanges(Number.NaN)]])('refuses what makes no sense', (call) => expect(call).toThrow(RangeError));
});
