import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { pipeOutside_m } from '#shared/profile/pipe-table';
import { p30Headroom as rule } from '#shared/rules/pipe/p30-headroom';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { type LayoutSpec, anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

// 80 in: IBC 1003.3, memory.
const LIMIT_m = 2.032;
const RADIUS_m = pipeOutside_m('1-1/4') / 2;
const ring = (width_m: number, depth_m: number, x: number, y: number) => rectangle(width_m, depth_m, planPoint(x, y)).map((p) => ({ x: p.x, y: p.y }));
/** A run across the middle of a room of 6 × 4 m with its underside at a height. */
const across = (under_m: number, more: Partial<LayoutSpec> = {}): LayoutSpec => ({ cylinders: 0, runs: [{ places: [at3(1, 2, under_m + RADIUS_m), at3(5, 2, under_m + RADIUS_m)], size: '1-1/4' }], ...more });
const verdict = (spec: LayoutSpec) => checkOne(rule, layout({ cylinders: 0, ...spec })).verdict;
const pipe = (...places: readonly [number, number, number][]): LayoutSpec => ({ cylinders: 0, runs: [{ places: places.map(([x, y, z]) => at3(x, y, z)), size: '1-1/4' }] });

describe('P30', () => {
  test.each([
    ['on the limit', LIMIT_m, 'ok'],
    ['above it', 2.2, 'ok'],
    ['a millimetre below', LIMIT_m - 0.001, 'stop'],
    ['at the height of a chest', 1.2, 'stop'],
    ['along the floor', 0.05, 'stop'],
  ])('%s', (_, under_m, expected) => {
    expect(checkOne(rule, layout(across(under_m)))).toMatchObject({ verdict: expected });
  });

  test('says how high the underside is, and where', () => {
    const finding = checkOne(rule, layout(pipe([1, 2, 2.5], [5, 2, 1.9])));
    expect(finding.measured).toBeCloseTo(1.9 - RADIUS_m, 9);
    expect(finding.place?.at[0]).toMatchObject({ x: 5, y: 2 });
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(1.9, 2.03, 2.04), (placing, under_m) => {
        expect(checkOne(rule, placedLayout(across(under_m), placing)).verdict).toBe(under_m < LIMIT_m ? 'stop' : 'ok');
      }),
      { numRuns: 40 },
    );
  });

  test('insulation counts', () => {
    const plan = layout(across(LIMIT_m));
    for (const each of Object.values(plan.networks.net?.pipes ?? {})) each.insulation_m = 0.02;
    expect(checkOne(rule, plan)).toMatchObject({ verdict: 'stop', measured: expect.closeTo(LIMIT_m - 0.02, 9) });
  });

  const rack = (x: number, width_m: number, bottom_m = 0, top_m = 1.5) => ({ kind: 'rack' as const, footprint: ring(width_m, 1, x, 1.5), bottom_m, top_m });
  test.each([
    ['over a rack from end to end', [rack(0.9, 4.2)], 'ok'],
    ['over two racks that touch', [rack(0.9, 2), rack(2.9, 2.2)], 'ok'],
    ['past the end of a rack', [rack(0.9, 3)], 'stop'],
    ['over a rack that hangs', [rack(0.9, 4.2, 0.5)], 'stop'],
    ['over a kerb', [rack(0.9, 4.2, 0, 0.3)], 'stop'],
  ])('%s', (_, obstructions, expected) => {
    expect(verdict(across(1.6, { obstructions }))).toBe(expected);
  });

  test.each([
    ['clamped along a wall', pipe([1, 0.0254 + RADIUS_m, 1], [5, 0.0254 + RADIUS_m, 1]), 'ok'],
    ['its outside 4 in off the wall', pipe([1, 0.1016 - RADIUS_m, 1], [5, 0.1016 - RADIUS_m, 1]), 'ok'],
    ['more than 4 in off it', pipe([1, 0.12 - RADIUS_m, 1], [5, 0.12 - RADIUS_m, 1]), 'stop'],
    ['from a wall into the room', pipe([1, 0, 1], [1, 2, 1]), 'stop'],
    ['through the wall, low only outside', pipe([1, -0.1, 1], [1, 0, 1]), 'ok'],
    ['far outside, where no room is drawn', pipe([1, -5, 1], [4, -5, 1]), 'not-checked'],
    ['in the void below', { ...pipe([1, 2, -0.2], [5, 2, -0.2]), underFloor: { depth_m: 0.4, isProtected: true, exclusion: null } }, 'ok'],
    ['above a low ceiling that hangs', { ...pipe([1, 2, 1.95], [5, 2, 1.95]), height_m: 1.9, enclosure: { ceilingVoid: { depth_m: 0.5, isProtected: false, exclusion: null } } }, 'ok'],
    ['a drop that ends at the height of a head', pipe([2, 2, 2.6], [2, 2, 1.8]), 'stop'],
    ['an upright pipe down to the floor', pipe([2, 2, 2.6], [2, 2, 0]), 'ok'],
    ['one that ends below 27 in', pipe([2, 2, 2.6], [2, 2, 0.6]), 'ok'],
  ] satisfies [string, LayoutSpec, string][])('%s', (_, spec, expected) => {
    expect(verdict(spec)).toBe(expected);
  });

  test('a post drawn in several pieces is one post', () => {
    expect(check(rule, layout(pipe([2, 2, 2.6], [2, 2, 1.8], [2, 2, 1.2], [2, 2, 0]))).map((finding) => finding.verdict)).toEqual(['ok', 'ok', 'ok']);
  });

  // The layout's cylinders stand at x 0.2, y 0.2, 0.5, 0.8 before the west wall; 10.5 in across.
  test.each([
    ['above a cylinder', pipe([0.2, 0.5, 1.9], [0.2, 0.5, 2.4]), 'ok'],
    ['along the wall over the row', pipe([0.28, 0.2, 1.9], [0.28, 0.9, 1.9]), 'ok'],
    ['a foot past the last one', pipe([0.2, 0.8, 1.9], [0.2, 1.2, 1.9]), 'ok'],
    ['farther along the wall', pipe([0.2, 0.8, 1.9], [0.2, 1.6, 1.9]), 'stop'],
    ['out into the room', pipe([0.2, 0.5, 1.9], [0.6, 0.5, 1.9]), 'stop'],
  ] satisfies [string, LayoutSpec, string][])('%s', (_, spec, expected) => {
    expect(verdict({ ...spec, cylinders: 3 })).toBe(expected);
  });

  test.each(['F1', 'F2', 'F3'] as const)('demo %s keeps it', async (demo) => {
    expect(check(rule, (await buildDemo(demo)).plan).filter((finding) => finding.verdict !== 'ok').map(({ name, text }) => `${name}: ${text}`)).toEqual([]);
  });
});
