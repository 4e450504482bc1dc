import { describe, expect, test } from 'vitest';
import { n11HeightTier as rule } from '#shared/rules/nozzle/n11-height-tier';
import { at3, checkOne, layout } from '../../../support/layout.ts';

const high = (height_m: number | null, tierHeight_m: number | null = 3.6) =>
  layout({ height_m, nozzles: [{ at: at3(3, 2, 2.5) }], limits: { tierHeight_m } });

describe('N11', () => {
  test.each([
    ['on the limit', 3.6, 'ok'],
    ['just inside', 3.59, 'ok'],
    ['just too high', 3.61, 'stop'],
  ])('%s', (_, height_m, verdict) => {
    expect(checkOne(rule, high(height_m))).toMatchObject({ verdict, measured: expect.closeTo(height_m, 9) });
  });
  test('unknown height, blank limit or no nozzle are not checked', () => {
    expect(checkOne(rule, high(null)).verdict).toBe('not-checked');
    expect(checkOne(rule, high(3, null)).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({})).verdict).toBe('not-checked');
  });
});
