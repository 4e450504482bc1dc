import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { n01WallClearance as rule } from '#shared/rules/nozzle/n01-wall-clearance';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

// 10 in = 254 mm: common practice.
const LIMIT_m = 0.254;
const spec = (fromWall_m: number) => ({ nozzles: [{ at: at3(fromWall_m, 2, 2.5) }], limits: { nozzleToWall_m: LIMIT_m } });

describe('N1', () => {
  test.each([
    ['just short', 0.253, 'stop'],
    ['a hair short', 0.2539999, 'stop'],
    ['exactly on the limit', 0.254, 'ok'],
    ['just clear', 0.255, 'ok'],
    ['well clear', 2, 'ok'],
  ])('%s', (_, fromWall_m, verdict) => {
    const finding = checkOne(rule, layout(spec(fromWall_m)));
    expect(finding.verdict).toBe(verdict);
    expect(finding.measured).toBeCloseTo(fromWall_m, 9);
    expect(finding.margin).toBeCloseTo(fromWall_m - LIMIT_m, 9);
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(0.2539, 0.254, 0.2541), (placing, fromWall_m) => {
        expect(checkOne(rule, placedLayout(spec(fromWall_m), placing)).verdict).toBe(fromWall_m < LIMIT_m ? 'stop' : 'ok');
      }),
    );
  });

  test('a full-height obstruction counts as a wall, a low one does not', () => {
    const column = (top_m: number) =>
      layout({
        ...spec(2),
        obstructions: [{ kind: 'column', footprint: rectangle(0.3, 0.3, planPoint(2.2, 1.9)).map(({ x, y }) => ({ x, y })), bottom_m: 0, top_m }],
      });
    expect(checkOne(rule, column(2.7))).toMatchObject({ verdict: 'stop', measured: expect.closeTo(0.2, 9) });
    expect(checkOne(rule, column(1.8))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(2, 9) });
  });

  test('its cure slides the nozzle to the limit and no farther', () => {
    const { cure } = checkOne(rule, layout(spec(0.2)));
    expect(cure).toMatchObject({ kind: 'move-nozzle', to: { x: expect.closeTo(LIMIT_m, 9), y: expect.closeTo(2, 9), z: 2.5 } });
  });

  test('a slide that meets the other wall is advice only', () => {
    const narrow = { ...spec(0.1), room: rectangle(0.4, 4) };
    expect(checkOne(rule, layout(narrow)).cure).toMatchObject({ kind: 'advice' });
  });

  test('a blank limit or a nozzle outside is not checked, never ok', () => {
    expect(checkOne(rule, layout({ ...spec(2), limits: { nozzleToWall_m: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout(spec(-3))).verdict).toBe('not-checked');
  });
});
