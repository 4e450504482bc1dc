import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SuggestedSupport, suggestedSupports } from '#shared/calculations/design/suggested-supports';
import { TURN_SUPPORT_m, nozzleSupport_m, supportSpan_m } from '#shared/calculations/formulas/support-spans';
import { replaceSupports } from '#shared/commands/replace-supports';
import type { DerivedNetwork } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { type PlanPoint3, distance3_m } from '#shared/geometry/point';
import { along3 } from '#shared/geometry/segment3';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import type { Plan } from '#shared/model/plan';
import type { PipeSize } from '#shared/profile/pipe-table';
import { p18SupportSpan } from '#shared/rules/pipe/p18-support-span';
import { p19NozzleSupport } from '#shared/rules/pipe/p19-nozzle-support';
import { p20TurnSupport } from '#shared/rules/pipe/p20-turn-support';
import { stockJointsOf } from '#shared/take-off/stock-joints';
import { at3, check, layout } from '../../../support/layout.ts';

const networkOf = (plan: Plan): DerivedNetwork => {
  const [network] = derivePlan(plan).networks;
  if (!network) throw new Error('The layout has its network.');
  return network;
};

/** As the program asks for them: with the couplings that the stock length demands. */
function suggestionsFor(plan: Plan): SuggestedSupport[] {
  const network = networkOf(plan);
  return suggestedSupports(network, plan.basis, stockJointsOf(network));
}

interface Stop {
  readonly key: string;
  readonly at: PlanPoint3;
}

const isOn = (at: PlanPoint3 | undefined, from: PlanPoint3, to: PlanPoint3, length_m: number): boolean => at !== undefined && Math.abs(distance3_m(from, at) + distance3_m(at, to) - length_m) < 1e-9;

/** The same questions asked another way: every two stops and the only way between them. */
function measured(network: DerivedNetwork, basis: BasisOfDesign, supports: readonly PlanPoint3[]) {
  const links = new Map<string, { to: string; length_m: number; span_m: number }[]>();
  const link = (a: string, b: string, length_m: number, span_m: number): void => {
    for (const [from, to] of [[a, b], [b, a]] as const) links.set(from, [...(links.get(from) ?? []), { to, length_m, span_m }]);
  };
  let held = 0;
  for (const { pipe, from, to, length_m } of network.pipes) {
    const on = supports.flatMap((at, i): Stop[] => (isOn(at, from, to, length_m) ? [{ key: `s${i}`, at }] : []));
    held += on.length;
    const ends = distance3_m(network.network.nodes[pipe.from]?.at ?? to, from) < 1e-9 ? [pipe.from, pipe.to] : [pipe.to, pipe.from];
    const stops = [{ key: ends[0] ?? '', at: from }, ...on.sort((a, b) => distance3_m(from, a.at) - distance3_m(from, b.at)), { key: ends[1] ?? '', at: to }];
    stops.slice(1).forEach((stop, i) => {
      const last = stops[i] ?? stop;
      link(last.key, stop.key, distance3_m(last.at, stop.at), supportSpan_m(basis.supportTable, pipe.size) ?? Number.POSITIVE_INFINITY);
    });
  }
  const isSupport = (key: string): boolean => /^s\d/.test(key);
  /** Ways from a stop: to every other one, with the supports passed before it. */
  const ways = (start: string): { to: string; length_m: number; span_m: number; passed: number }[] => {
    const found = [{ to: start, length_m: 0, span_m: Number.POSITIVE_INFINITY, passed: 0 }];
    const seen = new Set([start]);
    for (const way of found) {
      for (const { to, length_m, span_m } of links.get(way.to) ?? []) {
        if (seen.has(to)) continue;
        seen.add(to);
        found.push({ to, length_m: way.length_m + length_m, span_m: Math.min(way.span_m, span_m), passed: way.passed + (isSupport(way.to) && way.to !== start ? 1 : 0) });
      }
    }
    return found.slice(1);
  };
  const isStop = (key: string): boolean => isSupport(key) || links.get(key)?.length === 1;
  // Before or after a place in the flow: the way between them is just what one is farther from the source.
  const depth = new Map([['k1', 0], ...ways('k1').map(({ to, length_m }): [string, number] => [to, length_m])]);
  const depthOf = (key: string): number => depth.get(key) ?? Number.NaN;
  const nearest_m = (node: string): number =>
    Math.min(...ways(node).flatMap(({ to, length_m }) => (isSupport(to) && Math.abs(Math.abs(depthOf(to) - depthOf(node)) - length_m) < 1e-9 ? [length_m] : [])));
  return {
    held,
    spans: [...links.keys()].filter(isStop).flatMap((key) => ways(key).filter(({ to, passed }) => passed === 0 && isStop(to))),
    turns: network.fittings.filter(({ kind }) => kind !== 'reducer' && kind !== 'cap').map(({ node }) => nearest_m(node)),
    nozzles: network.nozzles.map(({ nozzle }) => {
      const pipe = Object.values(network.network.pipes).find(({ from, to }) => from === nozzle.node || to === nozzle.node);
      const way = new Set(network.paths.find((path) => path.nozzle === nozzle.id)?.pipes);
      // Only a support on the pipe that feeds it holds a nozzle.
      const own = ways(nozzle.node).filter(({ to }) => isSupport(to) && network.pipes.some(({ pipe: each, from, to: end, length_m }) => way.has(each.id) && isOn(supports[Number(to.slice(1))], from, end, length_m)));
      return { distance_m: Math.min(...own.map(({ length_m }) => length_m)), allowed_m: nozzleSupport_m(basis.lastSupport, pipe?.size ?? '1/4') };
    }),
  };
}

/** Whether supports keep every limit, each less a millimetre when asked to keep them clearly. */
function doesAll(network: DerivedNetwork, basis: BasisOfDesign, supports: readonly PlanPoint3[], back_m = 0): boolean {
  const { held, spans, turns, nozzles } = measured(network, basis, supports);
  return (
    held === supports.length &&
    spans.every(({ length_m, span_m }) => length_m <= span_m - back_m) &&
    turns.every((distance_m) => distance_m <= TURN_SUPPORT_m - back_m) &&
    nozzles.every(({ distance_m, allowed_m }) => distance_m <= allowed_m - back_m)
  );
}

/** Where couplings stand between lengths of stock. */
const couplingsOf = (network: DerivedNetwork): PlanPoint3[] =>
  stockJointsOf(network).flatMap(({ pipe: id, along_m }) => {
    const { from, to } = network.network.pipes[id] ?? { from: '', to: '' };
    const [a, b] = [network.network.nodes[from]?.at, network.network.nodes[to]?.at];
    return a && b ? [along3({ a, b }, along_m / distance3_m(a, b))] : [];
  });

const placesOf = (plan: Plan): PlanPoint3[] => suggestionsFor(plan).map(({ at }) => at);

const SIZES: readonly PipeSize[] = ['1/2', '3/4', '1', '1-1/2', '2'];
const STEPS = [at3(1, 0, 0), at3(0, 1, 0), at3(-1, 0, 0), at3(0, -1, 0), at3(0, 0, 1), at3(0, 0, -1)] as const;

/** Pipe that grows any way from its source, in whole and broken steps, with a nozzle at every end. Pipes that touch elsewhere are left to other checks. */
const anyNetwork: fc.Arbitrary<Plan> = fc
  .record({
    growth: fc.array(fc.record({ from: fc.nat(30), way: fc.nat(5), length_m: fc.double({ min: 0.2, max: 16, noNaN: true }), size: fc.constantFrom(...SIZES) }), { minLength: 1, maxLength: 12 }),
    table: fc.constantFrom('iso-14520' as const, 'mss-sp-69' as const),
    last: fc.constantFrom('iso' as const, 'us' as const),
    withNozzles: fc.boolean(),
  })
  .map(({ growth, table, last, withNozzles }) => {
    const places = [at3(0, 0, 0)];
    const used = new Set<string>();
    const ends = new Set<number>();
    const runs = growth.flatMap(({ from, way, length_m, size }) => {
      const index = from % places.length;
      const [start, step] = [places[index] ?? at3(0, 0, 0), STEPS[way] ?? STEPS[0]];
      if (used.has(`${index}:${way}`)) return [];
      used.add(`${index}:${way}`);
      used.add(`${places.length}:${way < 4 ? (way + 2) % 4 : 9 - way}`);
      const end = at3(start.x + step.x * length_m, start.y + step.y * length_m, start.z + step.z * length_m);
      ends.delete(index);
      ends.add(places.length);
      places.push(end);
      return [{ places: [start, end], size }];
    });
    const nozzles = withNozzles ? [...ends].flatMap((index) => places[index] ?? []).map((at) => ({ at })) : [];
    return layout({ runs, nozzles, basis: { supportTable: table, lastSupport: last } });
  });

describe('suggested supports', () => {
  test('every span, turn and nozzle distance is kept, clear of fittings, and none can be left out', () => {
    fc.assert(
      fc.property(anyNetwork, (plan) => {
        const network = networkOf(plan);
        const places = placesOf(plan);
        expect(doesAll(network, plan.basis, places)).toBe(true);
        for (const at of places) for (const node of Object.values(network.network.nodes)) expect(distance3_m(at, node.at)).toBeGreaterThanOrEqual(0.05 - 1e-9);
        for (const coupling of couplingsOf(network)) for (const at of places) expect(distance3_m(at, coupling)).toBeGreaterThanOrEqual(0.05 - 1e-9);
        for (const each of places) expect(doesAll(network, plan.basis, places.filter((other) => other !== each), 0.001)).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  test('the plan takes every one of them', () => {
    fc.assert(
      fc.property(anyNetwork, (plan) => {
        const suggested = suggestionsFor(plan);
        const outcome = replaceSupports({ kind: 'network', id: 'net' }, suggested)(plan);
        expect(outcome.ok && Object.keys(outcome.next.networks.net?.supports ?? {}).length).toBe(suggested.length);
      }),
    );
  });

  test('the checks of spans, turns and nozzles find nothing against them', () => {
    fc.assert(
      fc.property(anyNetwork, (plan) => {
        const outcome = replaceSupports({ kind: 'network', id: 'net' }, suggestionsFor(plan))(plan);
        if (!outcome.ok) throw new Error(outcome.reason);
        const faults = [p18SupportSpan, p19NozzleSupport, p20TurnSupport].flatMap((rule) => check(rule, outcome.next)).filter(({ verdict }) => verdict === 'stop' || verdict === 'warn');
        expect(faults).toEqual([]);
      }),
    );
  });

  // Counted by hand: ISO spans of 1.8 m for NPS 3/4, the last within 100 mm of the nozzle.
  test.each([
    ['a drop of 0.5 m: one', [at3(0, 0, 3), at3(0, 0, 2.5)], 1],
    ['1.85 m straight: one near the nozzle reaches the start', [at3(0, 0, 0), at3(1.85, 0, 0)], 1],
    ['1.95 m straight: two', [at3(0, 0, 0), at3(1.95, 0, 0)], 2],
    ['5.4 m straight: three', [at3(0, 0, 0), at3(5.4, 0, 0)], 3],
    ['3 m and a drop of 0.35 m: that of the nozzle serves the elbow too', [at3(0, 0, 3), at3(3, 0, 3), at3(3, 0, 2.65)], 2],
  ])('%s', (_, places, count) => {
    const nozzle = places.at(-1);
    expect(placesOf(layout({ runs: [{ places }], nozzles: nozzle ? [{ at: nozzle }] : [] }))).toHaveLength(count);
  });

  test('no straight run of one size gets more than whole spans ask for', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 60, noNaN: true }), (length_m) => {
        const plan = layout({ runs: [{ places: [at3(0, 0, 0), at3(length_m, 0, 0)], size: '1' }] });
        // Supports stand at whole steps of 5 mm, a millimetre inside the limit.
        expect(placesOf(plan).length).toBeLessThanOrEqual(Math.ceil(length_m / 2.094) - 1);
        expect(placesOf(plan).length).toBeGreaterThanOrEqual(Math.ceil(length_m / 2.1) - 1);
      }),
    );
  });

  test('a nipple too short to keep clear is held at its middle', () => {
    const plan = layout({ runs: [{ places: [at3(0, 0, 3), at3(1, 0, 3), at3(1, 0, 2.94)] }], nozzles: [{ at: at3(1, 0, 2.94) }] });
    expect(placesOf(plan).some(({ x, z }) => x === 1 && Math.abs(z - 2.97) < 1e-9)).toBe(true);
  });

  // By hand: the support next to the far end stands 2.095 m from it, the coupling 21 ft = 6.401 m from the start: they meet at a
  // length of 8.496 m.
  test('a support makes way for a coupling between two lengths of stock, and every rule is kept', () => {
    const couplingBetween = (length_m: number): { plan: Plan; gap_m: number } => {
      const plan = layout({ runs: [{ places: [at3(0, 0, 0), at3(length_m, 0, 0)], size: '1' }] });
      const [coupling] = couplingsOf(networkOf(plan));
      return { plan, gap_m: coupling ? Math.min(...placesOf(plan).map((at) => distance3_m(at, coupling))) : Number.NaN };
    };
    let nearest_m = Number.POSITIVE_INFINITY;
    for (let step = 0; step <= 440; step += 1) {
      const { plan, gap_m } = couplingBetween(6.45 + step * 0.005);
      nearest_m = Math.min(nearest_m, gap_m);
      const network = networkOf(plan);
      expect(doesAll(network, plan.basis, placesOf(plan))).toBe(true);
    }
    expect(nearest_m).toBeGreaterThanOrEqual(0.05 - 1e-9);
    // The walk over the lengths did bring one as near as it may come.
    expect(nearest_m).toBeLessThan(0.06);
  });

  test('a union on a straight pipe is kept clear of like any fitting', () => {
    // One near 2.095 m from the end, where the union is put.
    for (let step = -10; step <= 10; step += 1) {
      const union = at3(3.905 + step * 0.005, 0, 0);
      const plan = layout({ runs: [{ places: [at3(0, 0, 0), union, at3(6, 0, 0)], size: '1' }] });
      const node = Object.values(plan.networks.net?.nodes ?? {}).find(({ at }) => distance3_m(at, union) < 1e-9);
      if (!node) throw new Error('The pipe has its union.');
      node.part = 'union';
      expect(networkOf(plan).fittings.map(({ kind }) => kind)).toContain('union');
      for (const at of placesOf(plan)) expect(distance3_m(at, union)).toBeGreaterThanOrEqual(0.05 - 1e-9);
    }
  });

  test('what a rigid support bears stays where it stands again; a guide that stood there proves nothing', () => {
    const plan = layout({ runs: [{ places: [at3(0, 0, 0), at3(4, 0, 0)] }], nozzles: [{ at: at3(4, 0, 0) }] });
    const [first] = placesOf(plan);
    if (!first) throw new Error('A run of pipe has supports.');
    const again = (kind: 'rigid' | 'guide') => {
      const outcome = replaceSupports({ kind: 'network', id: 'net' }, [{ at: first, kind, capacity_N: 900 }])(plan);
      return outcome.ok ? suggestionsFor(outcome.next) : [];
    };
    expect(again('rigid').map(({ capacity_N }) => capacity_N)).toContain(900);
    expect(again('guide').every(({ capacity_N, kind }) => capacity_N === null && kind === 'rigid')).toBe(true);
  });

  test('a size that the table leaves out is held by the closest spans known', () => {
    const run = (size: PipeSize) => placesOf(layout({ runs: [{ places: [at3(0, 0, 0), at3(9, 0, 0)], size }], basis: { supportTable: 'b31.1' } }));
    expect(run('3/4')).toHaveLength(5);
    expect(run('1/4')).toHaveLength(6);
  });

  test('pipe in a loop, without a source, or lost from its node, is held as far as it goes', () => {
    const square = [at3(0, 0, 0), at3(5, 0, 0), at3(5, 5, 0), at3(0, 5, 0), at3(0, 0, 0)];
    const loop = layout({ runs: [{ places: square }] });
    expect(placesOf(loop).length).toBeGreaterThan(10);
    const network = loop.networks.net;
    if (network) network.source = null;
    expect(placesOf(loop).length).toBeGreaterThan(10);
    if (network) delete network.nodes.k3;
    expect(placesOf(loop).length).toBeGreaterThan(4);
    expect(placesOf(layout({}))).toEqual([]);
  });
});
