import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { governingFaces, nearestClearanceFace } from '#shared/derived/clearance-faces';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Space } from '#shared/derived/derived';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { type PlanBuilder, planBuilder, place3 as p } from '../../support/plan-builder.ts';
import { anyPlacing, movedPlace, movedPlan } from './placed-plan.ts';

function roomOf(built: PlanBuilder): Space {
  const [space] = derivePlan(built.plan).spaces;
  if (!space) throw new Error('The plan has no space.');
  return space;
}
const hall = (height_m: number | null = 3) => planBuilder().room(6, 4, height_m);
const column = rectangle(0.5, 0.5, planPoint(3, 2));

describe('faces that a nozzle must stand clear of', () => {
  test.each([
    ['floor to ceiling', 0, 3, 8],
    ['a millimetre short at both ends', 0.001, 2.999, 8],
    ['two millimetres short of the ceiling', 0, 2.998, 4],
    ['two millimetres off the floor', 0.002, 3, 4],
    ['a beam', 2.5, 3, 4],
  ])('a thing %s', (_, bottom_m, top_m, faces) => {
    expect(governingFaces(roomOf(hall().obstruction('column', column, bottom_m, top_m)), 2.8)).toHaveLength(faces);
  });

  test('a thing as high as the lowered ceiling over it counts', () => {
    const built = hall().ceilingZone(rectangle(2, 2, planPoint(2.5, 1.5)), 2.4).obstruction('column', column, 0, 2.4);
    expect(governingFaces(roomOf(built), 2.2)).toHaveLength(8);
  });

  test('while the ceiling is unknown, a thing that stands past the orifice counts', () => {
    const room = roomOf(hall(null).obstruction('column', column, 0, 2.4));
    expect(governingFaces(room, 2.2)).toHaveLength(8);
    expect(governingFaces(room, 2.6)).toHaveLength(4);
  });

  test('in an under-floor void count pedestals from its floor to the tiles', () => {
    const built = planBuilder()
      .room(6, 4, 3, undefined, { underFloor: { depth_m: 0.4, isProtected: true, exclusion: null } })
      .obstruction('column', column, -0.4, 0);
    const [, under] = derivePlan(built.plan).spaces;
    expect(under && governingFaces(under, -0.1)).toHaveLength(8);
  });
});

describe('the nearest of them', () => {
  test.each([
    ['west', p(0.3, 2, 2.8), 0.3, planPoint(0, 2), 'the west wall'],
    ['east', p(5.9, 2, 2.8), 0.1, planPoint(6, 2), 'the east wall'],
    ['north', p(3, 3.5, 2.8), 0.5, planPoint(3, 4), 'the north wall'],
    ['south', p(3, 0.254, 2.8), 0.254, planPoint(3, 0), 'the south wall'],
    ['on a wall', p(3, 0, 2.8), 0, planPoint(3, 0), 'the south wall'],
  ])('%s', (_, at, far_m, place, name) => {
    const near = nearestClearanceFace(roomOf(hall()), at);
    expect(near).toMatchObject({ at: place, name });
    expect(near?.distance_m).toBeCloseTo(far_m, 12);
  });

  test('may be the side of a column or of a shaft, and points away from it', () => {
    const byColumn = nearestClearanceFace(roomOf(hall().obstruction('column', column, 0, 3)), p(2.8, 2.2, 2.8));
    expect(byColumn).toMatchObject({ name: 'column', at: planPoint(3, 2.2), ref: { kind: 'obstruction' } });
    expect(byColumn?.distance_m).toBeCloseTo(0.2, 12);
    expect(Math.cos(byColumn?.inward_rad ?? 0)).toBeCloseTo(-1, 12);
    const byShaft = nearestClearanceFace(roomOf(hall().hole(column)), p(2.8, 2.2, 2.8));
    expect(byShaft).toMatchObject({ name: 'a wall of a shaft', ref: { kind: 'wall' } });
    expect(Math.cos(byShaft?.inward_rad ?? 0)).toBeCloseTo(-1, 12);
  });

  test('is at no distance from inside a column, a shaft or a wall', () => {
    expect(nearestClearanceFace(roomOf(hall().obstruction('column', column, 0, 3)), p(3.25, 2.25, 2.8))?.distance_m).toBe(0);
    expect(nearestClearanceFace(roomOf(hall().hole(column)), p(3.25, 2.25, 2.8))?.distance_m).toBe(0);
    expect(nearestClearanceFace(roomOf(hall()), p(-1, 2, 2.8))?.distance_m).toBe(0);
    expect(nearestClearanceFace(roomOf(hall().obstruction('beam', column, 2.5, 3)), p(3.25, 2.25, 2.8))?.distance_m).toBeCloseTo(1.75, 12);
  });

  test('stays as far when the plan is turned, shifted or mirrored', () => {
    const built = hall().obstruction('column', column, 0, 3);
    const place = fc.record({ x: fc.integer({ min: 1, max: 59 }), y: fc.integer({ min: 1, max: 39 }) });
    fc.assert(
      fc.property(place, anyPlacing, ({ x, y }, placing) => {
        const at = p(x / 10, y / 10, 2.8);
        const here = nearestClearanceFace(roomOf(built), at);
        const [moved] = derivePlan(movedPlan(built.plan, placing)).spaces;
        const there = moved && nearestClearanceFace(moved, movedPlace(at, placing));
        expect(there?.distance_m).toBeCloseTo(here?.distance_m ?? -1, 9);
      }),
    );
  });
});
