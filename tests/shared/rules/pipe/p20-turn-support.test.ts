import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { p20TurnSupport as rule } from '#shared/rules/pipe/p20-turn-support';
import { at3 } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';
import { heldOn, supportSums, supportedRun } from '../../../support/supported-run.ts';

const plan = supportedRun([{ at: at3(2.8, 0, 2) }]);
// 1 ft: Unified Facilities Guide Specifications, piping.
const LIMIT_m = 0.3048;
/** The one elbow again and again, each time with its nearest support so far away. */
const turns = (...distances_m: (number | undefined)[]) =>
  checkSumsOnce(rule, plan, (network) => ({
    supports: worked(
      supportSums({ held: heldOn(network, { s1: 'p1' }), turns: distances_m.flatMap((distance_m) => network.fittings.map((fitting) => ({ fitting, distance_m, allowed_m: LIMIT_m }))) }),
    ),
  }));

describe('P20', () => {
  test.each([
    ['at the limit', 0.3048, 'ok'],
    ['inside', 0.3, 'ok'],
    ['outside', 0.305, 'warn'],
    ['not a number', Number.NaN, 'warn'],
  ])('a turn whose support stands %s', (_, distance_m, verdict) => {
    expect(turns(distance_m).verdict).toBe(verdict);
  });

  test('one finding names the worst turn and shows all that lack a support', () => {
    const finding = turns(0.5, 0.1, 0.4);
    expect(finding).toMatchObject({ verdict: 'warn', measured: 0.5, limit: LIMIT_m });
    expect(finding.text).toBe('2 of 3 turns lack a near support: at a 90° elbow it is 500 mm away, and 305 mm is allowed. Add one.');
    expect(finding.place?.at).toHaveLength(2);
  });

  test('a turn without any support on its pipe is worst of all', () => {
    expect(turns(0.5, undefined)).toMatchObject({ verdict: 'warn', limit: LIMIT_m });
    expect(turns(undefined, 0.5).text).toContain('2 of 2 turns lack a near support: a 90° elbow has none on its pipe');
    expect(turns(undefined, undefined, 0.1).place?.at).toHaveLength(2);
  });

  test('straight pipe has nothing to hold', () => {
    expect(turns()).toMatchObject({ verdict: 'ok', text: 'Has no elbow or tee.' });
  });

  test('no support at all, or sums not known: not checked', () => {
    expect(checkSumsOnce(rule, supportedRun([]), { supports: worked(supportSums({})) }).verdict).toBe('not-checked');
    expect(checkSumsOnce(rule, plan, { supports: notWorked('no pipe leads to a nozzle yet.') }).verdict).toBe('not-checked');
  });
});
