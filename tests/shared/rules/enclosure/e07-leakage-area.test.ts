import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { e07LeakageArea as rule } from '#shared/rules/enclosure/e07-leakage-area';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';
import { holdSums, leakSums } from '../../../support/hold-sums.ts';

const asked = (area_m2: number, allowedLeakage_m2 = 0.015, remarks: readonly string[] = []) =>
  checkEnclosure(rule, servedRoom(), { leaks: worked(leakSums({ area_m2, remarks })), hold: worked(holdSums({ allowedLeakage_m2 })) });

describe('E7', () => {
  test.each([
    ['less', 0.014, 'ok', 0.001],
    ['as much', 0.015, 'ok', 0],
    ['float noise more', 0.015 * (1 + 1e-12), 'ok', 0],
    ['more', 0.0151, 'warn', -0.0001],
  ])('%s leakage than allowed', (_, area_m2, verdict, margin) => {
    const finding = asked(area_m2);
    expect(finding).toMatchObject({ verdict, measure: 'area', limit: 0.015 });
    expect(finding.margin).toBeCloseTo(margin, 12);
  });
  test('a fault says by how much', () => {
    expect(asked(0.0201)).toMatchObject({ text: 'Leaks as 0.0201 m² at 10 Pa would; only 0.0150 m² are allowed.', cure: { kind: 'advice', text: 'Seal 0.00510 m² of leaks, low ones first, and test again.' } });
  });
  test('doubts about the readings are told', () => {
    expect(asked(0.01, 0.015, ['An area that nobody measured is an assumption: a door-fan test decides.']).text).toContain('a door-fan test decides');
  });
  test('where any leak is allowed there is no limit to show', () => {
    expect(asked(0.01, Infinity)).toMatchObject({ verdict: 'ok', measured: 0.01 });
    expect(asked(0.01, Infinity).limit).toBeUndefined();
  });
  test('unknown leaks or hold are not checked', () => {
    expect(checkEnclosure(rule, servedRoom(), { leaks: notWorked('the leakage is not known.'), hold: worked(holdSums()) }).verdict).toBe('not-checked');
    expect(checkEnclosure(rule, servedRoom(), { leaks: worked(leakSums()), hold: notWorked('the lowest place is not known.') }).verdict).toBe('not-checked');
  });
});
