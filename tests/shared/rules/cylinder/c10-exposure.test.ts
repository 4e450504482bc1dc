import { describe, expect, test } from 'vitest';
import { EXPOSED_TO } from '#shared/model/schema';
import { c10Exposure as rule } from '#shared/rules/cylinder/c10-exposure';
import type { Cylinder } from '#shared/model/plan';
import { checkOne, layout } from '../../../support/layout.ts';

function exposed(exposedTo: Cylinder['exposedTo']) {
  const plan = layout({});
  const cylinder = plan.networks.net?.cylinders.cy1;
  if (cylinder) cylinder.exposedTo = exposedTo;
  return checkOne(rule, plan);
}

describe('C10', () => {
  test.each(EXPOSED_TO.map((each) => [each] as const))('%s alone is a warning that names it', (each) => {
    const { verdict, text } = exposed([each]);
    expect(verdict).toBe('warn');
    expect(text).toContain({ sun: 'direct sun', heat: 'source of heat', water: 'water', vehicles: 'moving vehicles', weather: 'weather' }[each]);
  });

  test('several are all named', () => {
    expect(exposed(['sun', 'water', 'weather']).text).toContain('direct sun, water and weather');
  });

  test('looked and nothing found is kept, not looked is not checked', () => {
    expect(exposed([]).verdict).toBe('ok');
    expect(exposed(null)).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('nobody has looked') });
  });
});
