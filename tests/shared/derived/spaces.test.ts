import { describe, expect, test } from 'vitest';
import type { Space } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { floorAt_m } from '#shared/derived/spaces';
import { isCounterClockwise, rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { type PlanBuilder, planBuilder } from '../../support/plan-builder.ts';

const spacesIn = (built: PlanBuilder): readonly Space[] => derivePlan(built.plan).spaces;
function onlySpace(built: PlanBuilder): Space {
  const [space] = spacesIn(built);
  if (!space) throw new Error('The plan has no space.');
  return space;
}
const hall = () => planBuilder().room(6, 4, 2.7);

describe('a room', () => {
  test('has its area, volume and name, and reaches from floor to ceiling', () => {
    expect(onlySpace(hall())).toMatchObject({ kind: 'room', name: 'Room 1', floor_m: 0, tallest_m: 2.7, area_m2: 24, isProtected: true });
    expect(onlySpace(hall()).grossVolume_m3).toBeCloseTo(64.8, 9);
  });

  test('without a height has a floor area but neither ceiling nor volume', () => {
    const space = onlySpace(planBuilder().room(6, 4, null));
    expect(space).toMatchObject({ area_m2: 24, tallest_m: undefined, grossVolume_m3: undefined });
    expect(space.ceilingAt_m(planPoint(1, 1))).toBeUndefined();
  });

  test('loses the area of its holes', () => {
    expect(onlySpace(hall().hole(rectangle(1, 2, planPoint(1, 1)))).area_m2).toBe(22);
  });

  test('loses only the part of a hole that lies in it, and that of holes that overlap only once', () => {
    const built = hall().hole(rectangle(2, 2, planPoint(5, 1))).hole(rectangle(1, 1, planPoint(1, 1))).hole(rectangle(1, 1, planPoint(1.5, 1)));
    expect(onlySpace(built).area_m2).toBeCloseTo(24 - 2 - 1.5, 6);
  });
});

describe('the voids of an enclosure', () => {
  const built = planBuilder().room(6, 4, 3, undefined, { underFloor: { depth_m: 0.4, isProtected: false, exclusion: null }, ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } });
  const [room, under, over] = spacesIn(built);

  test('come after the room, each with its own heights', () => {
    expect(room).toMatchObject({ kind: 'room', floor_m: 0, tallest_m: 3 });
    expect(under).toMatchObject({ kind: 'under-floor', name: 'Room 1, under floor', floor_m: -0.4, tallest_m: 0, isProtected: false });
    expect(over).toMatchObject({ kind: 'ceiling-void', name: 'Room 1, ceiling void', floor_m: 3, tallest_m: 3.5, isProtected: true });
    expect(under?.grossVolume_m3).toBeCloseTo(9.6, 9);
    expect(over?.grossVolume_m3).toBeCloseTo(12, 9);
    expect(under?.ceilingAt_m(planPoint(1, 1))).toBe(0);
    expect(over?.ceilingAt_m(planPoint(1, 1))).toBe(3.5);
  });

  test('over a ceiling of unknown height is unknown too', () => {
    const [, unknown] = spacesIn(planBuilder().room(6, 4, null, undefined, { ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } }));
    expect(unknown?.tallest_m).toBeUndefined();
    expect(unknown && floorAt_m(unknown, planPoint(1, 1))).toBeUndefined();
  });

  test('over a ceiling of several heights follows it', () => {
    const [, stepped] = spacesIn(
      planBuilder().room(6, 4, 3, undefined, { ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } }).ceilingZone(rectangle(2, 4), 2.4),
    );
    expect(stepped?.floor_m).toBe(2.4);
    expect(stepped && floorAt_m(stepped, planPoint(1, 1))).toBeCloseTo(2.4, 12);
    expect(stepped && floorAt_m(stepped, planPoint(4, 1))).toBe(3);
    expect(stepped?.ceilingAt_m(planPoint(4, 1))).toBe(3.5);
  });
});

describe('walls and corners', () => {
  test.each([
    ['drawn counter-clockwise', rectangle(6, 4)],
    ['drawn clockwise', rectangle(6, 4).toReversed()],
  ])('of a room %s face into it', (_, ring) => {
    const space = onlySpace(planBuilder().outline(ring, 2.7));
    expect(isCounterClockwise(space.outline)).toBe(true);
    expect(space.walls).toHaveLength(4);
    for (const { segment, inward_rad } of space.walls) {
      const middle = planPoint((segment.a.x + segment.b.x) / 2 + Math.cos(inward_rad) * 0.1, (segment.a.y + segment.b.y) / 2 + Math.sin(inward_rad) * 0.1);
      expect(middle.x).toBeGreaterThan(0);
      expect(middle.x).toBeLessThan(6);
      expect(middle.y).toBeGreaterThan(0);
      expect(middle.y).toBeLessThan(4);
    }
    expect(space.convexCorners).toHaveLength(4);
  });

  test('keep the corner id that names them, whichever way the room was drawn', () => {
    const clockwise = planBuilder().outline(rectangle(6, 4).toReversed(), 2.7);
    const drawn = Object.values(clockwise.plan.levels['level-0']?.enclosures ?? {})[0]?.outline ?? [];
    const space = onlySpace(clockwise);
    for (const { ref, segment } of space.walls) {
      const i = drawn.findIndex(({ id }) => id === ref.id);
      const ends = [drawn[i], drawn[(i + 1) % drawn.length]].map((corner) => ({ x: corner?.x, y: corner?.y }));
      expect(ends).toContainEqual(segment.a);
      expect(ends).toContainEqual(segment.b);
    }
  });

  test('of an L have five corners that trap gas, not the sixth', () => {
    const ring = [planPoint(0, 0), planPoint(6, 0), planPoint(6, 2), planPoint(3, 2), planPoint(3, 5), planPoint(0, 5)];
    const corners = onlySpace(planBuilder().outline(ring, 3)).convexCorners.map(({ at }) => at);
    expect(corners).toHaveLength(5);
    expect(corners).not.toContainEqual(planPoint(3, 2));
  });

  test('of a column trap nothing, the notch of a star-shaped shaft does', () => {
    expect(onlySpace(hall().hole(rectangle(1, 1, planPoint(2, 1)))).convexCorners).toHaveLength(4);
    const notched = [planPoint(2, 1), planPoint(4, 1), planPoint(4, 3), planPoint(3, 2), planPoint(2, 3)];
    const corners = onlySpace(hall().hole(notched)).convexCorners.map(({ at }) => at);
    expect(corners).toHaveLength(5);
    expect(corners).toContainEqual(planPoint(3, 2));
  });

  test('a corner along a straight wall traps nothing, and one drawn twice has no wall', () => {
    const ring = [planPoint(0, 0), planPoint(3, 0), planPoint(6, 0), planPoint(6, 4), planPoint(6, 4), planPoint(0, 4)];
    const space = onlySpace(planBuilder().outline(ring, 3));
    expect(space.walls).toHaveLength(5);
    expect(space.convexCorners).toHaveLength(4);
  });

  test('faces of a corner are the wall before it and the wall after it', () => {
    for (const { at, faces } of onlySpace(hall()).convexCorners) {
      expect(faces[0].segment.b).toEqual(at);
      expect(faces[1].segment.a).toEqual(at);
    }
  });
});

describe('solids of a space', () => {
  const names = (space: Space | undefined) => space?.solids.map(({ obstruction }) => obstruction.kind);
  const box = (x: number, y: number) => rectangle(1, 1, planPoint(x, y));

  test.each([
    ['inside', box(2, 2), true],
    ['half inside', box(5.5, 2), true],
    ['touching a wall from outside', box(6, 2), true],
    ['outside', box(6.01, 2), false],
    ['around the whole room', rectangle(20, 20, planPoint(-5, -5)), true],
    ['across the room, corners outside', rectangle(8, 1, planPoint(-1, 1)), true],
  ])('%s', (_, footprint, belongs) => {
    expect(names(onlySpace(hall().obstruction('rack', footprint, 0, 2)))).toEqual(belongs ? ['rack'] : []);
  });

  test('in a shaft do not count, reaching out of it they do', () => {
    const shaft = () => hall().hole(rectangle(2, 2, planPoint(1, 1)));
    expect(names(onlySpace(shaft().obstruction('duct', rectangle(1, 1, planPoint(1.5, 1.5)), 0, 2)))).toEqual([]);
    expect(names(onlySpace(shaft().obstruction('duct', rectangle(2, 1, planPoint(1.5, 1.5)), 0, 2)))).toEqual(['duct']);
  });

  test('belong to the spaces whose heights they share', () => {
    const built = planBuilder()
      .room(6, 4, 3, undefined, { underFloor: { depth_m: 0.4, isProtected: true, exclusion: null }, ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } })
      .obstruction('rack', box(1, 1), 0, 2)
      .obstruction('tray', box(1, 1), -0.4, -0.1)
      .obstruction('duct', box(1, 1), 3, 3.4)
      .obstruction('column', box(4, 1), -0.4, 3.5);
    expect(spacesIn(built).map(names)).toEqual([
      ['rack', 'column'],
      ['tray', 'column'],
      ['duct', 'column'],
    ]);
  });

  test('drawn upside down have their heights put right', () => {
    expect(onlySpace(hall().obstruction('rack', box(2, 2).toReversed(), 2, 0.5)).solids[0]).toMatchObject({ bottom_m: 0.5, top_m: 2, footprint: box(2, 2) });
  });
});
