import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Fitting } from '#shared/derived/derived';
import type { PlanPoint3 } from '#shared/geometry/point';
import type { PipeSize } from '#shared/profile/pipe-table';
import { planBuilder, place3 as p } from '../../support/plan-builder.ts';
import { anyPlacing, movedPlan } from './placed-plan.ts';

type Run = readonly [places: readonly PlanPoint3[], size?: PipeSize];

/** Fittings of a network of runs; nozzles hang at the places given. */
function fittingsOf(runs: readonly Run[], nozzles: readonly PlanPoint3[] = [], source?: PlanPoint3 | null): readonly Fitting[] {
  const built = planBuilder().room(40, 40, 5).network();
  for (const [places, size] of runs) built.run(places, size);
  for (const { x, y, z } of nozzles) built.nozzle(x, y, z);
  const network = built.plan.networks[built.networkId];
  if (network && source === null) network.source = null;
  else if (network && source) network.source = built.nodeAt(source.x, source.y, source.z).id;
  return derivePlan(built.plan).networks[0]?.fittings ?? [];
}
const kinds = (fittings: readonly Fitting[]) => fittings.map(({ kind }) => kind);
/** A bend in plan by so many degrees. */
const bend = (turn_deg: number): Run => {
  const turn = (turn_deg * Math.PI) / 180;
  return [[p(5, 5, 3), p(8, 5, 3), p(8 + 3 * Math.cos(turn), 5 + 3 * Math.sin(turn), 3)]];
};

describe('bends', () => {
  test.each([
    [0, []],
    [0.9, []],
    [1.1, ['odd-bend']],
    [43.9, ['odd-bend']],
    [44.1, ['elbow-45']],
    [45, ['elbow-45']],
    [46, ['elbow-45']],
    [60, ['odd-bend']],
    [88.9, ['odd-bend']],
    [89, ['elbow-90']],
    [90, ['elbow-90']],
    [91, ['elbow-90']],
    [91.1, ['odd-bend']],
    [170, ['odd-bend']],
  ])('by %d°', (turn_deg, expected) => {
    const found = fittingsOf([bend(turn_deg)]).filter(({ kind }) => kind !== 'cap');
    expect(kinds(found)).toEqual(expected);
    for (const { turn_rad } of found) expect(turn_rad).toBeCloseTo((turn_deg * Math.PI) / 180, 9);
  });

  test('downwards and upwards are bends like any other', () => {
    const found = fittingsOf([[[p(5, 5, 2), p(5, 5, 3), p(9, 5, 3), p(9, 5, 2.8)]]], [p(9, 5, 2.8)]);
    expect(kinds(found)).toEqual(['elbow-90', 'elbow-90']);
  });

  test('at a piece without length are still counted once', () => {
    const built = planBuilder().room(40, 40, 5).network().run([p(5, 5, 3), p(8, 5, 3)]);
    const network = built.plan.networks[built.networkId];
    if (!network) throw new Error('The plan has no network.');
    network.nodes.twin = { part: null, id: 'twin', at: { x: 8, y: 5, z: 3 } };
    network.nodes.end = { part: null, id: 'end', at: { x: 8, y: 9, z: 3 } };
    const pipe = Object.values(network.pipes)[0];
    if (!pipe) throw new Error('The network has no pipe.');
    network.pipes.short = { ...pipe, id: 'short', from: pipe.to, to: 'twin' };
    network.pipes.on = { ...pipe, id: 'on', from: 'twin', to: 'end' };
    expect(kinds(derivePlan(built.plan).networks[0]?.fittings ?? [])).toEqual(['elbow-90', 'cap']);
  });
});

describe('ends', () => {
  test('without a nozzle are capped; the source and nozzles are not', () => {
    expect(kinds(fittingsOf([[[p(5, 5, 3), p(9, 5, 3)]]]))).toEqual(['cap']);
    expect(fittingsOf([[[p(5, 5, 3), p(9, 5, 3)]]], [p(9, 5, 3)])).toEqual([]);
  });
});

describe('tees and crosses', () => {
  const run: Run = [[p(2, 5, 3), p(5, 5, 3), p(9, 5, 3)]];
  const branch: Run = [[p(5, 5, 3), p(5, 9, 3)]];
  const ends = [p(9, 5, 3), p(5, 9, 3)];

  test('a tee fed along its run', () => {
    const found = fittingsOf([run, branch], ends);
    expect(found).toMatchObject([{ kind: 'tee', isBull: false, turn_rad: 0, at: p(5, 5, 3) }]);
    expect(found[0]?.pipes).toHaveLength(3);
  });

  test('a tee fed through its branch blows both ways: a bull-head tee, the feeding pipe first', () => {
    const found = fittingsOf([run, branch], [p(2, 5, 3), p(9, 5, 3)], p(5, 9, 3));
    expect(found).toMatchObject([{ kind: 'tee', isBull: true }]);
    expect(found[0]?.pipes[0]).toBe(fittingsOf([run, branch], ends)[0]?.pipes[2]);
  });

  test('while nothing feeds it, no tee is called a bull', () => {
    expect(fittingsOf([run, branch], [], null).filter(({ kind }) => kind === 'tee')).toMatchObject([{ isBull: false }]);
  });

  test('four legs are a cross', () => {
    expect(kinds(fittingsOf([run, [[p(5, 1, 3), p(5, 5, 3), p(5, 9, 3)]]], [...ends, p(5, 1, 3)]))).toEqual(['cross']);
  });

  test('a slanting branch adds an odd bend that names it', () => {
    const found = fittingsOf([run, [[p(5, 5, 3), p(8, 8, 3)]]], [p(9, 5, 3), p(8, 8, 3)]);
    expect(kinds(found)).toEqual(['tee', 'odd-bend']);
    expect(found[1]?.turn_rad).toBeCloseTo(Math.PI / 4, 9);
    expect(found[1]?.pipes).toEqual([found[0]?.pipes[2]]);
  });

  test('a Y without a straight run has two odd legs', () => {
    const y = (turn_deg: number) => p(5 + 4 * Math.cos((turn_deg * Math.PI) / 180), 5 + 4 * Math.sin((turn_deg * Math.PI) / 180), 3);
    expect(kinds(fittingsOf([[[y(180), p(5, 5, 3), y(60)]], [[p(5, 5, 3), y(-60)]]], [y(60), y(-60)]))).toEqual(['tee', 'odd-bend', 'odd-bend']);
  });

  test('a fifth leg is no leg of any made fitting', () => {
    const found = fittingsOf([run, [[p(5, 1, 3), p(5, 5, 3), p(5, 9, 3)]], [[p(5, 5, 3), p(5, 5, 2)]]], [...ends, p(5, 1, 3), p(5, 5, 2)]);
    expect(kinds(found)).toEqual(['cross', 'odd-bend']);
  });

  test('more than one pipe at the source makes a tee there', () => {
    const found = fittingsOf([[[p(5, 5, 3), p(9, 5, 3)]], [[p(5, 5, 3), p(1, 5, 3)]]], [p(9, 5, 3), p(1, 5, 3)]);
    expect(found).toMatchObject([{ kind: 'tee', isBull: true, at: p(5, 5, 3) }]);
    expect(kinds(fittingsOf([run, branch], [...ends, p(2, 5, 3)], p(5, 5, 3)))).toEqual(['cross']);
  });
});

describe('reducers', () => {
  test('stand at a straight size change, beside elbows and at each leg of a tee of another size', () => {
    expect(kinds(fittingsOf([[[p(2, 5, 3), p(5, 5, 3)], '1'], [[p(5, 5, 3), p(9, 5, 3)], '3/4']], [p(9, 5, 3)]))).toEqual(['reducer']);
    expect(kinds(fittingsOf([[[p(2, 5, 3), p(5, 5, 3)], '1'], [[p(5, 5, 3), p(5, 9, 3)], '3/4']], [p(5, 9, 3)]))).toEqual(['elbow-90', 'reducer']);
    const found = fittingsOf(
      [
        [[p(2, 5, 3), p(5, 5, 3)], '1-1/4'],
        [[p(5, 5, 3), p(9, 5, 3)], '1'],
        [[p(5, 5, 3), p(5, 9, 3)], '3/4'],
      ],
      [p(9, 5, 3), p(5, 9, 3)],
    );
    expect(kinds(found)).toEqual(['tee', 'reducer', 'reducer']);
    expect(found.slice(1).map(({ pipes }) => pipes[0])).toEqual([found[0]?.pipes[0], found[0]?.pipes[0]]);
  });
});

test('turning, shifting and mirroring the plan change no fitting', () => {
  const step = fc.record({ turn: fc.constantFrom(0, 45, 60, 90, -90), rise: fc.constantFrom(0, 0, 1), branches: fc.boolean() });
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 6 }), anyPlacing, (steps, placing) => {
      const built = planBuilder().room(40, 40, 5).network();
      let here = p(20, 20, 2);
      let heading = 0;
      for (const { turn, rise, branches } of steps) {
        heading += turn;
        const next = rise ? p(here.x, here.y, here.z + 0.5) : p(here.x + 2 * Math.cos((heading * Math.PI) / 180), here.y + 2 * Math.sin((heading * Math.PI) / 180), here.z);
        built.run([here, next]);
        if (branches) built.run([next, p(next.x, next.y, next.z - 0.3)]);
        here = next;
      }
      const derived = derivePlan(built.plan).networks[0]?.fittings ?? [];
      const moved = derivePlan(movedPlan(built.plan, placing)).networks[0]?.fittings ?? [];
      const facts = (fittings: readonly Fitting[]) => fittings.map(({ node, kind, pipes, isBull, turn_rad }) => ({ node, kind, pipes, isBull, turn: turn_rad.toFixed(6) }));
      expect(facts(moved)).toEqual(facts(derived));
    }),
    { numRuns: 80 },
  );
});
