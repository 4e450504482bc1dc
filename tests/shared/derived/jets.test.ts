import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { jetsOf } from '#shared/derived/jets';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Nozzle } from '#shared/model/plan';
import { type PlanBuilder, planBuilder } from '../../support/plan-builder.ts';
import { nozzleOf } from './one-nozzle.ts';
import { anyPlacing, movedPlan } from './placed-plan.ts';

const [EAST, NORTH, WEST, SOUTH] = [0, Math.PI / 2, Math.PI, -Math.PI / 2];
const hall = () => planBuilder().room(6, 4, 3);
const runs = (built: PlanBuilder, x: number, y: number, holes_rad: readonly number[], change: Partial<Nozzle> = {}) =>
  jetsOf(nozzleOf(built.nozzle(x, y, 2.5, holes_rad, change))).map(({ length_m, hit }) => [Number(length_m.toFixed(9)), hit?.kind ?? null]);

describe('a jet runs free', () => {
  test('to the walls', () => {
    expect(runs(hall(), 1, 1.5, [EAST, NORTH, WEST, SOUTH])).toEqual([
      [5, 'wall'],
      [2.5, 'wall'],
      [1, 'wall'],
      [1.5, 'wall'],
    ]);
  });

  test('to where it says, and names the wall', () => {
    const built = hall();
    const [jet] = jetsOf(nozzleOf(built.nozzle(1, 1.5, 2.5, [EAST])));
    expect(jet).toMatchObject({ from: { x: 1, y: 1.5 }, to: { x: 6, y: 1.5 }, hit: built.wall(1), azimuth_rad: 0 });
  });

  test('turned with its nozzle', () => {
    expect(runs(hall(), 1, 1.5, [EAST], { rotation_rad: NORTH })).toEqual([[2.5, 'wall']]);
  });

  test('into a corner, slantwise, without slipping through', () => {
    expect(runs(hall(), 3, 1, [Math.PI / 4])).toEqual([[Number((3 * Math.SQRT2).toFixed(9)), 'wall']]);
    expect(runs(hall(), 1, 1, [(-3 * Math.PI) / 4])).toEqual([[Number(Math.SQRT2.toFixed(9)), 'wall']]);
  });

  test.each([
    ['cut by the plane of the orifice', 0, 3, [3, 'obstruction']],
    ['ending below it', 0, 2.4, [5, 'wall']],
    ['hanging above it', 2.6, 3, [5, 'wall']],
    ['hanging through it', 2.4, 3, [3, 'obstruction']],
  ])('past or to a thing %s', (_, bottom_m, top_m, expected) => {
    expect(runs(hall().obstruction('rack', rectangle(0.5, 2, planPoint(4, 1)), bottom_m, top_m), 1, 1.5, [EAST])).toEqual([expected]);
  });

  test('to a shaft', () => {
    expect(runs(hall().hole(rectangle(1, 1, planPoint(3, 1))), 1, 1.5, [EAST])).toEqual([[2, 'wall']]);
  });

  test('grazing the corner of a thing meets it', () => {
    expect(runs(hall().obstruction('rack', rectangle(1, 1, planPoint(4, 1.5)), 0, 3), 1, 1.5, [EAST])).toEqual([[3, 'obstruction']]);
    expect(runs(hall().obstruction('rack', rectangle(1, 1, planPoint(4, 1.501)), 0, 3), 1, 1.5, [EAST])).toEqual([[5, 'wall']]);
  });

  test('along a wall that the nozzle touches and away from it, but not into it', () => {
    expect(runs(hall(), 3, 0, [EAST, NORTH, SOUTH, -0.01])).toEqual([
      [3, 'wall'],
      [4, 'wall'],
      [0, 'wall'],
      [0, 'wall'],
    ]);
  });

  test('not at all from inside a thing', () => {
    expect(runs(hall().obstruction('duct', rectangle(2, 2, planPoint(1, 1)), 2, 3), 2, 2, [EAST, WEST])).toEqual([
      [0, 'obstruction'],
      [0, 'obstruction'],
    ]);
  });

  test('away from a thing that the nozzle touches', () => {
    expect(runs(hall().obstruction('duct', rectangle(2, 2, planPoint(1, 1)), 2, 3), 3, 2, [EAST, WEST])).toEqual([
      [3, 'wall'],
      [0, 'obstruction'],
    ]);
  });

  test('from no place in no space', () => {
    expect(runs(hall(), 9, 9, [EAST])).toEqual([]);
  });

  test('out of sight where the nozzle serves a space it is not in', () => {
    const built = hall();
    const serves = { enclosure: built.enclosure.id, space: 'room' } as const;
    const [away, toward] = jetsOf(nozzleOf(built.nozzle(8, 2, 2.5, [EAST, WEST], { serves })));
    expect(away?.hit).toBeNull();
    expect(away?.length_m).toBeGreaterThan(6);
    expect(toward).toMatchObject({ length_m: 2, hit: { kind: 'wall' } });
  });
});

test('turning, shifting and mirroring the plan change no jet', () => {
  const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10 + 0.013);
  fc.assert(
    fc.property(tenths(1, 58), tenths(1, 38), fc.array(tenths(0, 62), { minLength: 1, maxLength: 4 }), anyPlacing, (x, y, holes_rad, placing) => {
      const built = hall().hole(rectangle(1, 1, planPoint(1, 2))).obstruction('rack', rectangle(0.5, 2, planPoint(4, 1)), 0, 3).nozzle(x, y, 2.5, holes_rad);
      const [moved] = derivePlan(movedPlan(built.plan, placing)).nozzles;
      const facts = (jets: ReturnType<typeof jetsOf>) => jets.map(({ length_m, hit }) => [length_m.toFixed(6), hit?.id]);
      expect(facts(moved ? jetsOf(moved) : [])).toEqual(facts(jetsOf(nozzleOf(built))));
    }),
  );
});
