import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Release } from '#shared/model/plan';
import { l02ReleaseCurrent as rule } from '#shared/rules/release/l02-release-current';
import { type LayoutSpec, check, checkOne, layout } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';
import { withRelease } from '../../../support/releasing-circuit.ts';

const taking = (total_A: number | undefined, given: Partial<Release> = {}, more: LayoutSpec = {}) =>
  checkSumsOnce(rule, withRelease({ panelCurrent_A: 2, panelPulse_s: 0.5, ...given }, more), {
    release: total_A === undefined ? notWorked('the current of “Horn” is not known.') : worked({ devices: [], resistance_ohm_m: 0.01, drop_V: 1, lumpedDrop_V: 1, end_V: 19, total_A }),
  });

describe('L2', () => {
  test.each([
    ['at the limit', 2, 'ok'],
    ['inside', 1.9, 'ok'],
    ['outside', 2.001, 'stop'],
    ['not a number', Number.NaN, 'stop'],
  ])('current of all devices %s', (_, total_A, verdict) => {
    expect(taking(total_A)).toMatchObject({ verdict, measure: 'current', measured: total_A, limit: 2 });
  });

  // The sample unit needs its pulse for 0.5 s.
  test.each([
    ['at the limit', 0.5, 'ok'],
    ['inside', 3, 'ok'],
    ['outside', 0.49, 'stop'],
  ])('pulse of the panel %s', (_, panelPulse_s, verdict) => {
    expect(taking(1, { panelPulse_s }).verdict).toBe(verdict);
  });

  test('says both, or what is at fault', () => {
    expect(taking(1.5).text).toBe('The devices take 1.50 A together; the panel gives 2.00 A. The panel holds its output for 0.500 s; 0.500 s is enough.');
    expect(taking(1.5, { panelPulse_s: 0.2 })).toMatchObject({ measure: 'time', measured: 0.2, text: 'The panel holds its output for only 0.200 s; the solenoid needs 0.500 s. Set a longer pulse.' });
    expect(taking(3, { panelPulse_s: 0.2 }).text).toMatch(/^The devices take 3.00 A together; .* The panel holds its output for only/);
    expect(taking(3).text).toBe('The devices take 3.00 A together; the panel gives only 2.00 A. Add a releasing module.');
  });

  test.each<[string, number | undefined, Partial<Release>, LayoutSpec]>([
    ['a current', undefined, {}, {}],
    ['the output of the panel', 1, { panelCurrent_A: null }, {}],
    ['how long the panel gives it', 1, { panelPulse_s: null }, {}],
    ['how long the solenoid needs it', 1, {}, { limits: { releasePulse_s: null } }],
  ])('%s is not known: not checked', (_, total_A, given, more) => {
    expect(taking(total_A, given, more).verdict).toBe('not-checked');
  });

  test('what is not known hides no fault of the other', () => {
    expect(taking(undefined, { panelPulse_s: 0.1 }).verdict).toBe('stop');
    expect(taking(1, { panelCurrent_A: null, panelPulse_s: 0.1 }).verdict).toBe('stop');
    expect(taking(3, { panelPulse_s: null }).verdict).toBe('stop');
    expect(taking(undefined, { panelPulse_s: null }).verdict).toBe('not-checked');
  });

  test('without a circuit there is nothing to ask; the sums of a plan are asked', () => {
    expect(check(rule, layout({}))).toEqual([]);
    expect(checkOne(rule, withRelease({}))).toMatchObject({ verdict: 'ok', measured: 1.5 });
  });
});
