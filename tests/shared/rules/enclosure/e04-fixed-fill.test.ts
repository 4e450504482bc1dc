import { describe, expect, test } from 'vitest';
import type { FillSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { e04FixedFill as rule } from '#shared/rules/enclosure/e04-fixed-fill';
import { checkEnclosure, checkEnclosures, servedRoom } from '../../../support/enclosure-sums.ts';

const fill = (net_m3: number, more: Partial<FillSums> = {}): FillSums => ({ net_m3, cylinders: 2, least_m3: 50, greatest_m3: 60, oxygenLimit_pct: 12, fitting: [2], bands: [], ...more });
const asked = (net_m3: number, more: Partial<FillSums> = {}) => checkEnclosure(rule, servedRoom(), { fill: worked(fill(net_m3, more)) });

describe('E4', () => {
  test.each([
    ['at the least volume', 50, 'ok', 50, 0],
    ['nearer to the least', 51, 'ok', 50, 1],
    ['nearer to the greatest', 59, 'ok', 60, 1],
    ['at the greatest volume', 60, 'ok', 60, 0],
    ['float noise beyond', 60 * (1 + 1e-12), 'ok', 60, 0],
    ['a litre below', 49.999, 'stop', 50, -0.001],
    ['a litre above', 60.001, 'stop', 60, -0.001],
  ])('%s', (_, net_m3, verdict, limit, margin) => {
    const finding = asked(net_m3);
    expect(finding).toMatchObject({ verdict, limit });
    expect(finding.margin).toBeCloseTo(margin, 9);
  });
  test('kept, it names both ends', () => {
    expect(asked(51).text).toBe('2 cylinders suit 50.00 m³ to 60.00 m³; its net volume is 51.00 m³.');
  });
  test('missed, it says which way and which numbers fit', () => {
    expect(asked(48, { fitting: [1] }).text).toBe('Its net volume is 48.00 m³, less than the 50.00 m³ of 2 cylinders: too little oxygen is left when it is hottest. 1 cylinder fits.');
    expect(asked(80, { fitting: [3, 4] }).text).toContain('too little agent when it is coldest. 3 or 4 cylinders fit.');
    expect(asked(80, { fitting: [] }).text).toContain('No number of cylinders fits.');
  });
  test('a band without any volume misses both ends', () => {
    expect(asked(55, { least_m3: 60, greatest_m3: 50, fitting: [] })).toMatchObject({ verdict: 'stop', text: expect.stringContaining('Both limits are missed. No number of cylinders fits.') });
  });
  test('a share of whole cylinders is printed as such', () => {
    expect(asked(55, { cylinders: 2.4 }).text).toContain('2.4 cylinders suit');
  });
  test('a band that is not known is not checked; where nobody can be inside it is not asked', () => {
    expect(checkEnclosure(rule, servedRoom(), { fill: notWorked('no nozzle serves the enclosure.') }).verdict).toBe('not-checked');
    expect(checkEnclosures(rule, servedRoom({ enclosure: { people: { exposure: 'none', egress_s: null, delay_s: null } } }), {})).toEqual([]);
  });
});
