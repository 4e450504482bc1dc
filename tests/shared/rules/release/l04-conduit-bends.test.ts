import { describe, expect, test } from 'vitest';
import { l04ConduitBends as rule } from '#shared/rules/release/l04-conduit-bends';
import { degrees_rad } from '#shared/units/convert';
import { check, checkOne, layout } from '../../../support/layout.ts';
import { withRelease } from '../../../support/releasing-circuit.ts';

const bent = (...bends_deg: number[]) => checkOne(rule, withRelease({ pulls: [{ name: 'Panel to hut', bends_rad: bends_deg.map(degrees_rad) }] }));

describe('L4', () => {
  test.each([
    ['at the limit', [90, 90, 90, 90], 'ok'],
    ['inside', [90, 90, 90, 89], 'ok'],
    ['straight', [], 'ok'],
    ['outside', [90, 90, 90, 91], 'warn'],
    ['a small offset too many', [90, 90, 90, 90, 10], 'warn'],
  ])('bends %s', (_, bends_deg, verdict) => {
    expect(bent(...bends_deg).verdict).toBe(verdict);
  });

  test('says how far the conduit turns', () => {
    expect(bent(90, 90, 90, 90, 30)).toMatchObject({ name: 'Network, Panel to hut', text: 'Its bends turn 390° in all; only 360° is allowed. Add a pull box.' });
    expect(bent(90, 90, 90, 90.01).text).toContain('360.01°');
  });

  test('every pull is asked by itself; two of one name are told apart', () => {
    const pull = { name: '', bends_rad: [Math.PI] };
    const findings = check(rule, withRelease({ pulls: [pull, { name: 'Last', bends_rad: [Math.PI, Math.PI, 1] }, pull] }));
    expect(findings.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Network, pull 1', 'ok'],
      ['Network, Last', 'warn'],
      ['Network, pull 3', 'ok'],
    ]);
  });

  test('without pull points it is not checked; without a circuit there is nothing to ask', () => {
    expect(checkOne(rule, withRelease({ pulls: [] }))).toMatchObject({ verdict: 'not-checked', name: 'Network' });
    expect(check(rule, layout({}))).toEqual([]);
  });
});
