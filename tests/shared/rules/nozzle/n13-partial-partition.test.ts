import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { n13PartialPartition as rule } from '#shared/rules/nozzle/n13-partial-partition';
import { type LayoutSpec, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

// 18 in: common practice.
const OPEN_m = 18 * 0.0254;
/** A partition across a room 2.7 m high. */
const partition = (top_m: number, bottom_m = 0, more: LayoutSpec = {}): LayoutSpec => ({
  room: rectangle(8, 5),
  obstructions: [{ kind: 'partition', footprint: rectangle(0.1, 5, planPoint(4, 0)), bottom_m, top_m }],
  ...more,
});

describe('N13', () => {
  test.each([
    ['just too high', partition(2.7 - OPEN_m + 0.001), 'warn'],
    ['on the limit', partition(2.7 - OPEN_m), 'ok'],
    ['well below', partition(1.5), 'ok'],
    ['up to the ceiling', partition(2.7), 'warn'],
    ['beyond it', partition(3), 'warn'],
    ['a screen that leaves as much under it', partition(2.7, OPEN_m), 'ok'],
    ['one that leaves less under it', partition(2.7, OPEN_m - 0.001), 'warn'],
    ['under a ceiling of which nothing is known', partition(1.5, 0, { height_m: null }), 'not-checked'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('a low zone over a part of it counts', () => {
    const zone = { id: 'z1', name: 'Bulkhead', outline: rectangle(1, 0.5, planPoint(3.6, 1.2)).map(({ x, y }) => ({ x, y })), height_m: 2.3 };
    expect(checkOne(rule, layout(partition(2, 0, { enclosure: { ceilingZones: { z1: zone } } })))).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.3, 9) });
    expect(checkOne(rule, layout(partition(2)))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(0.7, 9) });
  });

  test('under a slope the lowest ceiling over it counts', () => {
    const slope = { at: { x: 0, y: 0 }, direction_rad: Math.PI / 2, rise: -0.1 };
    expect(checkOne(rule, layout(partition(2, 0, { enclosure: { slope } })))).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.2, 9) });
  });

  test('shows the partition as an area with its height under the ceiling; other things are no partition', () => {
    const { place, inputs } = checkOne(rule, layout(partition(2.5)));
    expect(place?.areas).toHaveLength(1);
    expect(place?.heights?.map(({ z }) => z)).toEqual([2.5, 2.7]);
    expect(inputs).toHaveLength(2);
    expect(check(rule, layout({ obstructions: [{ kind: 'rack', footprint: rectangle(1, 1, planPoint(1, 1)), bottom_m: 0, top_m: 2.7 }] }))).toEqual([]);
  });
});
