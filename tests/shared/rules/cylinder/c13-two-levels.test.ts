import { describe, expect, test } from 'vitest';
import { c13TwoLevels as rule } from '#shared/rules/cylinder/c13-two-levels';
import type { Cylinder } from '#shared/model/plan';
import { checkOne, layout } from '../../../support/layout.ts';

function held(change: Partial<Cylinder>) {
  const plan = layout({});
  const cylinder = plan.networks.net?.cylinders.cy1;
  if (cylinder) Object.assign(cylinder, change);
  return checkOne(rule, plan);
}

describe('C13', () => {
  test.each([
    ['a rail alone', 1.2, [], 'stop', 1],
    ['a rail and a strap', 1.2, [0.6], 'ok', 2],
    ['a strap 12 in from the rail', 1.2, [1.2 - 0.3048], 'ok', 2],
    ['a strap just nearer', 1.2, [1.2 - 0.3047], 'stop', 1],
    ['two straps, both near the rail', 1.2, [1.15, 1.25], 'stop', 1],
    ['a rail and two straps', 1.2, [0.3, 1.6], 'ok', 3],
  ])('on a wall: %s', (_, railHeight_m, restraints_m, verdict, measured) => {
    expect(held({ railHeight_m, restraints_m })).toMatchObject({ verdict, measured, limit: 2 });
  });

  test.each([
    ['nothing', [], 'stop'],
    ['one strap', [0.6], 'stop'],
    ['two straps', [0.6, 1.2], 'ok'],
  ])('in a floor frame: %s, whatever the rail height says', (_, restraints_m, verdict) => {
    expect(held({ mounting: 'floor', railHeight_m: 1.2, restraints_m }).verdict).toBe(verdict);
  });

  test('a rail of unknown height is not checked, unless nothing else holds it', () => {
    expect(held({ railHeight_m: null, restraints_m: [0.6] }).verdict).toBe('not-checked');
    expect(held({ railHeight_m: null, restraints_m: [] }).verdict).toBe('stop');
  });

  test('the outlet cap is named, kept or not', () => {
    for (const restraints_m of [[], [0.6]]) expect(held({ railHeight_m: 1.2, restraints_m }).text).toContain('cap stays on until the outlet is piped (hold point H8)');
  });
});
