import { freeze, produce } from 'immer';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cornersNear } from '#shared/derived/corner-zone';
import { coverageOf } from '#shared/derived/coverage';
import type { Derived } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { jetsOf } from '#shared/derived/jets';
import { wallsNear } from '#shared/derived/near-wall';
import { boundsOf, rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { type Plan, newPlan } from '#shared/model/plan';
import { planBuilder, place3 as p } from '../../support/plan-builder.ts';
import { archive } from './demo-layouts.ts';
import { anyPlacing, movedPlan } from './placed-plan.ts';

/** A derived plan as plain data that can be compared: functions are asked at some places, loops are cut. */
const plainFacts = (derived: Derived) => ({
  spaces: derived.spaces.map(({ ceilingAt_m, level, ...space }) => {
    const { minX, minY, maxX, maxY } = boundsOf(space.outline);
    const asked = [0.1, 0.3, 0.5, 0.7, 0.9].flatMap((u) => [0.2, 0.5, 0.8].map((v) => ceilingAt_m(planPoint(minX + (maxX - minX) * u, minY + (maxY - minY) * v))));
    return { ...space, level, asked };
  }),
  solids: derived.solids,
  networks: derived.networks.map(({ pipes, nozzles, ...network }) => ({
    ...network,
    pipes: pipes.map(({ network: of, ...pipe }) => ({ ...pipe, network: of.ref })),
    nozzles: nozzles.map(({ ref }) => ref),
  })),
  nozzles: derived.nozzles.map(({ network, space, ...nozzle }) => ({ ...nozzle, network: network.ref, space: space?.key })),
  coverage: derived.spaces.map((space) => coverageOf(space, derived.nozzles.filter((nozzle) => nozzle.space?.key === space.key))),
});
const cold = (plan: Plan) => plainFacts(derivePlan(structuredClone(plan)));

test('an empty plan has nothing to derive', () => {
  expect(derivePlan(newPlan())).toMatchObject({ spaces: [], solids: [], networks: [], nozzles: [] });
});

describe('a second plan derived after the first', () => {
  const start = () => freeze(archive().plan, true);
  const change = (plan: Plan, recipe: (draft: Plan) => void): Plan => produce(plan, recipe);
  const firstOf = <T>(record: Readonly<Record<string, T>>): T => {
    const [first] = Object.values(record);
    if (first === undefined) throw new Error('The record is empty.');
    return first;
  };

  test('keeps every object of what a moved nozzle does not touch', () => {
    const two = archive().network().run([p(1, 1, 2), p(1, 2, 2)]).nozzle(1, 2, 2);
    const plan = freeze(two.plan, true);
    const before = derivePlan(plan);
    const after = derivePlan(
      change(plan, (draft) => {
        const node = draft.networks[two.networkId]?.nodes[two.inNetwork('node').id];
        if (node) node.at = { x: 2, y: 2, z: 2 };
      }),
    );
    expect(after.spaces).toBe(before.spaces);
    expect(after.solids).toBe(before.solids);
    expect(after.networks[0]).toBe(before.networks[0]);
    expect(after.networks[1]).not.toBe(before.networks[1]);
    expect(after.nozzles.at(-1)?.at).toEqual(p(2, 2, 2));
  });

  test('keeps the shape of a space whose level got a note, under the new level', () => {
    const plan = start();
    const before = derivePlan(plan);
    const noted = change(plan, (draft) => {
      firstOf(draft.levels).notes.n = { id: 'n', at: { x: 1, y: 1 }, text: 'Look' };
    });
    const after = derivePlan(noted);
    expect(after.spaces[0]?.walls).toBe(before.spaces[0]?.walls);
    expect(after.spaces[0]?.solids).toBe(before.spaces[0]?.solids);
    expect(after.spaces[0]?.level).toBe(firstOf(noted.levels));
    expect(after.networks[0]?.level).toBe(firstOf(noted.levels));
    expect(after.nozzles[0]?.space).toBe(after.spaces[0]);
  });

  test('of the very same plan is the very same answer', () => {
    const plan = start();
    expect(derivePlan(plan)).toBe(derivePlan(plan));
  });

  test('sees what was changed in place in a plan that is not frozen', () => {
    const built = planBuilder().room(6, 4, 3).nozzle(1, 1, 2.8);
    expect(derivePlan(built.plan).nozzles).toHaveLength(1);
    built.nozzle(2, 2, 2.8).obstruction('rack', rectangle(1, 1), 0, 2);
    expect(derivePlan(built.plan).nozzles).toHaveLength(2);
    expect(derivePlan(built.plan).spaces[0]?.solids).toHaveLength(1);
  });

  const number = fc.integer({ min: -200, max: 1200 }).map((n) => n / 100);
  const pick = fc.nat(1000);
  const anyChange: fc.Arbitrary<(draft: Plan) => void> = fc.oneof(
    fc.tuple(pick, number, number, number).map(([i, x, y, z]) => (draft: Plan) => {
      const nodes = Object.values(firstOf(draft.networks).nodes);
      const node = nodes[i % nodes.length];
      if (node) node.at = { x, y, z };
    }),
    fc.tuple(pick, number, number).map(([i, x, y]) => (draft: Plan) => {
      const { outline } = firstOf(firstOf(draft.levels).enclosures);
      const corner = outline[i % outline.length];
      if (corner) Object.assign(corner, { x, y });
    }),
    fc.tuple(pick, number, number).map(([i, dx, dy]) => (draft: Plan) => {
      const things = Object.values(firstOf(draft.levels).obstructions);
      const thing = things[i % Math.max(1, things.length)];
      if (thing) thing.footprint = thing.footprint.map(({ x, y }) => ({ x: x + dx / 10, y: y + dy / 10 }));
    }),
    pick.map((i) => (draft: Plan) => {
      const { obstructions } = firstOf(draft.levels);
      const id = Object.keys(obstructions)[i % 5];
      if (id) delete obstructions[id];
    }),
    fc.option(number).map((height) => (draft: Plan) => {
      firstOf(firstOf(draft.levels).enclosures).height_m = height === null ? null : Math.abs(height);
    }),
    fc.constant((draft: Plan) => {
      firstOf(firstOf(draft.levels).enclosures).underFloor = null;
    }),
    fc.tuple(number, number).map(([x, y]) => (draft: Plan) => {
      firstOf(firstOf(draft.levels).enclosures).ceilingZones.z = { id: 'z', name: 'Z', height_m: 2.4, outline: rectangle(3, 2, planPoint(x, y)).map((corner) => ({ x: corner.x, y: corner.y })) };
    }),
    fc.tuple(pick, number).map(([i, rotation_rad]) => (draft: Plan) => {
      const nozzles = Object.values(firstOf(draft.networks).nozzles);
      const nozzle = nozzles[i % nozzles.length];
      if (nozzle) nozzle.rotation_rad = rotation_rad;
    }),
    pick.map((i) => (draft: Plan) => {
      const { pipes } = firstOf(draft.networks);
      const id = Object.keys(pipes)[i % Object.keys(pipes).length];
      if (id) delete pipes[id];
    }),
    fc.constant((draft: Plan) => {
      firstOf(draft.profiles).footprint = { shape: 'circle', radius_m: 3, source: '' };
    }),
    fc.constant((draft: Plan) => {
      firstOf(draft.levels).name = 'Renamed';
    }),
  );

  test('equals the same plan derived from nothing, after any changes', () => {
    fc.assert(
      fc.property(fc.array(anyChange, { minLength: 1, maxLength: 8 }), (changes) => {
        let plan = start();
        derivePlan(plan);
        for (const recipe of changes) {
          plan = change(plan, recipe);
          expect(plainFacts(derivePlan(plan))).toEqual(cold(plan));
        }
      }),
      { numRuns: 40 },
    );
  });
});

test('turning, shifting and mirroring a plan change nothing that was derived from it', () => {
  const round = (value: number | undefined) => (value === undefined ? undefined : Number(value.toFixed(5)));
  const facts = ({ spaces, networks, nozzles }: Derived) => ({
    spaces: spaces.map(({ key, floor_m, tallest_m, area_m2, grossVolume_m3, walls, convexCorners, solids }) => ({
      key,
      heights: [floor_m, round(tallest_m)],
      sizes: [round(area_m2), grossVolume_m3?.toFixed(3)],
      walls: walls.map(({ ref }) => ref.id).sort(),
      corners: convexCorners.length,
      solids: solids.map(({ ref }) => ref.id),
    })),
    networks: networks.map(({ fittings, paths, faults, totalLength_m, pipeVolume_m3, pipes }) => ({
      fittings: fittings.map(({ kind, node, isBull }) => [kind, node, isBull]),
      paths: paths.map(({ nodes, length_m, elbows, tees }) => [nodes, round(length_m), elbows, tees]),
      faults: faults.map(({ kind, text, pipes: at }) => [kind, text, at]),
      sums: [round(totalLength_m), round(pipeVolume_m3), pipes.map(({ upright }) => upright)],
    })),
    nozzles: nozzles.map((nozzle) => ({
      space: nozzle.space?.key,
      ceiling: round(nozzle.localCeiling_m),
      blockers: nozzle.blockers.map(({ ref }) => ref.id),
      jets: jetsOf(nozzle).map(({ length_m, hit }) => [round(length_m), hit?.id]),
      corners: cornersNear(nozzle, 1.524).map(({ distance_m }) => round(distance_m)),
      walls: wallsNear(nozzle, 0.9144).map(({ distance_m }) => round(distance_m)),
    })),
  });
  const plan = archive()
    .hole(rectangle(0.6, 0.8, planPoint(0.7, 0.6)))
    .ceilingZone(rectangle(2, 3, planPoint(1.07, 1.03)), 2.6).plan;
  const here = facts(derivePlan(plan));
  fc.assert(
    fc.property(anyPlacing, (placing) => {
      expect(facts(derivePlan(movedPlan(plan, placing)))).toEqual(here);
    }),
    { numRuns: 60 },
  );
});
