import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { applyCure } from '#shared/commands/apply-cure';
import { p15StreetElbow as rule } from '#shared/rules/pipe/p15-street-elbow';
import { at3, layout } from '../../../support/layout.ts';
import { type GivenSums, checkSums } from '../../../support/network-sums.ts';
import { done } from '../../../support/try-command.ts';

/** ASME B16.3-2011: 600 psi, 6894.757293 Pa each. */
const LIMIT_Pa = 600 * 6894.757_293_168;
const bent = (isStreet: boolean) => {
  const plan = layout({ runs: [{ places: [at3(1, 2, 2), at3(1, 2, 2.5), at3(4, 2, 2.5), at3(4, 2, 2.2)] }], nozzles: [{ at: at3(4, 2, 2.2) }] });
  const turn = Object.values(plan.networks.net?.nodes ?? {}).find(({ at }) => at.x === 4 && at.z === 2.5);
  if (turn && isStreet) turn.part = 'street-elbow';
  return plan;
};
const under = (greatest_Pa: number): GivenSums => (derived) => ({
  zones: worked([{ side: 'after the regulator', greatest_Pa, greatestSource: 'set pressure of the regulator', pipes: [], line_Pa: undefined, fittings: derived.fittings.map((fitting) => ({ fitting, size: '3/4', rating_Pa: 1e7, isEverAllowed: true })) }]),
});

describe('P15', () => {
  test.each([
    ['at the limit', LIMIT_Pa, 'ok'],
    ['just below', LIMIT_Pa - 10, 'ok'],
    ['just above', LIMIT_Pa + 10, 'warn'],
  ])('%s', (_, greatest_Pa, verdict) => {
    expect(checkSums(rule, bent(true), under(greatest_Pa))[0]).toMatchObject({ verdict, measured: greatest_Pa, limit: expect.closeTo(LIMIT_Pa, 0) });
  });

  test('without one it is kept, whatever the pressure', () => {
    expect(checkSums(rule, bent(false), { zones: notWorked('nothing is known.') })[0]).toMatchObject({ verdict: 'ok', text: 'Has no street elbow.' });
  });

  test('is not checked while the pressure there is not known', () => {
    expect(checkSums(rule, bent(true), { zones: notWorked('the set pressure is blank.') })[0]).toMatchObject({ verdict: 'not-checked' });
    expect(checkSums(rule, bent(true), { zones: worked([]) })[0]).toMatchObject({ verdict: 'not-checked' });
  });

  test('its cure takes it out in one step', () => {
    const plan = bent(true);
    const cure = checkSums(rule, plan, under(6e6))[0]?.cure;
    expect(cure).toMatchObject({ kind: 'set-parts', text: 'Put an elbow and a nipple in its place' });
    if (!cure) return;
    expect(checkSums(rule, done(plan, applyCure(cure)).next, under(6e6))[0]?.verdict).toBe('ok');
  });
});
