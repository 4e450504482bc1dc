import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { p02PathLength } from '#shared/rules/pipe/p02-path-length';
import { p03TotalLength } from '#shared/rules/pipe/p03-total-length';
import { p04Elbows } from '#shared/rules/pipe/p04-elbows';
import { p05Tees } from '#shared/rules/pipe/p05-tees';
import { anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

/** Up 0.6, east 2.8, down 0.2 to the nozzle: 3.6 m, two elbows. */
const single = {
  runs: [{ places: [at3(0.2, 2, 2), at3(0.2, 2, 2.6), at3(3, 2, 2.6), at3(3, 2, 2.4)] }],
  nozzles: [{ at: at3(3, 2, 2.4) }],
};
/** A tee at (2, 2): one nozzle 1 m north, one 1 m south, level: bull-head tee, no elbow but the first. */
const teed = {
  runs: [
    { places: [at3(0, 2, 2), at3(0, 2, 2.6), at3(2, 2, 2.6), at3(2, 3, 2.6)] },
    { places: [at3(2, 2, 2.6), at3(2, 1, 2.6)] },
  ],
  nozzles: [{ at: at3(2, 3, 2.6) }, { at: at3(2, 1, 2.6) }],
};
const limited = (spec: typeof single, key: 'pathLength_m' | 'totalPipeLength_m' | 'elbowsPerPath' | 'teesPerPath', value: number | null) =>
  layout({ ...spec, limits: { [key]: value } });

describe.each([
  { rule: p02PathLength, key: 'pathLength_m' as const, spec: single, spent: 3.6, step: 0.001 },
  { rule: p03TotalLength, key: 'totalPipeLength_m' as const, spec: single, spent: 3.6, step: 0.001 },
  { rule: p04Elbows, key: 'elbowsPerPath' as const, spec: single, spent: 2, step: 1 },
])('$rule.id', ({ rule, key, spec, spent, step }) => {
  test('on the limit, inside and outside', () => {
    expect(checkOne(rule, limited(spec, key, spent))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(spent, 9) });
    expect(checkOne(rule, limited(spec, key, spent + step)).verdict).toBe('ok');
    expect(checkOne(rule, limited(spec, key, spent - step)).verdict).toBe('stop');
  });
  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, placedLayout({ ...spec, limits: { [key]: spent } }, placing)).verdict).toBe('ok');
        expect(checkOne(rule, placedLayout({ ...spec, limits: { [key]: spent - step } }, placing)).verdict).toBe('stop');
      }),
      { numRuns: 30 },
    );
  });
  test('a blank limit or no pipe is not checked', () => {
    expect(checkOne(rule, limited(spec, key, null)).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles: spec.nozzles })).verdict).toBe('not-checked');
  });
});

describe('P5', () => {
  test.each([
    ['on the limit', 1, 'ok'],
    ['inside', 2, 'ok'],
    ['outside', 0, 'stop'],
  ])('%s', (_, teesPerPath, verdict) => {
    const findings = check(p05Tees, limited(teed, 'teesPerPath', teesPerPath));
    expect(findings.map((finding) => [finding.verdict, finding.measured])).toEqual([
      [verdict, 1],
      [verdict, 1],
    ]);
  });
  test('a blank limit or no pipe is not checked', () => {
    expect(check(p05Tees, limited(teed, 'teesPerPath', null)).every(({ verdict }) => verdict === 'not-checked')).toBe(true);
    expect(checkOne(p05Tees, layout({ nozzles: single.nozzles })).verdict).toBe('not-checked');
  });
});
