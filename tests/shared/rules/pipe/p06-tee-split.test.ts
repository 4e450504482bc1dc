import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DischargeSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { p06TeeSplit as rule } from '#shared/rules/pipe/p06-tee-split';
import { anyPlacing, at3, layout, placedLayout } from '../../../support/layout.ts';
import { checkSums } from '../../../support/network-sums.ts';

/** A tee on the way along: N1 straight on, N2 aside. */
const teed = {
  runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(5, 2, 2.5)] }, { places: [at3(3, 2, 2.5), at3(3, 3, 2.5)] }],
  nozzles: [{ at: at3(5, 2, 2.5) }, { at: at3(3, 3, 2.5) }],
};
/** A discharge of which only the masses are looked at [kg]. */
const gives = (masses: readonly number[], isStale = false) => ({
  discharge: worked({ isStale, result: { nozzles: masses.map((mass_kg, i) => ({ id: `n${i + 1}`, mass_kg })) } } as unknown as DischargeSums),
});
const verdictOf = (masses: readonly number[], teeSplitLeast: number | null = 0.1) => checkSums(rule, layout({ ...teed, limits: { teeSplitLeast } }), gives(masses))[0];

describe('P6', () => {
  // 1 of 10 kg is a tenth, to the last digit.
  test.each([
    ['at the limit', [9, 1], 'ok'],
    ['just inside', [8.999, 1.001], 'ok'],
    ['just outside', [9.001, 0.999], 'stop'],
    ['even', [5, 5], 'ok'],
    ['with nothing in one leg', [10, 0], 'stop'],
  ])('%s', (_, masses, verdict) => {
    expect(verdictOf(masses)).toMatchObject({ verdict, measured: expect.closeTo(Math.min(...masses) / (masses[0] ?? 0) / (1 + (masses[1] ?? 0) / (masses[0] ?? 1)), 9) });
  });

  test('says what is wrong, and where', () => {
    const finding = verdictOf([9.5, 0.5]);
    expect(finding?.text).toBe('1 of 1 tee gives the lesser leg too little: 5.0 % of the agent where 10.0 % is the least. Branch the pipe another way.');
    expect(finding?.place?.at).toEqual([{ x: 3, y: 2 }]);
  });

  test('nothing is passed while something is missing', () => {
    expect(verdictOf([5, 5], null)?.verdict).toBe('not-checked');
    expect(checkSums(rule, layout(teed), { discharge: notWorked('the test says so.') })[0]).toMatchObject({ verdict: 'not-checked', text: 'Not checked: the test says so.' });
    expect(checkSums(rule, layout(teed), gives([5]))[0]?.verdict).toBe('not-checked');
    expect(checkSums(rule, layout(teed), gives([5, 5], true))[0]?.text).toContain('the discharge before the last change');
  });

  test('a tee that only holds a dirt trap parts nothing, and pipe without a tee is kept', () => {
    const plan = layout({ runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(3, 3, 2.5)] }, { places: [at3(3, 2, 2.5), at3(3.1, 2, 2.5)] }], nozzles: [{ at: at3(3, 3, 2.5) }], limits: { teeSplitLeast: null } });
    const cap = Object.values(plan.networks.net?.nodes ?? {}).find(({ at }) => at.x === 3.1);
    if (cap) cap.part = 'dirt-trap';
    expect(checkSums(rule, plan, { discharge: notWorked('nothing is known.') })[0]).toMatchObject({ verdict: 'ok', text: 'Has no tee that parts the agent.' });
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkSums(rule, placedLayout({ ...teed, limits: { teeSplitLeast: 0.1 } }, placing), gives([9.001, 0.999]))[0]?.verdict).toBe('stop');
        expect(checkSums(rule, placedLayout({ ...teed, limits: { teeSplitLeast: 0.1 } }, placing), gives([9, 1]))[0]?.verdict).toBe('ok');
      }),
      { numRuns: 20 },
    );
  });
});
