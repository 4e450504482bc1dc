import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pipeBore_m } from '#shared/profile/pipe-table';
import { p08StraightRun as rule } from '#shared/rules/pipe/p08-straight-run';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

// ASME B36.10M: NPS 3/4 Schedule 40 is 1.050 in outside with 0.113 in walls; ten bores are 8.24 in.
const LEAST_m = 8.24 * 0.0254;

/** Up, then along to a tee `straight` from the elbow: one leg on to N1, one aside to N2. */
const teeAfter = (straight: number, broken: number | undefined = undefined) => ({
  runs: [
    { places: [at3(1, 1, 2), at3(1, 1, 2.6), ...(broken === undefined ? [] : [at3(1 + broken, 1, 2.6)]), at3(1 + straight, 1, 2.6), at3(4, 1, 2.6)] },
    { places: [at3(1 + straight, 1, 2.6), at3(1 + straight, 3, 2.6)] },
  ],
  nozzles: [{ at: at3(4, 1, 2.6) }, { at: at3(1 + straight, 3, 2.6) }],
});

describe('P8', () => {
  test('ten bores of the table', () => {
    expect(10 * pipeBore_m('3/4', '40')).toBeCloseTo(LEAST_m, 9);
  });

  test.each([
    ['at the limit', LEAST_m, 'ok'],
    ['just longer', LEAST_m + 1e-4, 'ok'],
    ['just shorter', LEAST_m - 1e-4, 'warn'],
  ])('%s', (_, straight, verdict) => {
    expect(checkOne(rule, layout(teeAfter(straight)))).toMatchObject({ verdict, measured: expect.closeTo(straight, 9), limit: expect.closeTo(LEAST_m, 9) });
  });

  test('says how many tees, and shows them', () => {
    const finding = checkOne(rule, layout(teeAfter(0.1)));
    expect(finding.text).toBe('1 of 1 tees has too little straight pipe before it: 100 mm, where 209 mm is wanted. Lengthen it.');
    expect(finding.place?.at).toEqual([expect.objectContaining({ x: 1.1, y: 1 })]);
  });

  test('a node on straight pipe breaks nothing; a tee right at the source has nothing before it', () => {
    expect(checkOne(rule, layout(teeAfter(LEAST_m, 0.05))).measured).toBeCloseTo(LEAST_m, 9);
    const atSource = layout({ runs: [{ places: [at3(1, 1, 2), at3(3, 1, 2)] }, { places: [at3(1, 1, 2), at3(1, 3, 2)] }], nozzles: [{ at: at3(3, 1, 2) }, { at: at3(1, 3, 2) }] });
    expect(checkOne(rule, atSource)).toMatchObject({ verdict: 'warn', measured: 0 });
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, placedLayout(teeAfter(LEAST_m + 1e-6), placing)).verdict).toBe('ok');
        expect(checkOne(rule, placedLayout(teeAfter(LEAST_m - 1e-6), placing)).verdict).toBe('warn');
      }),
      { numRuns: 30 },
    );
  });

  test('no tee is kept, no pipe is not checked', () => {
    expect(checkOne(rule, layout({ runs: [{ places: [at3(1, 1, 2), at3(2, 1, 2)] }] }))).toMatchObject({ verdict: 'ok', text: 'Has no tee.' });
    expect(checkOne(rule, layout({})).verdict).toBe('not-checked');
  });
});
