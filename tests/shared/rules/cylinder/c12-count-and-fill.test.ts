import { describe, expect, test } from 'vitest';
import { c12CountAndFill as rule } from '#shared/rules/cylinder/c12-count-and-fill';
import type { LimitKey } from '#shared/profile/limit-catalogue';
import { checkOne, layout } from '../../../support/layout.ts';

// 80 L at 200 bar absolute and 15 °C hold 223.19 kg/m³ · 0.08 m³ = 17.855 kg (reference equation of nitrogen, Span et al. 2000).
const FULL_kg = 17.8553;
const filled = (agentMass_kg: number | null, more: Partial<Record<LimitKey, number | null>> = {}, cylinders = 1) =>
  checkOne(rule, layout({ cylinders, limits: { cylinderVolume_m3: 0.08, fillPressure_Pa: 200e5, agentMass_kg, cylindersPerNetwork: 3, ...more } }));

describe('C12', () => {
  test.each([
    ['the mass of the filling', FULL_kg, 'ok'],
    ['just within 2 % more', FULL_kg * 1.0198, 'ok'],
    ['just within 2 % less', FULL_kg * 0.9802, 'ok'],
    ['just over 2 % more', FULL_kg * 1.0202, 'stop'],
    ['just over 2 % less', FULL_kg * 0.9798, 'stop'],
    ['what an ideal gas would weigh', 18.708, 'stop'],
  ])('%s', (_, agentMass_kg, verdict) => {
    expect(filled(agentMass_kg).verdict).toBe(verdict);
  });

  test('a disagreement is said with both masses', () => {
    expect(filled(18.708)).toMatchObject({ measure: 'ratio', limit: 0.02, measured: expect.closeTo(0.04776, 3) });
    expect(filled(18.708).text).toMatch(/18\.7\d* kg of agent .* make 17\.\d+ kg: 4\.8 % apart, and 2\.0 % is allowed/);
  });

  test.each([
    [2, 'ok'],
    [3, 'ok'],
    [4, 'stop'],
  ])('%d cylinders where 3 are allowed', (cylinders, verdict) => {
    expect(filled(FULL_kg, {}, cylinders)).toMatchObject({ verdict, measured: cylinders, limit: 3 });
  });

  test.each(['cylindersPerNetwork', 'cylinderVolume_m3', 'fillPressure_Pa', 'agentMass_kg'] as const)('blank %s is not checked', (key) => {
    expect(filled(FULL_kg, { [key]: null }).verdict).toBe('not-checked');
  });

  test('a fault of one is reported while the other is blank', () => {
    expect(filled(FULL_kg, { agentMass_kg: null }, 4).verdict).toBe('stop');
    expect(filled(20, { cylindersPerNetwork: null }).verdict).toBe('stop');
  });

  test('no cylinder, or a filling that is none, is not checked', () => {
    expect(filled(FULL_kg, {}, 0).verdict).toBe('not-checked');
    expect(filled(FULL_kg, { fillPressure_Pa: 5e8 }).verdict).toBe('not-checked');
  });
});
