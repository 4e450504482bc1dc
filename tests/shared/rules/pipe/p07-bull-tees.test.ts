import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { p07BullTees as rule } from '#shared/rules/pipe/p07-bull-tees';
import { anyPlacing, at3, check, layout, placedLayout } from '../../../support/layout.ts';

/** Fed from the west; a bull-head tee parts north and south, a side tee goes on east and aside to the north. */
const bull = {
  runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(3, 3, 2.5)] }, { places: [at3(3, 2, 2.5), at3(3, 1, 2.5)] }],
  nozzles: [{ at: at3(3, 3, 2.5) }, { at: at3(3, 1, 2.5) }],
};
const side = {
  runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(5, 2, 2.5)] }, { places: [at3(3, 2, 2.5), at3(3, 3, 2.5)] }],
  nozzles: [{ at: at3(5, 2, 2.5) }, { at: at3(3, 3, 2.5) }],
};
const answers = (spec: typeof bull, bullTeesPerPath: number | null) =>
  check(rule, layout({ ...spec, limits: { bullTeesPerPath } })).map(({ verdict, measured }) => [verdict, measured]);

describe('P7', () => {
  test.each([
    ['none is allowed', 0, 'stop'],
    ['one is allowed', 1, 'ok'],
    ['two are allowed', 2, 'ok'],
  ])('one bull-head tee where %s', (_, limit, verdict) => {
    expect(answers(bull, limit)).toEqual([[verdict, 1], [verdict, 1]]);
  });

  test('a tee fed along its run is none', () => {
    expect(answers(side, 0)).toEqual([['ok', 0], ['ok', 0]]);
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(check(rule, placedLayout({ ...bull, limits: { bullTeesPerPath: 0 } }, placing)).map(({ verdict }) => verdict)).toEqual(['stop', 'stop']);
        expect(check(rule, placedLayout({ ...side, limits: { bullTeesPerPath: 0 } }, placing)).map(({ verdict }) => verdict)).toEqual(['ok', 'ok']);
      }),
      { numRuns: 30 },
    );
  });

  test('a blank limit or no pipe is not checked', () => {
    expect(answers(bull, null).map(([verdict]) => verdict)).toEqual(['not-checked', 'not-checked']);
    expect(check(rule, layout({ nozzles: [{ at: at3(1, 1, 2) }] })).map(({ verdict }) => verdict)).toEqual(['not-checked']);
  });

  test.each([
    [['side', 'up', 'down', 'bull'], 'ok'],
    [['side'], 'ok'],
    [['up', 'down', 'bull'], 'stop'],
    [[], 'stop'],
    [null, 'not-checked'],
  ] as const)('a tee with its branch to the side where the manual allows %j', (teeAttitudes, verdict) => {
    const plan = layout({ ...side, limits: { bullTeesPerPath: 0 } });
    for (const profile of Object.values(plan.profiles)) profile.teeAttitudes = teeAttitudes && [...teeAttitudes];
    expect(check(rule, plan).map((each) => each.verdict)).toEqual([verdict, verdict]);
  });

  test('says how the tee stands and how it should', () => {
    const plan = layout({ ...side, limits: { bullTeesPerPath: 0 } });
    for (const profile of Object.values(plan.profiles)) profile.teeAttitudes = ['up', 'down'];
    expect(check(rule, plan)[0]).toMatchObject({
      text: 'A tee on its path is turned with its branch to the side, which the unit profile does not allow. Turn it.',
      cure: { kind: 'advice', text: 'Turn the tee so that it stands with its branch up, or with its branch down.' },
      place: { at: [{ x: 3, y: 2 }] },
    });
  });

  test('a tee that only holds a dirt trap or a drain is not asked, whichever way it is fed', () => {
    for (const part of ['dirt-trap', 'drain'] as const) {
      const plan = layout({ runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(3, 2, 2.9)] }, { places: [at3(3, 2, 2.5), at3(3, 2, 2.3)] }], nozzles: [{ at: at3(3, 2, 2.9) }], limits: { bullTeesPerPath: 0 } });
      for (const profile of Object.values(plan.profiles)) profile.teeAttitudes = [];
      const end = Object.values(plan.networks.net?.nodes ?? {}).find(({ at }) => at.z === 2.3);
      if (end) end.part = part;
      expect(check(rule, plan)[0]?.verdict).toBe('ok');
    }
  });
});
