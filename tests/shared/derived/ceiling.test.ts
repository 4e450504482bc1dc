import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ceilingOf } from '#shared/derived/ceiling';
import { derivePlan } from '#shared/derived/derive-plan';
import { fillOf } from '#shared/derived/polygon-sums';
import { area_m2, rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Enclosure } from '#shared/model/plan';
import { type PlanBuilder, planBuilder } from '../../support/plan-builder.ts';

const roomOf = (built: PlanBuilder) => derivePlan(built.plan).spaces[0];
const hall = (change: Partial<Enclosure> = {}) => planBuilder().room(6, 4, 3, undefined, change);

describe('ceiling zones', () => {
  const lowered = () => hall().ceilingZone(rectangle(2, 4, planPoint(2, 0)), 2.4);

  test.each([
    ['in the zone', planPoint(3, 1), 2.4],
    ['beside it', planPoint(1, 1), 3],
    ['on its side: the lower counts', planPoint(2, 1), 2.4],
    ['a hair beside its side', planPoint(1.9999, 1), 3],
  ])('%s', (_, at, height_m) => {
    expect(roomOf(lowered())?.ceilingAt_m(at)).toBe(height_m);
  });

  test('take their part of the volume', () => {
    expect(roomOf(lowered())?.grossVolume_m3).toBeCloseTo(8 * 2.4 + 16 * 3, 6);
    expect(roomOf(lowered())?.tallest_m).toBe(3);
  });

  test('a raised one beats the slab inside, but not on its side', () => {
    const raised = roomOf(hall().ceilingZone(rectangle(2, 4, planPoint(2, 0)), 4));
    expect(raised?.ceilingAt_m(planPoint(3, 1))).toBe(4);
    expect(raised?.ceilingAt_m(planPoint(2, 1))).toBe(3);
    expect(raised?.tallest_m).toBe(4);
    expect(raised?.grossVolume_m3).toBeCloseTo(8 * 4 + 16 * 3, 6);
  });

  test('the lowest wins where several overlap, whichever was drawn first', () => {
    for (const heights of [
      [2.4, 2.6],
      [2.6, 2.4],
    ] as const) {
      const both = roomOf(hall().ceilingZone(rectangle(3, 4), heights[0]).ceilingZone(rectangle(3, 4, planPoint(2, 0)), heights[1]));
      expect(both?.ceilingAt_m(planPoint(2.5, 1))).toBe(2.4);
    }
    const nested = roomOf(hall().ceilingZone(rectangle(6, 4), 2.6).ceilingZone(rectangle(1, 1), 2.4));
    expect(nested?.grossVolume_m3).toBeCloseTo(2.4 + 23 * 2.6, 6);
    expect(nested?.tallest_m).toBe(2.6);
  });

  test('over the whole room make a slab of unknown height known, over a part they do not', () => {
    const whole = roomOf(planBuilder().room(6, 4, null).ceilingZone(rectangle(8, 6, planPoint(-1, -1)), 2.5));
    expect(whole).toMatchObject({ tallest_m: 2.5 });
    expect(whole?.grossVolume_m3).toBeCloseTo(60, 6);
    const part = roomOf(planBuilder().room(6, 4, null).ceilingZone(rectangle(3, 4), 2.5));
    expect(part).toMatchObject({ tallest_m: undefined, grossVolume_m3: undefined });
    expect(part?.ceilingAt_m(planPoint(1, 1))).toBe(2.5);
    expect(part?.ceilingAt_m(planPoint(5, 1))).toBeUndefined();
  });

  test('beside the room change nothing', () => {
    expect(roomOf(hall().ceilingZone(rectangle(1, 1, planPoint(20, 0)), 1))?.grossVolume_m3).toBeCloseTo(72, 9);
  });
});

describe('a sloped ceiling', () => {
  const slope = { at: { x: 0, y: 0 }, direction_rad: 0, rise: 0.1 };

  test('rises in its direction only', () => {
    const room = roomOf(hall({ slope }));
    expect(room?.ceilingAt_m(planPoint(0, 3))).toBeCloseTo(3, 12);
    expect(room?.ceilingAt_m(planPoint(6, 3))).toBeCloseTo(3.6, 12);
    expect(room?.tallest_m).toBeCloseTo(3.6, 12);
    expect(room?.grossVolume_m3).toBeCloseTo(24 * 3.3, 9);
  });

  test('ends at the floor where it would dive below it', () => {
    const room = roomOf(hall({ slope: { ...slope, rise: -1 } }));
    expect(room?.ceilingAt_m(planPoint(5, 1))).toBe(0);
    expect(room?.grossVolume_m3).toBeCloseTo(4 * 3 * 3 * 0.5, 9);
  });

  test('gives way to a zone', () => {
    const room = roomOf(hall({ slope }).ceilingZone(rectangle(2, 4), 2.5));
    expect(room?.ceilingAt_m(planPoint(1, 1))).toBe(2.5);
    expect(room?.grossVolume_m3).toBeCloseTo(8 * 2.5 + 16 * 3.4, 5);
  });

  test('has the volume that adding up many small columns gives', () => {
    const tenth = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(tenth(-3, 3), tenth(0, 6), fc.array(fc.record({ x: tenth(-1, 5), y: tenth(-1, 3), height_m: tenth(1, 4) }), { maxLength: 3 }), (rise, direction_rad, zones) => {
        const built = hall({ slope: { at: { x: 1, y: 2 }, direction_rad, rise: rise / 10 } });
        for (const { x, y, height_m } of zones) built.ceilingZone(rectangle(2, 1.5, planPoint(x, y)), height_m);
        const room = roomOf(built);
        let columns_m3 = 0;
        const step = 0.05;
        for (let x = step / 2; x < 6; x += step) for (let y = step / 2; y < 4; y += step) columns_m3 += (room?.ceilingAt_m(planPoint(x, y)) ?? 0) * step * step;
        expect(Math.abs((room?.grossVolume_m3 ?? 0) - columns_m3)).toBeLessThan(0.02);
      }),
      { numRuns: 25 },
    );
  });
});

test('without a floor nothing is known', () => {
  const [enclosure] = Object.values(hall().plan.levels['level-0']?.enclosures ?? {});
  if (!enclosure) throw new Error('The plan has no enclosure.');
  expect(ceilingOf(enclosure, [], 0)).toMatchObject({ lowest_m: undefined, tallest_m: undefined, volume_m3: undefined });
  const floor = fillOf([rectangle(1, 1)]);
  expect(ceilingOf(enclosure, floor, area_m2(rectangle(1, 1))).volume_m3).toBe(3);
});
