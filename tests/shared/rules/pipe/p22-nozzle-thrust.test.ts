import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { p22NozzleThrust as rule } from '#shared/rules/pipe/p22-nozzle-thrust';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { at3, check } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';
import { heldOn, supportSums, supportedRun } from '../../../support/supported-run.ts';

const CAPACITY_N = 500;
const pushed = (open_N: number, blocked_N: number, capacity_N: number | null = CAPACITY_N, isHeld = true) =>
  checkSumsOnce(rule, supportedRun([{ at: at3(3, 1.9, 2), capacity_N }]), (network) => {
    const held = heldOn(network, { s1: 'p2' });
    const thrusts = network.nozzles.map(({ ref, nozzle }) => ({ ref, name: nozzle.name, hole_N: blocked_N, open_N, blocked_N, support: isHeld ? held[0] : undefined }));
    return { supports: worked(supportSums({ held })), thrusts: worked(thrusts) };
  });

describe('P22', () => {
  test.each([
    ['at the limit', 0, 500, 'ok'],
    ['inside', 0, 499, 'ok'],
    ['outside', 0, 501, 'stop'],
    ['open holes on one side outside, a blocked one less', 501, 400, 'stop'],
    ['not a number', 0, Number.NaN, 'stop'],
  ])('thrust %s', (_, open_N, blocked_N, verdict) => {
    expect(pushed(open_N, blocked_N).verdict).toBe(verdict);
  });

  test('says when the nozzle pushes hardest', () => {
    expect(pushed(0, 600)).toMatchObject({ name: 'N1', measured: 600, limit: 500, text: 'Pushes with 600 N with one hole blocked; its support bears only 500 N. Brace it.' });
    expect(pushed(600, 600).text).toContain('with all holes open');
    expect(pushed(0, 600).basis.caution).toContain('real supports need reserve');
  });

  test('the sums of a plan are asked, also those of the discharge before the last change', async () => {
    const { plan } = await buildDemo('F1');
    const fresh = workedDischarge();
    const stale: DischargeSource = (network, input) => {
      const known = fresh(network, input);
      return typeof known === 'object' ? { ...known, isStale: true } : known;
    };
    const asked = (source?: DischargeSource) => check(rule, plan, source).map(({ verdict, text }) => [verdict, text.includes('the discharge before the last change')]);
    expect(asked(fresh)).toEqual([['ok', false]]);
    expect(asked(stale)).toEqual([['ok', true]]);
    expect(asked()).toEqual([['not-checked', false]]);
  });

  test('what the support bears is not known: not checked, but the thrust is said', () => {
    expect(pushed(0, 600, null)).toMatchObject({ verdict: 'not-checked', text: 'Not checked: nobody has stated what its support bears. Pushes with 600 N with one hole blocked.' });
    expect(pushed(0, 600, CAPACITY_N, false)).toMatchObject({ verdict: 'not-checked', name: 'N1' });
    expect(pushed(0, 600, 0).verdict).toBe('stop');
  });

  test('no support at all, or thrust not known: not checked, once', () => {
    expect(checkSumsOnce(rule, supportedRun([]), { thrusts: worked([]) })).toMatchObject({ verdict: 'not-checked', name: 'Network' });
    const plan = supportedRun([{ at: at3(3, 1.9, 2) }]);
    expect(checkSumsOnce(rule, plan, (network) => ({ supports: worked(supportSums({ held: heldOn(network, { s1: 'p2' }) })), thrusts: notWorked('no discharge yet.') })).text).toBe('Not checked: no discharge yet.');
  });
});
