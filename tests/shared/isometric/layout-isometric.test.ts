import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boughtFittingsOf } from '#shared/derived/bought-fittings';
import { derivePlan } from '#shared/derived/derive-plan';
import type { DerivedNetwork } from '#shared/derived/derived';
import { type PlanPoint3, distance3_m } from '#shared/geometry/point';
import { crowding } from '#shared/isometric/crowding';
import { type Isometric, holeHeadings, layoutIsometric } from '#shared/isometric/layout-isometric';
import { project } from '#shared/isometric/project';
import { DEMO_NAMES, buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

function only(networks: readonly DerivedNetwork[]): DerivedNetwork {
  const [network] = networks;
  if (!network) throw new Error('The plan has a network.');
  return network;
}
const isoOf = (built: ReturnType<typeof planBuilder>): Isometric => layoutIsometric(only(derivePlan(built.plan).networks));
const drawn_m = ({ a, b }: Isometric['runs'][number]): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A tree of pipes square to each other: each step leaves a place that is there already. */
const treePlan = fc
  .array(fc.record({ from: fc.nat(), axis: fc.constantFrom('x', 'y', 'z'), way: fc.constantFrom(1, -1), length_dm: fc.integer({ min: 1, max: 200 }) }), { minLength: 1, maxLength: 24 })
  .map((steps) => {
    const places: PlanPoint3[] = [place3(0, 0, 2)];
    const built = planBuilder();
    for (const { from, axis, way, length_dm } of steps) {
      const start = places[from % places.length] ?? place3(0, 0, 2);
      const end = { ...start, [axis]: start[axis] + (way * length_dm) / 10 };
      if (places.some((place) => distance3_m(place, end) < 0.01)) continue;
      built.run([start, end]);
      places.push(end);
    }
    return built;
  });

function expectWhole(iso: Isometric): void {
  const { network, runs, nodes, fittings } = iso;
  expect(runs.flatMap(({ pipes }) => pipes).sort()).toEqual(network.pipes.map(({ ref }) => ref.id).sort());
  expect(runs.reduce((sum, { length_m }) => sum + length_m, 0)).toBeCloseTo(network.totalLength_m, 9);
  expect(fittings.map(({ fitting }) => fitting)).toEqual(boughtFittingsOf(network));
  const told = nodes.flatMap((node) => node.fittings);
  expect(new Set(told)).toEqual(new Set(boughtFittingsOf(network)));
  expect(told).toHaveLength(boughtFittingsOf(network).length);
  expect(nodes.map(({ number }) => number)).toEqual(nodes.map((_, i) => i + 1));
  expect(nodes.flatMap(({ nozzle }) => nozzle ?? []).map(({ ref }) => ref.id).sort()).toEqual(network.nozzles.map(({ ref }) => ref.id).sort());
}

describe.each(DEMO_NAMES)('the networks of %s', (name) => {
  test('hold every pipe, fitting and nozzle once, and nothing crosses', async () => {
    for (const network of derivePlan((await buildDemo(name)).plan).networks) {
      const iso = layoutIsometric(network);
      expectWhole(iso);
      expect(crowding(iso.runs, 0)).toBe(0);
      expect(iso.looseSupports).toBe(0);
    }
  });

  test('tell the developed length to each nozzle as the paths do', async () => {
    for (const network of derivePlan((await buildDemo(name)).plan).networks) {
      const { nodes } = layoutIsometric(network);
      for (const path of network.paths) expect(nodes.find(({ nozzle }) => nozzle?.ref.id === path.nozzle)?.distance_m).toBeCloseTo(path.length_m, 9);
    }
  });
});

test('the five paths of the annex, added up by hand from its dimensions [ft]', async () => {
  const network = only(derivePlan((await buildDemo('F2')).plan).networks);
  const { nodes } = layoutIsometric(network);
  const feet = ['N1', 'N2', 'N3', 'N4', 'N5'].map((name) => (nodes.find(({ nozzle }) => nozzle?.nozzle.name === name)?.distance_m ?? 0) / 0.3048);
  expect(feet.map((length) => length.toFixed(2))).toEqual(['31.83', '37.33', '21.33', '26.83', '9.33']);
});

describe('any network', () => {
  test('holds every pipe and fitting once; numbers rise with the flow', () => {
    fc.assert(
      fc.property(treePlan, (built) => {
        const iso = isoOf(built);
        expectWhole(iso);
        const numbers = new Map(iso.nodes.map(({ id, number }) => [id, number]));
        for (const { from, to } of iso.runs) expect(numbers.get(to) ?? 0).toBeGreaterThan(numbers.get(from) ?? 0);
      }),
    );
  });

  test('runs along the axes of its view, whatever length it is drawn', () => {
    fc.assert(
      fc.property(treePlan, (built) => {
        const { runs, view } = isoOf(built);
        for (const { start, end, a, b } of runs) {
          const way = project({ x: end.x - start.x, y: end.y - start.y, z: end.z - start.z }, view);
          const [dx, dy] = [b.x - a.x, b.y - a.y];
          expect(Math.abs(way.x * dy - way.y * dx)).toBeLessThan(1e-6 * Math.hypot(dx, dy) * Math.hypot(way.x, way.y) + 1e-12);
          expect(way.x * dx + way.y * dy).toBeGreaterThan(0);
        }
      }),
    );
  });

  test('is broken only where a run is longer than most, and never drawn shorter without a break', () => {
    fc.assert(
      fc.property(treePlan, (built) => {
        const { runs } = isoOf(built);
        const lengths = runs.map(({ length_m }) => length_m).sort((a, b) => a - b);
        const middle = lengths[Math.floor(lengths.length / 2)] ?? 0;
        for (const run of runs) {
          expect(run.isBroken).toBe(drawn_m(run) < run.length_m - 1e-3);
          if (run.isBroken) expect(run.length_m).toBeGreaterThan(1.59 * middle);
        }
      }),
    );
  });
});

describe('a network by hand', () => {
  const straight = () => planBuilder().run([place3(0, 0, 2), place3(0, 0, 2.6), place3(1, 0, 2.6), place3(3, 0, 2.6), place3(3, 0, 2.3)]).nozzle(3, 0, 2.3);

  test('straight joints have no number; heights are told where they change', () => {
    const { nodes, runs } = isoOf(straight());
    expect(nodes.map(({ at, changesHeight }) => [at.x, at.z, changesHeight])).toEqual([
      [0, 2, true],
      [0, 2.6, true],
      [3, 2.6, true],
      [3, 2.3, true],
    ]);
    expect(runs.map(({ pipes, length_m }) => [pipes.length, Number(length_m.toFixed(9))])).toEqual([[1, 0.6], [2, 3], [1, 0.3]]);
  });

  test('a level corner tells no height', () => {
    const { nodes } = isoOf(planBuilder().run([place3(0, 0, 2), place3(2, 0, 2), place3(2, 3, 2)]));
    expect(nodes.map(({ changesHeight }) => changesHeight)).toEqual([true, false, false]);
  });

  test('short branches are told to their end before the main goes on', () => {
    const built = planBuilder().run([place3(0, 0, 2), place3(2, 0, 2), place3(4, 0, 2), place3(4, 3, 2), place3(6, 3, 2)]).run([place3(2, 0, 2), place3(2, 1, 2)]);
    expect(isoOf(built).nodes.map(({ at }) => [at.x, at.y])).toEqual([[0, 0], [2, 0], [2, 1], [4, 0], [4, 3], [6, 3]]);
  });

  test('a support keeps its share of a run, broken or not', () => {
    const { supports, runs } = isoOf(straight().support(0.5, 0, 2.6));
    const [support] = supports;
    const main = runs[1];
    if (!support || !main) throw new Error('The run holds a support.');
    expect((support.place.x - main.a.x) / (main.b.x - main.a.x)).toBeCloseTo(0.5 / 3, 9);
  });

  test('a support beside the pipe is counted, not drawn', () => {
    const iso = isoOf(straight().support(0.5, 1, 2.6));
    expect([iso.supports.length, iso.looseSupports]).toEqual([0, 1]);
  });

  test('a loop keeps its lengths, so that it closes', () => {
    const built = planBuilder().run([place3(0, 0, 2), place3(9, 0, 2), place3(9, 1, 2), place3(0, 1, 2), place3(0, 0, 2)]);
    const iso = isoOf(built);
    for (const run of iso.runs) expect(drawn_m(run)).toBeCloseTo(run.length_m, 9);
    expectWhole(iso);
  });

  test('a part that the agent does not reach is drawn, its distance not told', () => {
    const built = planBuilder().run([place3(0, 0, 2), place3(3, 0, 2)]).run([place3(0, 5, 2), place3(3, 5, 2)]);
    const iso = isoOf(built);
    expectWhole(iso);
    expect(iso.nodes.map(({ distance_m }) => distance_m)).toEqual([0, 3, undefined, undefined]);
  });

  test('holes blow along the drawn axes', () => {
    const iso = isoOf(straight());
    const nozzle = iso.nodes.find((node) => node.nozzle)?.nozzle;
    if (!nozzle) throw new Error('The run ends in a nozzle.');
    expect(holeHeadings(nozzle, 'south-east').map((heading_rad) => Math.round((heading_rad * 180) / Math.PI))).toEqual([-30, 150]);
  });

  test('a network without pipe is empty', () => {
    expect(isoOf(planBuilder().network()).runs).toEqual([]);
  });
});
