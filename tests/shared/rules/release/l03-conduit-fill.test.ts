import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { l03ConduitFill as rule } from '#shared/rules/release/l03-conduit-fill';
import { check, checkOne, layout } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';
import { withRelease } from '../../../support/releasing-circuit.ts';

const INSIDE_m2 = 2e-4;
// NEC Chapter 9 Table 1: 53 % for one conductor, 31 % for two, 40 % for more.
const filled = (share: number, conductors: number, allowed: number) =>
  checkSumsOnce(rule, withRelease({}), { conduit: worked({ area_m2: share * INSIDE_m2, allowed_m2: allowed * INSIDE_m2, conductors }) });

describe('L3', () => {
  test.each([
    ['one at the limit', 0.53, 1, 0.53, 'ok'],
    ['two at the limit', 0.31, 2, 0.31, 'ok'],
    ['three at the limit', 0.4, 3, 0.4, 'ok'],
    ['inside', 0.2, 4, 0.4, 'ok'],
    ['outside', 0.401, 4, 0.4, 'stop'],
    ['two outside where three were not', 0.35, 2, 0.31, 'stop'],
    ['not a number', Number.NaN, 4, 0.4, 'stop'],
  ])('wires, %s', (_, share, conductors, allowed, verdict) => {
    expect(filled(share, conductors, allowed).verdict).toBe(verdict);
  });

  test('says how full it is', () => {
    expect(filled(0.45, 4, 0.4)).toMatchObject({ measured: expect.closeTo(0.45, 12), limit: 0.4, text: '4 wires fill 45.0 % of the conduit; only 40.0 % is allowed. Use a larger one.' });
    expect(filled(0.2, 1, 0.53).text).toContain('One wire fills');
  });

  test('missing data is not checked', () => {
    expect(checkSumsOnce(rule, withRelease({}), { conduit: notWorked('no conduit is chosen.') }).verdict).toBe('not-checked');
    expect(filled(0, 0, 0).verdict).toBe('not-checked');
  });

  test('without a circuit there is nothing to ask; the sums of a plan are asked', () => {
    expect(check(rule, layout({}))).toEqual([]);
    // NEC Chapter 9, Tables 4 and 5: four THHN 14 of 0.0097 in² in 1/2 in EMT of 0.304 in².
    expect(checkOne(rule, withRelease({}))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(0.1277, 3) });
    expect(checkOne(rule, withRelease({ conduit: null })).verdict).toBe('not-checked');
  });
});
