import { describe, expect, test } from 'vitest';
import type { Plan } from '#shared/model/plan';
import { d02ScaleAndText as rule } from '#shared/rules/document/d02-scale-and-text';
import { checkOne, layout } from '../../../support/layout.ts';

const printed = (sheets: Pick<Plan['settings']['sheets'], 'paper' | 'scale'>, basis: Partial<Plan['basis']> = {}): Plan => {
  const plan = layout({ lengths: 'feet', basis });
  Object.assign(plan.settings.sheets, sheets);
  return plan;
};

describe('D2', () => {
  test('1/8 in to the foot is the smallest scale that is taken', () => {
    expect(checkOne(rule, printed({ paper: null, scale: 96 }))).toMatchObject({ verdict: 'ok', measured: 96, limit: 96, margin: 0 });
    expect(checkOne(rule, printed({ paper: null, scale: 48 })).verdict).toBe('ok');
    const { verdict, text } = checkOne(rule, printed({ paper: null, scale: 100 }));
    expect(verdict).toBe('warn');
    expect(text).toContain('1:100');
  });

  test('a scale that is left to the program is never too small', () => {
    expect(checkOne(rule, printed({ paper: null, scale: null })).verdict).toBe('ok');
  });

  test('letters are judged on the chosen paper: 2.5 mm on a sheet for the hand', () => {
    expect(checkOne(rule, printed({ paper: 'A3', scale: null }, { leastText_m: 0.0025 })).verdict).toBe('ok');
    const { verdict, text } = checkOne(rule, printed({ paper: 'A3', scale: null }, { leastText_m: 0.0026 }));
    expect(verdict).toBe('warn');
    expect(text).toContain('larger paper');
    expect(checkOne(rule, printed({ paper: 'A1', scale: null }, { leastText_m: 0.0036 })).verdict).toBe('ok');
  });
});
