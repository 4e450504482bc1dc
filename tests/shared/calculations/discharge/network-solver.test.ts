import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FlowNozzle, FlowStretch } from '#shared/calculations/discharge/discharge';
import { type NetworkFlow, createNetwork } from '#shared/calculations/discharge/network-solver';
import { pipeGasOf } from '#shared/calculations/discharge/pipe-gas';
import { meanPressure_Pa, stretchInlet } from '#shared/calculations/discharge/stretch-flow';
import { idealOrificeFlow_kg_s } from '#shared/calculations/formulas/orifice';
import { isothermalFlow_kg_s } from '#shared/calculations/formulas/isothermal-pipe';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';

const IDEAL = pipeGasOf('ideal');
const REAL = pipeGasOf('real');
const OPEN_Pa = 101_325;
const backs = (nozzles: readonly FlowNozzle[]): number[] => nozzles.map(() => OPEN_Pa);
const nozzleAt = (node: number, area_m2: number): FlowNozzle => ({ id: `N${node}`, node, area_m2, dischargeCoefficient: 0.85, space: 0 });
const pipe = (from: number, to: number, length_m: number, bore_m: number, lossFactor = 0): FlowStretch => ({ from, to, length_m, bore_m, roughness_m: 0.0457e-3, lossFactor });

describe('one pipe', () => {
  test('so wide that it loses nothing: the nozzle alone decides', () => {
    const { flow_kg_s } = createNetwork([pipe(0, 1, 10, 2)], 2, [nozzleAt(1, 1e-4)]).solve(60e5, IDEAL(288.15), [OPEN_Pa]);
    expect(flow_kg_s / idealOrificeFlow_kg_s(1e-4, 0.85, 60e5, 288.15, OPEN_Pa)).toBeCloseTo(1, 6);
  });
  test('so narrow that the nozzle is as good as open: it chokes at its end', () => {
    const resistance = (0.0222 * 20) / 0.0266446;
    const { flow_kg_s, nozzles } = createNetwork([pipe(0, 1, 0, 0.0266446, resistance)], 2, [nozzleAt(1, 0.5)]).solve(60e5, IDEAL(288.15), [OPEN_Pa]);
    // 2.51477 kg/s computed from isothermal pipe flow.
    expect(flow_kg_s).toBeCloseTo(2.51477, 4);
    expect(nozzles[0]?.isChoked).toBe(false);
  });
  test('in between: pipe and nozzle pass the same', () => {
    const { flow_kg_s, pressures_Pa } = createNetwork([pipe(0, 1, 0, 0.02, 25)], 2, [nozzleAt(1, 1e-4)]).solve(60e5, IDEAL(288.15), [OPEN_Pa]);
    const [, end_Pa = 0] = pressures_Pa;
    expect(end_Pa).toBeLessThan(58e5);
    expect(isothermalFlow_kg_s(0.02, 25, NITROGEN_R_J_kgK * 288.15, 60e5, end_Pa) / flow_kg_s).toBeCloseTo(1, 7);
    expect(idealOrificeFlow_kg_s(1e-4, 0.85, end_Pa, 288.15, OPEN_Pa) / flow_kg_s).toBeCloseTo(1, 7);
  });
});

test.each([1, 2, 3, 4])('a tree that forks %d times into equal halves feeds all its nozzles alike', (forks) => {
  const stretches: FlowStretch[] = [pipe(0, 1, 3, 0.05)];
  let ends = [1];
  let next = 2;
  for (let fork = 0; fork < forks; fork += 1) {
    ends = ends.flatMap((from) => [next++, next++].map((to) => {
      stretches.push(pipe(from, to, 2.5, 0.04 - 0.006 * fork, 1.2));
      return to;
    }));
  }
  const nozzles = ends.map((node) => nozzleAt(node, 6e-5));
  const { flow_kg_s, nozzles: flows, isSolved } = createNetwork(stretches, next, nozzles).solve(60e5, REAL(260), backs(nozzles));
  expect(isSolved).toBe(true);
  expect(flows).toHaveLength(2 ** forks);
  for (const flow of flows) expect(Math.abs((flow.flow_kg_s * 2 ** forks) / flow_kg_s - 1)).toBeLessThan(1e-6);
});

test('nearer nozzles get more, and a dead end takes the pressure before it', () => {
  const nozzles = [nozzleAt(1, 5e-5), nozzleAt(2, 5e-5), nozzleAt(3, 5e-5)];
  const { nozzles: flows, pressures_Pa } = createNetwork([pipe(0, 1, 3, 0.02), pipe(1, 2, 3, 0.02), pipe(2, 3, 3, 0.02), pipe(2, 4, 9, 0.01)], 5, nozzles).solve(60e5, IDEAL(288.15), backs(nozzles));
  const [a = 0, b = 0, c = 0] = flows.map(({ flow_kg_s }) => flow_kg_s);
  expect(a).toBeGreaterThan(b);
  expect(b).toBeGreaterThan(c);
  expect(pressures_Pa[4]).toBeCloseTo(pressures_Pa[2] ?? 0, 6);
});

interface Web {
  readonly stretches: readonly FlowStretch[];
  readonly nozzles: readonly FlowNozzle[];
}
/** Powers of ten, evenly. */
const across = (least: number, greatest: number): fc.Arbitrary<number> => fc.double({ min: Math.log(least), max: Math.log(greatest), noNaN: true }).map(Math.exp);
const web: fc.Arbitrary<Web> = fc
  .array(fc.record({ back: fc.nat(), length_m: fc.oneof(fc.constant(0), across(0.01, 200)), bore_m: across(0.004, 1), roughness_m: fc.constantFrom(0, 0.0457e-3, 0.5e-3), lossFactor: fc.oneof(fc.constant(0), across(0.01, 30)) }), { minLength: 1, maxLength: 80 })
  .chain((shapes) =>
    fc.record({
      stretches: fc.constant(shapes.map(({ back, ...shape }, index) => ({ ...shape, from: index - (back % 3 === 0 ? back % (index + 1) : 0), to: index + 1 }))),
      nozzles: fc.array(fc.record({ node: fc.nat({ max: shapes.length }), area_m2: across(1e-8, 1e-2) }), { minLength: 1, maxLength: 60 }).map((list) => list.map(({ node, area_m2 }) => nozzleAt(node, area_m2))),
    }),
  );

/** The least by which the inlet of a stretch misses what it needs, as a share. */
function worstMiss({ stretches, nozzles }: Web, flow: NetworkFlow, gas: ReturnType<typeof IDEAL>): number {
  const behind = new Array<number>(stretches.length + 1).fill(0);
  for (const [index, { node }] of nozzles.entries()) behind[node] = (behind[node] ?? 0) + (flow.nozzles[index]?.flow_kg_s ?? 0);
  let worst = 0;
  for (const stretch of stretches.toReversed()) {
    const from_Pa = flow.pressures_Pa[stretch.from] ?? 0;
    const to_Pa = flow.pressures_Pa[stretch.to] ?? 0;
    const { inlet_Pa } = stretchInlet(stretch, gas, to_Pa, behind[stretch.to] ?? 0, meanPressure_Pa(from_Pa, to_Pa));
    worst = Math.max(worst, Math.abs(inlet_Pa / from_Pa - 1));
    behind[stretch.from] = (behind[stretch.from] ?? 0) + (behind[stretch.to] ?? 0);
  }
  return Math.max(worst, Math.abs((behind[0] ?? 0) / flow.flow_kg_s - 1));
}

test('any tree is solved: each stretch gets the inlet it needs, from the start and after a jump of the source', () => {
  fc.assert(
    fc.property(web, fc.constantFrom(IDEAL, REAL), fc.double({ min: 150, max: 320, noNaN: true }), across(1.05e5, 3e7), across(1.05e5, 3e7), (tree, gasAt, temperature_K, first_Pa, second_Pa) => {
      const network = createNetwork(tree.stretches, tree.stretches.length + 1, tree.nozzles);
      const gas = gasAt(temperature_K);
      for (const source_Pa of [first_Pa, second_Pa, second_Pa * 0.99]) {
        const flow = network.solve(source_Pa, gas, backs(tree.nozzles));
        expect(flow.isSolved).toBe(true);
        expect(flow.pressures_Pa.every((pressure_Pa) => pressure_Pa >= OPEN_Pa && pressure_Pa <= source_Pa)).toBe(true);
        expect(worstMiss(tree, flow, gas)).toBeLessThan(1e-5);
      }
    }),
    { numRuns: 300 },
  );
});

test('a source no stronger than the rooms gives no flow', () => {
  const nozzles = [nozzleAt(1, 1e-4)];
  const { flow_kg_s, pressures_Pa } = createNetwork([pipe(0, 1, 3, 0.02)], 2, nozzles).solve(OPEN_Pa, REAL(288.15), [OPEN_Pa + 500]);
  expect(flow_kg_s).toBe(0);
  expect(pressures_Pa).toEqual([OPEN_Pa, OPEN_Pa]);
});
