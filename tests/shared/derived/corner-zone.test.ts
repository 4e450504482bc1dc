import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cornersNear } from '#shared/derived/corner-zone';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { planBuilder } from '../../support/plan-builder.ts';
import { nozzleOf } from './one-nozzle.ts';
import { anyPlacing, movedPlan } from './placed-plan.ts';

const ZONE_m = 1.5;
const at = (x: number, y: number) => nozzleOf(planBuilder().room(6, 4, 3).nozzle(x, y, 2.8));

describe('a nozzle stands in a corner', () => {
  test.each([
    ['within the zone of both walls', 1, 1.2, 1],
    ['exactly on its border', 1.5, 1.5, 1],
    ['a hair outside of one', 1.501, 1, 0],
    ['near one wall only', 3, 0.5, 0],
    ['in the middle', 3, 2, 0],
    ['at its very end', 0, 0, 1],
  ])('%s', (_, x, y, count) => {
    expect(cornersNear(at(x, y), ZONE_m)).toHaveLength(count);
  });

  test('with the direction to it and the distance to its farther wall', () => {
    const [near] = cornersNear(at(1, 0.5), ZONE_m);
    expect(near).toMatchObject({ corner: { at: planPoint(0, 0) }, distance_m: 1 });
    expect(near?.bearing_rad).toBeCloseTo(Math.atan2(-0.5, -1), 12);
    expect(cornersNear(at(0, 0), ZONE_m)[0]?.bearing_rad).toBeCloseTo((-3 * Math.PI) / 4, 12);
  });

  test('of several, the nearest first', () => {
    const corners = cornersNear(at(3, 1), 3.2);
    expect(corners.map(({ distance_m }) => distance_m)).toEqual([3, 3, 3, 3]);
    expect(cornersNear(at(2, 1), 3.2).map(({ corner }) => corner.at)).toEqual([planPoint(0, 0), planPoint(0, 4)]);
  });

  test('also where its wall was drawn in pieces', () => {
    const ring = [planPoint(0, 0), planPoint(0.2, 0), planPoint(6, 0), planPoint(6, 4), planPoint(0, 4), planPoint(0, 3), planPoint(0, 0.3)];
    const nozzle = nozzleOf(planBuilder().outline(ring, 3).nozzle(1.4, 1.4, 2.8));
    expect(cornersNear(nozzle, ZONE_m)).toHaveLength(1);
    expect(cornersNear(nozzle, ZONE_m)[0]?.walls).toHaveLength(5);
  });

  test('not behind a thin wall', () => {
    // A room like a U: the nozzle stands left of the thin wall between its legs, the corner lies on the right of it.
    const ring = [planPoint(0, 0), planPoint(6, 0), planPoint(6, 4), planPoint(3.05, 4), planPoint(3.05, 1), planPoint(2.95, 1), planPoint(2.95, 4), planPoint(0, 4)];
    const corners = cornersNear(nozzleOf(planBuilder().outline(ring, 3).nozzle(2.5, 3.5, 2.8)), 1);
    expect(corners.map(({ corner }) => corner.at)).toEqual([planPoint(2.95, 4)]);
  });

  test('not at the outside corner of a column', () => {
    expect(cornersNear(nozzleOf(planBuilder().room(9, 9, 3).hole(rectangle(1, 1, planPoint(4, 4))).nozzle(3.8, 3.8, 2.8)), 1)).toEqual([]);
  });

  test('never while it hangs in no space', () => {
    expect(cornersNear(at(-3, -3), ZONE_m)).toEqual([]);
  });
});

test('turning, shifting and mirroring the plan change no corner', () => {
  const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10 + 0.003);
  fc.assert(
    fc.property(tenths(0, 59), tenths(0, 39), anyPlacing, (x, y, placing) => {
      const built = planBuilder().room(6, 4, 3).nozzle(x, y, 2.8);
      const here = cornersNear(nozzleOf(built), ZONE_m);
      const [moved] = derivePlan(movedPlan(built.plan, placing)).nozzles;
      const there = moved ? cornersNear(moved, ZONE_m) : [];
      expect(there.map(({ distance_m }) => distance_m.toFixed(6))).toEqual(here.map(({ distance_m }) => distance_m.toFixed(6)));
    }),
  );
});
