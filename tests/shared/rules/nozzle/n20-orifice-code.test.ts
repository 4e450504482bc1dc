import { describe, expect, test } from 'vitest';
import type { OrificeSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { n20OrificeCode as rule } from '#shared/rules/nozzle/n20-orifice-code';
import { at3, layout } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';

const plan = layout({ nozzles: [{ at: at3(3, 2, 2.5) }] });
const made = { code: 'S50', area_m2: 2e-5 };
const asked = (given: Partial<OrificeSums>, of = plan) =>
  checkSumsOnce(rule, of, { orifices: worked([{ ref: { kind: 'nozzle', network: 'net', id: 'n1' }, name: 'N1', drawn_m2: null, needed_m2: 1.99e-5, made, ...given }]) });

describe('N20', () => {
  test.each([
    ['the code itself', 2e-5, 'ok'],
    ['0.1 % above it', 2e-5 * 1.001, 'ok'],
    ['0.1 % below it', 2e-5 * 0.999, 'ok'],
    ['more than 0.1 % above it', 2e-5 * 1.0011, 'stop'],
    ['more than 0.1 % below it', 2e-5 * 0.9989, 'stop'],
    ['what is needed but not made', 1.99e-5, 'stop'],
  ])('%s', (_, drawn_m2, verdict) => {
    expect(asked({ drawn_m2 })).toMatchObject({ verdict, measure: 'orificeArea', measured: drawn_m2, limit: 2e-5 });
  });
  test('a fault names the code to choose, at the nozzle', () => {
    expect(asked({ drawn_m2: 3e-5 })).toMatchObject({
      text: 'Is drawn with 30.0 mm², but orifice S50 (20.0 mm²) is calculated.',
      cure: { kind: 'advice', text: 'Choose orifice S50.' },
      place: { at: [{ x: 3, y: 2 }] },
    });
  });
  test.each([
    ['within what a drill makes', 2e-5 * 1.025, 'ok'],
    ['beyond what a drill makes', 2e-5 * 1.026, 'stop'],
    ['too small', 2e-5 * 0.974, 'stop'],
  ])('without a list of codes: %s', (_, drawn_m2, verdict) => {
    const unlisted = layout({ nozzles: [{ at: at3(3, 2, 2.5) }] });
    for (const profile of Object.values(unlisted.profiles)) profile.orifices = [];
    expect(asked({ drawn_m2, needed_m2: 2e-5, made: undefined }, unlisted).verdict).toBe(verdict);
  });
  test('what is needed is more than the largest code passes', () => {
    expect(asked({ drawn_m2: 2e-5, needed_m2: 3e-4 })).toMatchObject({ verdict: 'stop', text: 'It needs 300.0 mm², which is more than the largest orifice that the nozzle is made with.' });
  });
  test('what is needed is less than the smallest code passes', () => {
    expect(asked({ drawn_m2: 1e-8, needed_m2: 1e-8, made: undefined })).toMatchObject({ verdict: 'stop', text: expect.stringContaining('less than the smallest orifice') });
  });
  test('nothing drawn is not checked, and the calculated one is told', () => {
    expect(asked({})).toMatchObject({ verdict: 'not-checked', text: 'Not checked: no orifice is chosen. The calculated one is S50 (20.0 mm²).' });
  });
  test('a calculated orifice that is not known is not checked', () => {
    expect(checkSumsOnce(rule, plan, { orifices: notWorked('“Discharge coefficient” is blank in the unit profile.') }).verdict).toBe('not-checked');
    expect(checkSumsOnce(rule, plan, { orifices: worked([]) }).verdict).toBe('not-checked');
  });
});
