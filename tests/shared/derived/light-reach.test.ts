import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { type AlarmLight, unlitFloor } from '#shared/derived/light-reach';
import { soundFloorOf } from '#shared/derived/sound-ways';
import { planPoint } from '#shared/geometry/point';
import { type LayoutSpec, anyPlacing, layout, placed, placedAngle_rad, placedLayout } from '../../support/layout.ts';

const EAR_m = 1.5;

function dark_m2(spec: LayoutSpec, lights: readonly AlarmLight[], plan = layout(spec)): number {
  const [space] = derivePlan(plan).spaces;
  if (!space) throw new Error('The layout has its room.');
  return unlitFloor(space, soundFloorOf(space, EAR_m), lights, EAR_m).reduce((sum, { area_m2 }) => sum + area_m2, 0);
}

/** In the middle of the south wall of the room of 6 by 4 m. */
const south = (side_m: number, facing_rad: number | null = Math.PI / 2): AlarmLight => ({ at: planPoint(3, 0), facing_rad, side_m });
const ELL = [planPoint(0, 0), planPoint(8, 0), planPoint(8, 3), planPoint(3, 3), planPoint(3, 8), planPoint(0, 8)];

describe('floor that no alarm light reaches', () => {
  test.each<[string, readonly AlarmLight[], number]>([
    ['a square as wide as the room', [south(6)], 0],
    ['the same without a direction: that of its wall', [south(6, null)], 0],
    ['one that is too short leaves a strip and two sides', [south(3)], 24 - 9],
    ['one that faces the wall sees nothing', [south(6, -Math.PI / 2)], 24],
    ['none', [], 24],
    ['one too weak for any room', [south(0)], 24],
    // Off every wall it serves the circle within its square: π·2² of the floor, less 0.07 % of the polygon in it.
    ['one in the open without a direction', [{ at: planPoint(3, 2), facing_rad: null, side_m: 4 }], 24 - Math.PI * 4],
  ])('%s', (_, lights, expected_m2) => {
    const found_m2 = dark_m2({}, lights);
    expect(found_m2).toBeGreaterThanOrEqual(expected_m2 - 1e-3);
    expect(found_m2).toBeLessThanOrEqual(expected_m2 + 0.07);
  });

  // By hand: from the east wall at (8, 1.5) sight ends at the corner (3, 3); it meets the west wall x 0 at y 3.9.
  // Dark is the north leg over that line: 3·5 − triangle 3·0.9/2 = 13.65 m².
  test('a wall hides what is round the corner', () => {
    const found_m2 = dark_m2({ room: ELL }, [{ at: planPoint(8, 1.5), facing_rad: Math.PI, side_m: 20 }]);
    expect(Math.abs(found_m2 - 13.65)).toBeLessThan(0.02);
  });

  test('things hide floor only when they are as high as the room', () => {
    const wall = { kind: 'partition' as const, footprint: [planPoint(0, 2), planPoint(6, 2), planPoint(6, 2.1), planPoint(0, 2.1)], bottom_m: 0, top_m: 2.7 };
    expect(dark_m2({ obstructions: [wall] }, [south(6)])).toBeCloseTo(6 * 1.9, 2);
    expect(dark_m2({ obstructions: [{ ...wall, top_m: 2 }] }, [south(6)])).toBe(0);
  });

  test('turning and mirroring changes nothing', () => {
    const straight_m2 = dark_m2({ room: ELL }, [{ at: planPoint(8, 1.5), facing_rad: Math.PI, side_m: 6 }]);
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const light = { at: placed(planPoint(8, 1.5), placing), facing_rad: placedAngle_rad(Math.PI, placing), side_m: 6 };
        // A wall that is turned may stand a grid step off its light.
        expect(Math.abs(dark_m2({}, [light], placedLayout({ room: ELL }, placing)) - straight_m2)).toBeLessThan(1e-3);
      }),
      { numRuns: 40 },
    );
  });
});
