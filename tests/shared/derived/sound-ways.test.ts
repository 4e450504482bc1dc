import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { floorBelow, leastOverFloor, openFloor } from '#shared/derived/least-over-floor';
import { isOnFloor, isStraightWay, soundFloorOf, soundWaysFrom } from '#shared/derived/sound-ways';
import { momentsOf } from '#shared/geometry/moments';
import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint, distance_m, planPoint } from '#shared/geometry/point';
import { type LayoutSpec, anyPlacing, layout, placed, placedLayout } from '../../support/layout.ts';

const EAR_m = 1.5;

function floorOf(spec: LayoutSpec, plan = layout(spec)) {
  const [space] = derivePlan(plan).spaces;
  if (!space) throw new Error('The layout has its room.');
  return soundFloorOf(space, EAR_m);
}

/** 8 m along each leg, 3 m wide; the inner corner at (3, 3). */
const ELL = [planPoint(0, 0), planPoint(8, 0), planPoint(8, 3), planPoint(3, 3), planPoint(3, 8), planPoint(0, 8)];
const partition = { kind: 'partition' as const, footprint: [planPoint(3, 0), planPoint(3.1, 0), planPoint(3.1, 3), planPoint(3, 3)], bottom_m: 0, top_m: 2.7 };

describe('the way of sound', () => {
  test('is straight in a rectangular room', () => {
    const ways = soundWaysFrom(floorOf({}), planPoint(0, 0));
    expect(ways.distanceTo_m(planPoint(6, 4))).toBeCloseTo(Math.hypot(6, 4), 12);
    expect(ways.distanceTo_m(planPoint(0, 0))).toBe(0);
  });

  // By hand: from (7, 1.5) round the corner (3, 3) to (1.5, 7): √(4² + 1.5²) + √(1.5² + 4²) = 2·4.272.
  test('bends round the inner corner of an L', () => {
    const ways = soundWaysFrom(floorOf({ room: ELL }), planPoint(7, 1.5));
    expect(ways.distanceTo_m(planPoint(1.5, 7))).toBeCloseTo(2 * Math.hypot(4, 1.5), 9);
    expect(ways.distanceTo_m(planPoint(0, 0))).toBeCloseTo(Math.hypot(7, 1.5), 9);
  });

  // By hand: from (1, 0.5) past the end of the partition at y 3 to (5, 0.5): √(2² + 2.5²) + 0.1 + √(1.9² + 2.5²).
  test('goes round a partition as high as the room', () => {
    const ways = soundWaysFrom(floorOf({ obstructions: [partition] }), planPoint(1, 0.5));
    expect(ways.distanceTo_m(planPoint(5, 0.5))).toBeCloseTo(Math.hypot(2, 2.5) + 0.1 + Math.hypot(1.9, 2.5), 9);
  });

  test('goes straight over a lower one and past a slim one', () => {
    expect(soundWaysFrom(floorOf({ obstructions: [{ ...partition, top_m: 2 }] }), planPoint(1, 0.5)).distanceTo_m(planPoint(5, 0.5))).toBeCloseTo(4, 12);
    const column = { ...partition, footprint: rectangle(0.4, 0.4, planPoint(3, 0.3)) };
    expect(soundWaysFrom(floorOf({ obstructions: [column] }), planPoint(1, 0.5)).distanceTo_m(planPoint(5, 0.5))).toBeCloseTo(4, 12);
  });

  test('ends at a partition from wall to wall', () => {
    const closed = { ...partition, footprint: rectangle(0.1, 4, planPoint(3, 0)) };
    expect(soundWaysFrom(floorOf({ obstructions: [closed] }), planPoint(1, 0.5)).distanceTo_m(planPoint(5, 0.5))).toBe(Infinity);
  });

  test('along a wall it is straight, across a corner it is not', () => {
    const floor = floorOf({ room: ELL });
    expect(isStraightWay(floor, planPoint(0, 0), planPoint(8, 0))).toBe(true);
    expect(isStraightWay(floor, planPoint(3, 8), planPoint(3, 3))).toBe(true);
    expect(isStraightWay(floor, planPoint(3, 8), planPoint(8, 3))).toBe(false);
    expect(isOnFloor(floor, planPoint(5, 5))).toBe(false);
  });

  test('is never shorter than straight, and as long there as back, however the building is laid', () => {
    const inEll: fc.Arbitrary<PlanPoint> = fc.record({ along: fc.double({ min: 0.01, max: 7.99, noNaN: true }), aside: fc.double({ min: 0.01, max: 2.99, noNaN: true }), north: fc.boolean() }).map(({ along, aside, north }) => (north ? planPoint(aside, along) : planPoint(along, aside)));
    fc.assert(
      fc.property(inEll, inEll, anyPlacing, (from, to, placing) => {
        const straight = soundWaysFrom(floorOf({ room: ELL }), from).distanceTo_m(to);
        expect(straight).toBeGreaterThanOrEqual(distance_m(from, to) - 1e-9);
        expect(soundWaysFrom(floorOf({ room: ELL }), to).distanceTo_m(from)).toBeCloseTo(straight, 6);
        const turned = soundWaysFrom(floorOf({}, placedLayout({ room: ELL }, placing)), placed(from, placing)).distanceTo_m(placed(to, placing));
        expect(turned).toBeCloseTo(straight, 5);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the least figure over a floor', () => {
  // A figure that only distance changes: least at the corner that is farthest off, or in the middle between four.
  const farFrom = (sources: readonly PlanPoint[]) => (at: PlanPoint, around_m: number) => sources.reduce((sum, source) => sum + 1 / ((distance_m(source, at) + around_m) ** 2 + 1), 0);

  test('is at the far corner for one source', () => {
    expect(leastOverFloor(floorOf({}), farFrom([planPoint(0, 0)]), 1e-4)).toMatchObject({ at: { x: 6, y: 4 }, figure: expect.closeTo(1 / (36 + 16 + 1), 12) });
  });

  test('is found in the open too: in the middle of sources all round', () => {
    const figure = farFrom([planPoint(0, 0), planPoint(6, 0), planPoint(6, 4), planPoint(0, 4), planPoint(3, 0), planPoint(3, 4), planPoint(0, 2), planPoint(6, 2)]);
    const least = leastOverFloor(floorOf({}), figure, 1e-4);
    let sampled = Infinity;
    for (let x = 0; x <= 6; x += 0.02) for (let y = 0; y <= 4; y += 0.02) sampled = Math.min(sampled, figure(planPoint(x, y), 0));
    expect(least?.figure).toBeLessThanOrEqual(sampled + 1e-4);
    expect(least && least.at.x > 0.5 && least.at.x < 5.5 && least.at.y > 0.5 && least.at.y < 3.5).toBe(true);
  });

  test('against samples, in an L with a partition, however it is laid', () => {
    const spec = { room: ELL, obstructions: [{ ...partition, footprint: [planPoint(5, 0), planPoint(5.1, 0), planPoint(5.1, 2), planPoint(5, 2)] }] };
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const floor = floorOf({}, placedLayout(spec, placing));
        const ways = soundWaysFrom(floor, placed(planPoint(7, 0.5), placing));
        const figure = (at: PlanPoint, around_m: number): number => -(ways.distanceTo_m(at) + around_m);
        const least = leastOverFloor(floor, figure, 0.01);
        // By hand: past the partition's end at (5.1, 2), round the corner (3, 3), to the far corner (3, 8) or (0, 8).
        const byHand_m = Math.hypot(1.9, 1.5) + Math.hypot(2.1, 1) + Math.hypot(3, 5);
        expect(-(least?.figure ?? 0)).toBeCloseTo(byHand_m, 5);
      }),
      { numRuns: 8 },
    );
  });

  // By hand: 1/(d² + 1) is below 1/10 beyond 3 m: the floor without a quarter circle, 24 − π·9/4 = 16.93 m².
  test('the floor below a limit is shown to within its border', () => {
    const floor = floorOf({});
    const below_m2 = momentsOf(floorBelow(floor, farFrom([planPoint(0, 0)]), 0.1)).area_m2;
    const exact_m2 = 24 - (Math.PI * 9) / 4;
    expect(below_m2).toBeGreaterThan(exact_m2 - 1);
    expect(below_m2).toBeLessThan(exact_m2 + 1);
    expect(momentsOf(openFloor(floor)).area_m2).toBeCloseTo(24, 9);
    expect(floorBelow(floor, farFrom([planPoint(0, 0)]), 0.001)).toEqual([]);
  });
});
