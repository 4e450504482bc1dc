import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Enclosure } from '#shared/model/plan';
import { lowHeight_m, withSlope } from '../../../src-renderer/panels/bench/slope-form.ts';
import { planBuilder } from '../../support/plan-builder.ts';

/** Rooms of 6 × 4 m, each drawn from another corner on. */
const drawnFrom = [0, 1, 2, 3].map((shift) => {
  const { plan } = planBuilder().room(6, 4, 3);
  const room = Object.values(plan.levels['level-0']?.enclosures ?? {})[0];
  if (!room) throw new Error('The plan has no room.');
  room.outline = [...room.outline.slice(shift), ...room.outline.slice(0, shift)];
  return { plan, room };
});
const apply = (room: Enclosure, change: Parameters<typeof withSlope>[1]): Enclosure => Object.assign(room, withSlope(room, change));

describe('a sloped ceiling', () => {
  test.each(drawnFrom.map((drawn, i) => [i, drawn] as const))('has its height at its lowest place, drawn from corner %i on', (_, { plan, room }) => {
    apply(room, { direction_rad: 0, rise: 0.1 });
    const ceilingAt_m = (x: number, y: number) => derivePlan(structuredClone(plan)).spaces[0]?.ceilingAt_m({ x, y });
    expect(ceilingAt_m(0.001, 2)).toBeCloseTo(3, 2);
    expect(ceilingAt_m(5.999, 2)).toBeCloseTo(3.6, 2);
    apply(room, { direction_rad: Math.PI / 2 });
    expect(ceilingAt_m(3, 0.001)).toBeCloseTo(3, 2);
    expect(ceilingAt_m(3, 3.999)).toBeCloseTo(3.4, 2);
    apply(room, { low_m: 2.5, rise: -0.1 });
    expect(ceilingAt_m(3, 3.999)).toBeCloseTo(2.5, 2);
    expect(lowHeight_m(room)).toBeCloseTo(2.5, 9);
  });

  test('goes on telling its lowest height when a wall was moved out on the low side', () => {
    const room = structuredClone(drawnFrom[0]?.room) as Enclosure;
    Object.assign(room, { height_m: 3, slope: { at: { x: 0, y: 0 }, direction_rad: 0, rise: 0.1 } });
    for (const corner of room.outline) if (corner.x === 0) corner.x = -1;
    expect(lowHeight_m(room)).toBeCloseTo(2.9, 9);
  });

  test('without a height tells none', () => {
    const room = structuredClone(drawnFrom[0]?.room) as Enclosure;
    room.height_m = null;
    expect(withSlope(room, { rise: 0.1 })).toMatchObject({ height_m: null, slope: { rise: 0.1 } });
    expect(lowHeight_m(room)).toBeNull();
  });
});
