import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { n09CoverageGap as rule } from '#shared/rules/nozzle/n09-coverage-gap';
import { anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const circle = (radius_m: number) => ({ shape: 'circle' as const, radius_m, source: 'test' });
const square = (side_m: number) => ({ shape: 'rectangle' as const, length_m: side_m, width_m: side_m, source: 'test' });
const nozzles = [{ at: at3(3, 2, 2.5) }];

describe('N9', () => {
  test.each([
    ['footprint larger than the room', 7, 'ok'],
    ['footprint just as wide as the room', 6, 'ok'],
    ['footprint a hand narrower', 5.9, 'stop'],
  ])('%s', (_, side_m, verdict) => {
    const finding = checkOne(rule, layout({ nozzles, footprint: square(side_m) }));
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'stop') expect(finding.measured).toBeCloseTo(0.1 * 4, 3);
  });

  test('a round footprint leaves the corners: closed form of a disc cut by two parallel sides', () => {
    const covered_m2 = 4 * (Math.sqrt(5) + 4.5 * Math.asin(2 / 3));
    const gap_m2 = checkOne(rule, layout({ nozzles, footprint: circle(3) })).measured ?? 0;
    expect(gap_m2).toBeGreaterThanOrEqual(24 - covered_m2 - 1e-6);
    expect(gap_m2).toBeLessThan(24 - covered_m2 + 0.005 * covered_m2);
  });

  test('wherever the building stands, the gap is the same', () => {
    const gap = (plan: ReturnType<typeof layout>): number => checkOne(rule, plan).measured ?? 0;
    const here_m2 = gap(layout({ nozzles, footprint: circle(3) }));
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(gap(placedLayout({ nozzles, footprint: circle(3) }, placing))).toBeCloseTo(here_m2, 1);
      }),
      { numRuns: 30 },
    );
  });

  test('a protected void without a nozzle of its own is a stop', () => {
    const findings = check(rule, layout({ nozzles, underFloor: { depth_m: 0.3, isProtected: true, exclusion: null } }));
    expect(findings.map(({ verdict }) => verdict)).toEqual(['ok', 'stop']);
    expect(findings[1]?.measured).toBeCloseTo(24, 3);
  });

  test('a blank coverage is not checked', () => {
    expect(checkOne(rule, layout({ nozzles, footprint: null })).verdict).toBe('not-checked');
  });
});
