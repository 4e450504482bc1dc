import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planBuilder } from '../../../support/plan-builder.ts';
import { enclosureSums, known, reason, roomOf } from '../../../support/whole-plan.ts';

describe('volume of an enclosure', () => {
  test('adds up its protected spaces and leaves the others out', () => {
    const built = planBuilder().room(5, 4, 2.5, { x: 0, y: 0 }, { underFloor: { depth_m: 0.3, isProtected: true, exclusion: null }, ceilingVoid: { depth_m: 0.5, isProtected: false, exclusion: null } });
    const sums = known(enclosureSums(built).volume);
    expect(sums.gross_m3).toBeCloseTo(5 * 4 * (2.5 + 0.3), 9);
    expect(sums.net_m3).toBeCloseTo(sums.gross_m3, 9);
    expect(sums.spaces.map(({ space }) => space.kind)).toEqual(['room', 'under-floor']);
  });

  test('names each solid once with what it takes off by itself, in the room and in the void together', () => {
    const built = planBuilder()
      .room(5, 4, 2.5, { x: 0, y: 0 }, { underFloor: { depth_m: 0.3, isProtected: true, exclusion: null } })
      .obstruction('column', rectangle(1, 1, { x: 1, y: 1 }), -0.3, 2.5, { name: 'Column' })
      .obstruction('beam', rectangle(1, 4, { x: 1.5, y: 0 }), 2, 2.5, { name: 'Beam' })
      .obstruction('rack', rectangle(1, 1, { x: 3, y: 1 }), 0, 2, { name: 'Rack', isPermeable: true });
    const { deductions, gross_m3, net_m3 } = known(enclosureSums(built).volume);
    expect(deductions.map(({ name, volume_m3 }) => [name, Math.round(volume_m3 * 1e6) / 1e6])).toEqual([
      ['Column', 2.8],
      ['Beam', 2],
    ]);
    // They share 0.5 m² of half a metre.
    expect(gross_m3 - net_m3).toBeCloseTo(2.8 + 2 - 0.25, 6);
  });

  test('takes a column off a ceiling void only over its own floor, where the ceiling steps', () => {
    const built = planBuilder()
      .room(5, 4, 3, { x: 0, y: 0 }, { ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } })
      .ceilingZone(rectangle(1, 4), 2.4)
      .obstruction('column', rectangle(0.5, 0.5, { x: 3, y: 1 }), 0, 4);
    const { spaces } = known(enclosureSums(built).volume);
    expect(spaces.map(({ gross_m3, net_m3 }) => gross_m3 - net_m3)).toEqual([expect.closeTo(0.25 * 3, 6), expect.closeTo(0.25 * 0.5, 6)]);
  });

  test('where the ceiling steps over a column, errs toward more agent', () => {
    const built = planBuilder()
      .room(5, 4, 3, { x: 0, y: 0 }, { ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } })
      .ceilingZone(rectangle(2.25, 4, { x: 1, y: 0 }), 2.4)
      .obstruction('column', rectangle(0.5, 0.5, { x: 3, y: 1 }), 0, 4);
    const { spaces } = known(enclosureSums(built).volume);
    // Over the highest floor of 3 m and under the lowest ceiling of 2.9 m nothing of the void is left.
    expect(spaces.map(({ gross_m3, net_m3 }) => gross_m3 - net_m3)).toEqual([expect.closeTo(0.25 * 2.4, 6), 0]);
  });

  test('is not known without a height, and not when nothing is left', () => {
    expect(reason(enclosureSums(planBuilder().room(5, 4, null)).volume)).toBe('the height of “Room 1” is not known.');
    const filled = planBuilder().room(5, 4, 2.5).obstruction('column', rectangle(6, 6, { x: -0.5, y: -0.5 }), 0, 3);
    expect(reason(enclosureSums(filled).volume)).toBe('the enclosure has no volume.');
    roomOf(filled).height_m = 0;
    expect(reason(enclosureSums(filled).volume)).toBe('the enclosure has no volume.');
  });
});
