import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { n07FreeJet as rule } from '#shared/rules/nozzle/n07-free-jet';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const rad = (deg: number): number => (deg * Math.PI) / 180;
// 3 ft: common practice.
const limits = { freeJet_m: 0.9144 };
/** A cabinet east of the nozzle, its face `free_m` away. */
const blocked = (free_m: number, top_m = 2.6) => ({
  nozzles: [{ at: at3(3, 2, 2.5), holes_rad: [0] }],
  obstructions: [
    { kind: 'cabinet' as const, footprint: rectangle(0.5, 1, planPoint(3 + free_m, 1.5)).map(({ x, y }) => ({ x, y })), bottom_m: 0, top_m },
  ],
  limits,
});

describe('N7', () => {
  test.each([
    ['just short', 0.914, 'stop'],
    ['on the limit', 0.9144, 'ok'],
    ['just clear', 0.915, 'ok'],
  ])('%s', (_, free_m, verdict) => {
    const finding = checkOne(rule, layout(blocked(free_m)));
    expect(finding.verdict).toBe(verdict);
    expect(finding.measured).toBeCloseTo(free_m, 9);
  });

  test('a thing below the orifice does not stop the jet; the wall does', () => {
    expect(checkOne(rule, layout(blocked(0.3, 2.4)))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(3, 9) });
  });

  test('a hole that the near-wall rule stops is not judged a second time', () => {
    const nozzles = [{ at: at3(3, 0.5, 2.5), holes_rad: [rad(90), rad(270)] }];
    expect(checkOne(rule, layout({ nozzles, limits })).verdict).toBe('not-checked');
    const oneWay = [{ at: at3(3, 0.5, 2.5), holes_rad: [rad(0), rad(270)] }];
    expect(checkOne(rule, layout({ nozzles: oneWay, limits }))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(3, 9) });
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(0.9143, 0.9144, 0.9145), (placing, free_m) => {
        expect(checkOne(rule, placedLayout(blocked(free_m), placing)).verdict).toBe(free_m < 0.9144 ? 'stop' : 'ok');
      }),
    );
  });

  test('a blank limit, no holes or no enclosure are not checked', () => {
    expect(checkOne(rule, layout({ ...blocked(2), limits: { freeJet_m: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(3, 2, 2.5), holes_rad: [] }], limits })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(30, 2, 2.5) }], limits })).verdict).toBe('not-checked');
  });
});
