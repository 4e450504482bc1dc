import { describe, expect, test } from 'vitest';
import { c09OutletHeight as rule } from '#shared/rules/cylinder/c09-outlet-height';
import { ALONE, type AssemblySpec, assemblyPlan, part } from '../../../support/assembly-layout.ts';
import { at3, checkOne } from '../../../support/layout.ts';

const endAt = (z: number, more: Partial<AssemblySpec> = {}) => checkOne(rule, assemblyPlan({ ...ALONE, cylinders: [{ y: 1, outlet_rad: 0, end: at3(0.2, 0.75, z) }], ...more }));

describe('C9', () => {
  test.each([
    ['on its reach above', 2.25, 'ok'],
    ['just within', 2.2499, 'ok'],
    ['just beyond', 2.2501, 'stop'],
    ['on its reach below', 0.75, 'ok'],
    ['just beyond below', 0.7499, 'stop'],
    ['level with the outlet', 1.5, 'ok'],
  ])('a hose end %s', (_, z, verdict) => {
    expect(endAt(z)).toMatchObject({ verdict, measured: expect.closeTo(Math.abs(z - 1.5), 9), limit: 0.75, margin: expect.closeTo(0.75 - Math.abs(z - 1.5), 9) });
  });

  test('says which way to go', () => {
    expect(endAt(2.4).text).toBe('Its hose ends 900 mm above the outlet, and reaches only 750 mm. Move the end of the hose down, with the parts behind it.');
    expect(endAt(0.5).text).toContain('Move the end of the hose up');
  });

  test('not checked while a figure, the end or the hose is missing', () => {
    expect(endAt(2, { limits: { outletHeight_m: null } }).text).toContain('Valve outlet height');
    expect(endAt(2, { limits: { hoseReach_m: null } }).text).toContain('Reach of the discharge hose');
    expect(endAt(2, { cylinders: [{ y: 1, outlet_rad: 0, end: null }] }).text).toBe('Not checked: where its hose ends is not known.');
    expect(endAt(2, { parts: [part('check-valve')] }).verdict).toBe('not-checked');
  });
});
