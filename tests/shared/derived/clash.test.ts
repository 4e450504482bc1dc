import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestSolid, pipeToPipe_m, pipeToSolid_m, pipesNear, solidsNear } from '#shared/derived/clash';
import { derivePlan } from '#shared/derived/derive-plan';
import { distanceToOutline_m, isInside, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, planPoint, polar } from '#shared/geometry/point';
import { distanceBetween3_m } from '#shared/geometry/segment3';
import { inches_m } from '#shared/units/convert';
import { pipeOutside_m } from '#shared/profile/pipe-table';
import { type PlanBuilder, planBuilder, place3 as p } from '../../support/plan-builder.ts';
import { archive, ft } from './demo-layouts.ts';
import { anyPlacing, movedPlace, movedPlan } from './placed-plan.ts';

const pipe = (from: PlanPoint3, to: PlanPoint3, outside_m = 0.1) => ({ from, to, outside_m });
const block = { footprint: rectangle(2, 2, planPoint(1, 1)), bottom_m: 1, top_m: 2 };

describe('clearance of a pipe to a solid', () => {
  test.each([
    ['past its side', p(0, 0, 1.5), p(9, 0, 1.5), 0.95],
    ['over it', p(0, 2, 2.5), p(9, 2, 2.5), 0.45],
    ['under it', p(0, 2, 0.5), p(9, 2, 0.5), 0.45],
    ['upright beside it', p(4, 2, 0), p(4, 2, 9), 0.95],
    ['upright over it', p(2, 2, 2.3), p(2, 2, 9), 0.25],
    ['off its edge, aslant above', p(0, 4, 3), p(9, 4, 3), Math.SQRT2 - 0.05],
    ['off its corner', p(4, 4, 3), p(9, 9, 9), Math.sqrt(3) - 0.05],
    ['ending before it', p(-3, 2, 1.5), p(0, 2, 1.5), 0.95],
    ['touching it with its outside', p(0, 0.95, 1.5), p(9, 0.95, 1.5), 0],
    ['its outside reaching in', p(0, 0.97, 1.5), p(9, 0.97, 1.5), -0.02],
    ['its axis on its side', p(0, 1, 1.5), p(9, 1, 1.5), -0.05],
    ['through it', p(0, 2, 1.5), p(9, 2, 1.5), -0.05],
    ['wholly inside', p(1.5, 1.5, 1.2), p(2.5, 2.5, 1.8), -0.05],
    ['dropping through it', p(2, 2, 9), p(2, 2, 0), -0.05],
    ['a piece without length', p(2, 2, 2.5), p(2, 2, 2.5), 0.45],
  ])('%s', (_, from, to, clearance_m) => {
    expect(pipeToSolid_m(pipe(from, to), block)).toBeCloseTo(clearance_m, 9);
    expect(pipeToSolid_m(pipe(to, from), { ...block, footprint: block.footprint.toReversed() })).toBeCloseTo(clearance_m, 9);
  });

  test('in the bay of a solid shaped like a U', () => {
    const bay = [planPoint(0, 0), planPoint(4, 0), planPoint(4, 3), planPoint(3, 3), planPoint(3, 1), planPoint(1, 1), planPoint(1, 3), planPoint(0, 3)];
    expect(pipeToSolid_m(pipe(p(2, 2, 0), p(2, 2, 9)), { footprint: bay, bottom_m: 0, top_m: 3 })).toBeCloseTo(0.95, 9);
    expect(pipeToSolid_m(pipe(p(2, 2, 4), p(2, 9, 4)), { footprint: bay, bottom_m: 0, top_m: 3 })).toBeCloseTo(Math.SQRT2 - 0.05, 9);
  });

  const mm = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
  const place = fc.record({ x: mm(-4, 4), y: mm(-4, 4), z: mm(-4, 4) });
  const solid = fc
    .record({ arms: fc.array(mm(1, 3), { minLength: 3, maxLength: 7 }), bottom_m: mm(-3, 1), height_m: mm(0, 3) })
    .map(({ arms, bottom_m, height_m }) => ({
      footprint: arms.map((arm, i) => polar(planPoint(0, 0), (2 * Math.PI * i) / arms.length, arm)),
      bottom_m,
      top_m: bottom_m + height_m,
    }));

  /** Distance of one place to an upright solid. */
  const placeToSolid_m = (at: PlanPoint3, { footprint, bottom_m, top_m }: { footprint: readonly PlanPoint[]; bottom_m: number; top_m: number }): number => {
    const aside = isInside(at, footprint) ? 0 : distanceToOutline_m(at, footprint);
    return Math.hypot(aside, Math.max(bottom_m - at.z, 0, at.z - top_m));
  };

  test('is what trying many places along its axis gives', () => {
    fc.assert(
      fc.property(place, place, solid, (from, to, thing) => {
        const steps = 400;
        const length_m = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
        let tried_m = Infinity;
        for (let i = 0; i <= steps; i += 1) {
          const share = i / steps;
          tried_m = Math.min(tried_m, placeToSolid_m(p(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share, from.z + (to.z - from.z) * share), thing));
        }
        const found_m = pipeToSolid_m(pipe(from, to, 0), thing);
        expect(found_m).toBeLessThanOrEqual(tried_m + 1e-9);
        expect(found_m).toBeGreaterThanOrEqual(tried_m - length_m / steps / 2 - 1e-9);
      }),
      { numRuns: 300 },
    );
  });

  test('does not change when everything is turned, shifted or mirrored', () => {
    fc.assert(
      fc.property(place, place, solid, anyPlacing, (from, to, thing, placing) => {
        const moved = { ...thing, footprint: thing.footprint.map((corner) => movedPlace(corner, placing)) };
        expect(pipeToSolid_m(pipe(movedPlace(from, placing), movedPlace(to, placing)), moved)).toBeCloseTo(pipeToSolid_m(pipe(from, to), thing), 7);
      }),
    );
  });
});

test('clearance of two pipes is between their outsides', () => {
  expect(pipeToPipe_m(pipe(p(0, 0, 0), p(4, 0, 0)), pipe(p(2, 1, 0), p(2, 5, 0), 0.2))).toBeCloseTo(0.85, 12);
  expect(pipeToPipe_m(pipe(p(0, 0, 0), p(4, 0, 0)), pipe(p(2, -1, 0), p(2, 5, 0), 0.2))).toBeCloseTo(-0.15, 12);
});

describe('what is near a pipe in a plan', () => {
  const derived = (built: PlanBuilder) => derivePlan(built.plan);
  const pipeIn = (built: PlanBuilder, i = 0) => {
    const all = derived(built).networks.flatMap(({ pipes }) => pipes);
    const found = all[i];
    if (!found) throw new Error('The plan has no such pipe.');
    return found;
  };
  const straight = () => planBuilder().room(20, 20, 4).network().run([p(2, 5, 3), p(9, 5, 3)]).nozzle(9, 5, 3);
  const radius_m = pipeOutside_m('3/4') / 2;

  test('the nearest solid, within the distance asked for', () => {
    const built = straight()
      .obstruction('beam', rectangle(1, 1, planPoint(4, 5.1)), 2.5, 3.5)
      .obstruction('duct', rectangle(1, 1, planPoint(7, 5.05)), 2.5, 3.5);
    const near = nearestSolid(derived(built), pipeIn(built), 0.2);
    expect(near?.solid.obstruction.kind).toBe('duct');
    expect(near?.clearance_m).toBeCloseTo(0.05 - radius_m, 9);
    expect(solidsNear(derived(built), pipeIn(built), 0.2).map(({ solid }) => solid.obstruction.kind)).toEqual(['duct', 'beam']);
    expect(nearestSolid(derived(built), pipeIn(built), 0.01)).toBeUndefined();
  });

  test('not what stands on another level', () => {
    const built = straight().level('Level 2', 4).obstruction('beam', rectangle(1, 1, planPoint(4, 4.5)), 2.5, 3.5);
    expect(nearestSolid(derived(built), pipeIn(built), 1)).toBeUndefined();
  });

  test('F2: the main lies clear under the beam; raised to 8 ft 1 in it has 0.17 in left', () => {
    const clearance = (raise_m: number) => {
      const built = archive();
      for (const { at } of Object.values(Object.values(built.plan.networks)[0]?.nodes ?? {})) if (Math.abs(at.z - ft(7, 10)) < 1e-9) at.z += raise_m;
      const plan = derivePlan(built.plan);
      return Math.min(...plan.networks.flatMap(({ pipes }) => pipes.flatMap((each) => nearestSolid(plan, each, 0.1)?.clearance_m ?? [])));
    };
    expect(clearance(0)).toBeCloseTo(inches_m(4 - 1.66 / 2), 9);
    expect(clearance(ft(0, 3))).toBeCloseTo(inches_m(0.17), 9);
  });

  test('pipes of any network on the level, but not those joined to it', () => {
    const built = straight().run([p(9, 5, 3), p(9, 9, 3)]).run([p(2, 5.2, 3), p(8, 5.2, 3)]).network().run([p(4, 1, 3.1), p(4, 9, 3.1)]);
    const near = pipesNear(derived(built), pipeIn(built), 0.5);
    expect(near.map(({ pipe: other }) => other.to)).toEqual([p(4, 9, 3.1), p(8, 5.2, 3)]);
    expect(near[0]?.clearance_m).toBeCloseTo(0.1 - 2 * radius_m, 9);
    expect(pipesNear(derived(built), pipeIn(built), 0.01)).toEqual([]);
  });

  test('a return bend over one short nipple is no clash, over a longer piece it is', () => {
    const bend = (gap_m: number) => straight().run([p(9, 5, 3), p(9, 5 + gap_m, 3), p(2, 5 + gap_m, 3)]);
    expect(pipesNear(derived(bend(0.04)), pipeIn(bend(0.04)), 0.025)).toEqual([]);
    expect(pipesNear(derived(bend(0.06)), pipeIn(bend(0.06)), 0.025)).toEqual([]);
    expect(pipesNear(derived(bend(0.06)), pipeIn(bend(0.06)), 0.034)).toHaveLength(0);
    const back = straight().run([p(9, 5, 3), p(9, 6, 3), p(8, 6, 3), p(8, 5.03, 3)]);
    expect(pipesNear(derived(back), pipeIn(back), 0.025)).toHaveLength(1);
  });

  test('agrees with asking every pair', () => {
    const metre = fc.integer({ min: 0, max: 60 }).map((n) => n / 10);
    const run = fc.tuple(fc.record({ x: metre, y: metre, z: metre }), fc.record({ x: metre, y: metre, z: metre }));
    fc.assert(
      fc.property(fc.array(run, { minLength: 2, maxLength: 12 }), (runs) => {
        const built = planBuilder().room(20, 20, 9);
        for (const [from, to] of runs) if (distanceBetween3_m({ a: from, b: from }, { a: to, b: to }) > 0) built.network().run([from, to]);
        const plan = derived(built);
        const all = plan.networks.flatMap(({ pipes }) => pipes);
        for (const one of all) {
          const near = pipesNear(plan, one, 0.3);
          const tried = all.filter((other) => other !== one && pipeToPipe_m(one, other) <= 0.3);
          expect(near.map(({ pipe: other }) => other.ref.id).sort()).toEqual(tried.map((other) => other.ref.id).sort());
        }
      }),
      { numRuns: 60 },
    );
  });

  test('does not change when the plan is turned, shifted or mirrored', () => {
    const built = archive();
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const facts = (plan: PlanBuilder['plan']) => {
          const from = derivePlan(plan);
          return from.networks.flatMap(({ pipes }) => pipes.map((each) => nearestSolid(from, each, 0.5)?.clearance_m.toFixed(6)));
        };
        expect(facts(movedPlan(built.plan, placing))).toEqual(facts(built.plan));
      }),
      { numRuns: 20 },
    );
  });
});
