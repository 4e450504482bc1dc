import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { p11Imbalance as rule } from '#shared/rules/pipe/p11-imbalance';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

/** N1 4 m from the source, N2 as far as the test says: 2 m to the tee and the rest aside. */
const branched = (second_m: number) => ({
  runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(5, 2, 2.5)] }, { places: [at3(3, 2, 2.5), at3(3, second_m, 2.5)] }],
  nozzles: [{ at: at3(5, 2, 2.5) }, { at: at3(3, second_m, 2.5) }],
});

describe('P11', () => {
  // (4 − 3)/4 is a quarter.
  test.each([
    ['at the limit', 3, 'ok'],
    ['just inside', 3.001, 'ok'],
    ['just outside', 2.999, 'warn'],
    ['equally long', 4, 'ok'],
  ])('%s', (_, second_m, verdict) => {
    expect(checkOne(rule, layout({ ...branched(second_m), limits: { pathImbalance: 0.25 } }))).toMatchObject({ verdict, measured: expect.closeTo((4 - second_m) / 4, 9), limit: 0.25 });
  });

  test('names both nozzles', () => {
    expect(checkOne(rule, layout({ ...branched(2.5), limits: { pathImbalance: 0.25 } })).text).toBe('The path to N1 is 4.000 m, that to N2 2.500 m: they differ by 37.5 %, and only 25.0 % is allowed. Move a tee.');
  });

  test('one nozzle has nothing to be compared with; a blank limit or a lost nozzle is not checked', () => {
    expect(checkOne(rule, layout({ runs: [{ places: [at3(1, 2, 2.5), at3(5, 2, 2.5)] }], nozzles: [{ at: at3(5, 2, 2.5) }], limits: { pathImbalance: null } }))).toMatchObject({ verdict: 'ok' });
    expect(checkOne(rule, layout({ ...branched(3), limits: { pathImbalance: null } })).verdict).toBe('not-checked');
    const lost = { ...branched(3), nozzles: [...branched(3).nozzles, { at: at3(1, 1, 1) }] };
    expect(checkOne(rule, layout(lost)).text).toBe('Not checked: no pipe leads to nozzle N3 from the cylinder.');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, placedLayout({ ...branched(3.0001), limits: { pathImbalance: 0.25 } }, placing)).verdict).toBe('ok');
        expect(checkOne(rule, placedLayout({ ...branched(2.9999), limits: { pathImbalance: 0.25 } }, placing)).verdict).toBe('warn');
      }),
      { numRuns: 20 },
    );
  });
});
