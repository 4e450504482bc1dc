import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { pipeOutside_m } from '#shared/profile/pipe-table';
import { p27Clash as rule } from '#shared/rules/pipe/p27-clash';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

// 1 in: common practice.
const LIMIT_m = 0.0254;
const RADIUS_m = pipeOutside_m('1-1/4') / 2;
/** A pipe at 2.0 m passing below a beam whose soffit leaves the given gap above the pipe. */
const under = (gap_m: number) => ({
  runs: [{ places: [at3(1, 2, 2), at3(5, 2, 2)], size: '1-1/4' as const }],
  obstructions: [
    { kind: 'beam' as const, footprint: rectangle(0.3, 4, planPoint(3, 0)).map(({ x, y }) => ({ x, y })), bottom_m: 2 + RADIUS_m + gap_m, top_m: 2.7 },
  ],
  limits: { pipeClearance_m: LIMIT_m },
});

describe('P27', () => {
  test.each([
    ['on the limit', 0.0254, 'ok'],
    ['just clear', 0.026, 'ok'],
    ['just too close', 0.025, 'warn'],
    ['touching', 0, 'warn'],
    ['a hair into the beam', -0.0001, 'stop'],
    ['through the beam', -0.05, 'stop'],
  ])('%s', (_, gap_m, verdict) => {
    const finding = checkOne(rule, layout(under(gap_m)));
    expect(finding.verdict).toBe(verdict);
    if (gap_m >= 0) expect(finding.measured).toBeCloseTo(gap_m, 9);
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(0.0253, 0.0254, 0.0255), (placing, gap_m) => {
        expect(checkOne(rule, placedLayout(under(gap_m), placing)).verdict).toBe(gap_m < LIMIT_m ? 'warn' : 'ok');
      }),
      { numRuns: 50 },
    );
  });

  test('a blank limit is not checked, but a clash is still a stop', () => {
    expect(checkOne(rule, layout({ ...under(0.01), limits: { pipeClearance_m: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ ...under(-0.01), limits: { pipeClearance_m: null } })).verdict).toBe('stop');
  });
});
