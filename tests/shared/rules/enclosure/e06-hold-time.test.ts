import { describe, expect, test } from 'vitest';
import type { HoldSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { e06HoldTime as rule } from '#shared/rules/enclosure/e06-hold-time';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';
import { holdSums } from '../../../support/hold-sums.ts';

const asked = (given: Partial<HoldSums>) => checkEnclosure(rule, servedRoom(), { hold: worked(holdSums(given)) });

describe('E6', () => {
  test.each([
    ['longer', 601, 'ok', 1],
    ['just as long', 600, 'ok', 0],
    ['float noise short', 600 * (1 - 1e-12), 'ok', 0],
    ['shorter', 599.9, 'stop', -0.1],
  ])('%s than required', (_, time_s, verdict, margin) => {
    const finding = asked({ time_s });
    expect(finding).toMatchObject({ verdict, measure: 'time', limit: 600, limitSource: 'basis of design' });
    expect(finding.margin).toBeCloseTo(margin, 8);
  });
  test('the text names concentration, place and times', () => {
    expect(asked({ time_s: 900 }).text).toBe('Keeps 34.0 % agent at the lowest protected place, 900 mm above the floor, for 900.0 s; 600.0 s are required.');
    expect(asked({ time_s: 300 })).toMatchObject({ text: expect.stringContaining('for only 300.0 s'), cure: { kind: 'advice', text: 'Seal leaks until at most 0.0150 m² are left at 10 Pa, low ones first.' } });
  });
  test('a place in an under-floor void is below the floor', () => {
    expect(asked({ lowestProtected_m: -0.2 }).text).toContain('200 mm below the floor');
  });
  test('a hold without end is kept and shows no figure', () => {
    const finding = asked({ time_s: Infinity });
    expect(finding).toMatchObject({ verdict: 'ok', text: expect.stringContaining('for longer than a day') });
    expect(finding.measured).toBeUndefined();
  });
  test('the height is shown in the section', () => {
    expect(asked({ time_s: 300 }).place?.heights).toEqual([{ x: 0, y: 0, z: 0.9 }]);
  });
  test('unknown leaks are not checked', () => {
    expect(checkEnclosure(rule, servedRoom(), { hold: notWorked('the leakage of the enclosure is not known: enter a door-fan test or an area.') }).verdict).toBe('not-checked');
  });
});
