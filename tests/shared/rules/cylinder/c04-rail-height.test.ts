import { describe, expect, test } from 'vitest';
import { c04RailHeight as rule } from '#shared/rules/cylinder/c04-rail-height';
import { check, checkOne, layout } from '../../../support/layout.ts';

function railAt(railHeight_m: number | null, limit_m: number | null = 1.2) {
  const plan = layout({ limits: { railHeight_m: limit_m } });
  const cylinder = plan.networks.net?.cylinders.cy1;
  if (cylinder) cylinder.railHeight_m = railHeight_m;
  return plan;
}

describe('C4', () => {
  test.each([
    ['as the manual says', 1.2, 'ok'],
    ['25 mm high', 1.225, 'ok'],
    ['25 mm low', 1.175, 'ok'],
    ['just inside', 1.2249, 'ok'],
    ['just too high', 1.2251, 'stop'],
    ['just too low', 1.1749, 'stop'],
  ])('%s', (_, railHeight_m, verdict) => {
    expect(checkOne(rule, railAt(railHeight_m))).toMatchObject({ verdict, name: 'C1', measured: railHeight_m, limit: 1.2, margin: expect.closeTo(0.025 - Math.abs(railHeight_m - 1.2), 9) });
  });

  test('says both heights and what is allowed', () => {
    expect(checkOne(rule, railAt(1.3)).text).toBe('Its rail is at 1.300 m; the manual says 1.200 m, within 25 mm. Set it there.');
  });

  test('an unknown rail or a blank limit is not checked', () => {
    expect(checkOne(rule, railAt(null)).text).toBe('Not checked: the height of its rail is not known.');
    expect(checkOne(rule, railAt(1.2, null)).text).toContain('Rail height');
  });

  test('a cylinder on the floor has no rail', () => {
    const plan = railAt(3);
    const cylinder = plan.networks.net?.cylinders.cy1;
    if (cylinder) cylinder.mounting = 'floor';
    expect(check(rule, plan)).toEqual([]);
  });
});
