import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PlanPoint3, distance3_m } from '#shared/geometry/point';
import { type AsBuilt, asBuiltOf } from '#shared/take-off/as-built';
import { billOfMaterials } from '#shared/take-off/bill-of-materials';
import { piecesOf } from '#shared/take-off/pieces-of';
import { type PlanBuilder, place3, planBuilder } from '../../support/plan-builder.ts';
import { anyBuiltPlan, firstNetwork } from './any-network.ts';

/** The nth pipe that was drawn, from 1, measured. */
function measured(built: PlanBuilder, ...measures: readonly (readonly [pipe: number, measured_m: number])[]): AsBuilt {
  const pipes = Object.values(built.plan.networks[built.networkId]?.pipes ?? {});
  for (const [pipe, measured_m] of measures) Object.assign(pipes[pipe - 1] ?? {}, { measured_m });
  return asBuiltOf(firstNetwork(built.plan));
}
const lengths = ({ lengths_m }: AsBuilt): number[] => [...lengths_m.values()].map((length_m) => Number(length_m.toFixed(9)));
const bases = (asBuilt: AsBuilt) => [...asBuilt.bases.values()];
const placeOf = (built: PlanBuilder, asBuilt: AsBuilt, x: number, y: number, z: number): PlanPoint3 | undefined => asBuilt.places.get(built.nodeAt(x, y, z).id);
const near = (x: number, y: number, z: number) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9), z: expect.closeTo(z, 9) });

describe('an L by hand: 4 m east, then 3 m north to the nozzle', () => {
  const corner = () => planBuilder().room(40, 40, 5).network().run([place3(1, 1, 3), place3(5, 1, 3), place3(5, 4, 3)]).nozzle(5, 4, 3);

  test('nothing measured: all is as drawn', () => {
    const asBuilt = measured(corner());
    expect([lengths(asBuilt), bases(asBuilt), asBuilt.moved, asBuilt.unused]).toEqual([[4, 3], ['drawn', 'drawn'], [], []]);
  });

  test('the first leg is 3.9 m: no pipe runs along it any more, so that the nozzle moves west by 100 mm', () => {
    const built = corner();
    const asBuilt = measured(built, [1, 3.9]);
    expect([lengths(asBuilt), bases(asBuilt)]).toEqual([[3.9, 3], ['measured', 'drawn']]);
    expect(placeOf(built, asBuilt, 5, 1, 3)).toEqual(near(4.9, 1, 3));
    expect(asBuilt.moved).toMatchObject([{ from: { x: 5, y: 4, z: 3 }, to: near(4.9, 4, 3), by_m: expect.closeTo(0.1, 9) }]);
  });

  test('both legs measured: each moves it along itself', () => {
    const asBuilt = measured(corner(), [1, 4.03], [2, 2.96]);
    expect(lengths(asBuilt)).toEqual([4.03, 2.96]);
    expect(asBuilt.moved).toMatchObject([{ to: near(5.03, 3.96, 3), by_m: expect.closeTo(0.05, 9) }]);
  });

  test('measured as drawn: measured, and nothing moves', () => {
    const asBuilt = measured(corner(), [1, 4]);
    expect([bases(asBuilt), asBuilt.moved]).toEqual([['measured', 'drawn'], []]);
  });
});

describe('a Z by hand: 4 m east, 2 m north, 5 m east to the nozzle', () => {
  const offset = () => planBuilder().room(40, 40, 5).network().run([place3(1, 1, 3), place3(5, 1, 3), place3(5, 3, 3), place3(10, 3, 3)]).nozzle(10, 3, 3);

  test('the first leg is 4.12 m: the third gives 120 mm up and the nozzle stays', () => {
    const built = offset();
    const asBuilt = measured(built, [1, 4.12]);
    expect([lengths(asBuilt), bases(asBuilt), asBuilt.moved]).toEqual([[4.12, 2, 4.88], ['measured', 'drawn', 'follows'], []]);
    expect(placeOf(built, asBuilt, 5, 3, 3)).toEqual(near(5.12, 3, 3));
    expect(placeOf(built, asBuilt, 10, 3, 3)).toEqual(near(10, 3, 3));
  });

  test('the pieces are cut by it, by hand', () => {
    const built = offset();
    measured(built, [1, 4.12]);
    // Class 300, NPS 3/4: (1.44 − 0.5625) in = 22.2885 mm at each elbow.
    const pieces = piecesOf(firstNetwork(built.plan));
    expect(pieces.map(({ basis }) => basis)).toEqual(['measured', 'drawn', 'follows']);
    expect(pieces.map(({ cut_m }) => Number(cut_m?.toFixed(7)))).toEqual([4.0977115, 1.955423, 4.8577115]);
  });

  test('a leg that runs back takes up the other way: 4 m east, 2 m north, 3 m west', () => {
    const built = planBuilder().room(40, 40, 5).network().run([place3(1, 1, 3), place3(5, 1, 3), place3(5, 3, 3), place3(2, 3, 3)]).nozzle(2, 3, 3);
    expect(lengths(measured(built, [1, 4.1]))).toEqual([4.1, 2, 3.1]);
  });

  test('a third leg that is measured too takes nothing up: the nozzle moves by both together', () => {
    const asBuilt = measured(offset(), [1, 4.12], [3, 4.98]);
    expect(lengths(asBuilt)).toEqual([4.12, 2, 4.98]);
    expect(asBuilt.moved).toMatchObject([{ to: near(10.1, 3, 3), by_m: expect.closeTo(0.1, 9) }]);
  });

  test('a third leg too short to take it up stays, and the nozzle moves', () => {
    const built = planBuilder().room(40, 40, 5).network().run([place3(1, 1, 3), place3(5, 1, 3), place3(5, 3, 3), place3(5.05, 3, 3)]).nozzle(5.05, 3, 3);
    const asBuilt = measured(built, [1, 4.1]);
    expect(lengths(asBuilt)).toEqual([4.1, 2, 0.05]);
    expect(asBuilt.moved).toMatchObject([{ by_m: expect.closeTo(0.1, 9) }]);
  });

  test('the next length of the same run takes it up first', () => {
    const built = planBuilder().room(40, 40, 5).network().run([place3(1, 1, 3), place3(3, 1, 3), place3(5, 1, 3), place3(5, 3, 3)]).nozzle(5, 3, 3);
    expect(lengths(measured(built, [1, 2.2]))).toEqual([2.2, 1.8, 2]);
  });
});

describe('a tee with two branches by hand: 4 m east, then 3 m on east and 2 m north', () => {
  const tee = () => planBuilder().room(40, 40, 5).network().run([place3(1, 1, 3), place3(5, 1, 3), place3(8, 1, 3)]).run([place3(5, 1, 3), place3(5, 3, 3)]).nozzle(8, 1, 3).nozzle(5, 3, 3);

  test('to the tee it is 4.15 m: the run goes on 150 mm shorter to its nozzle, the branch moves its own by 150 mm', () => {
    const built = tee();
    const asBuilt = measured(built, [1, 4.15]);
    expect([lengths(asBuilt), bases(asBuilt)]).toEqual([[4.15, 2.85, 2], ['measured', 'follows', 'drawn']]);
    expect(asBuilt.moved).toMatchObject([{ nozzle: built.lastNozzle.id, from: { x: 5, y: 3, z: 3 }, to: near(5.15, 3, 3) }]);
    const { asBuilt: told } = billOfMaterials({ networks: [firstNetwork(built.plan)] });
    expect(told[built.networkId]?.moved).toHaveLength(1);
  });

  test('a branch that runs on east takes it up in its own pipe', () => {
    const built = planBuilder().room(40, 40, 5).network()
      .run([place3(1, 1, 3), place3(5, 1, 3), place3(8, 1, 3)]).run([place3(5, 1, 3), place3(5, 3, 3), place3(7, 3, 3)]).nozzle(8, 1, 3).nozzle(7, 3, 3);
    const asBuilt = measured(built, [1, 4.15]);
    expect(lengths(asBuilt)).toEqual([4.15, 2.85, 2, 1.85]);
    expect(asBuilt.moved).toEqual([]);
  });

  test('a measured branch leaves the run alone', () => {
    const built = tee();
    const asBuilt = measured(built, [3, 2.2]);
    expect(lengths(asBuilt)).toEqual([4, 3, 2.2]);
    expect(asBuilt.moved).toMatchObject([{ to: near(5, 3.2, 3) }]);
  });
});

test('in a network that closes a ring a measured pipe is taken as drawn, and named', () => {
  const built = planBuilder().room(40, 40, 5).network().run([place3(1, 1, 3), place3(5, 1, 3), place3(5, 4, 3), place3(1, 4, 3), place3(1, 1, 3)]);
  const asBuilt = measured(built, [1, 4.2]);
  expect([lengths(asBuilt), asBuilt.unused.length]).toEqual([[4, 3, 4, 3], 1]);
});

test('any network: every length is that between its laid-out ends, directions stay, and pieces add up to the lengths', () => {
  fc.assert(
    fc.property(anyBuiltPlan, fc.array(fc.tuple(fc.nat(11), fc.double({ min: -0.2, max: 0.2, noNaN: true })), { maxLength: 4 }), (plan, changes) => {
      const [network] = Object.values(plan.networks);
      const pipes = Object.values(network?.pipes ?? {});
      for (const [index, by_m] of changes) {
        const pipe = pipes[index % pipes.length];
        const [a, b] = [network?.nodes[pipe?.from ?? '']?.at, network?.nodes[pipe?.to ?? '']?.at];
        if (pipe && a && b) pipe.measured_m = Math.max(0.05, distance3_m(a, b) + by_m);
      }
      const derived = firstNetwork(plan);
      const asBuilt = asBuiltOf(derived);
      let sum_m = 0;
      for (const { id, from, to, measured_m } of pipes) {
        const [a, b] = [asBuilt.places.get(from), asBuilt.places.get(to)];
        const [c, d] = [network?.nodes[from]?.at, network?.nodes[to]?.at];
        if (!a || !b || !c || !d) throw new Error('A pipe lost its ends.');
        const length_m = asBuilt.lengths_m.get(id) ?? Number.NaN;
        expect(Math.abs(distance3_m(a, b) - length_m)).toBeLessThan(1e-9);
        if (measured_m !== null) expect(length_m).toBe(measured_m);
        const cosine = ((b.x - a.x) * (d.x - c.x) + (b.y - a.y) * (d.y - c.y) + (b.z - a.z) * (d.z - c.z)) / (length_m * distance3_m(c, d));
        expect(cosine).toBeGreaterThan(1 - 1e-9);
        sum_m += length_m;
      }
      const pieces = piecesOf(derived);
      expect(Math.abs(pieces.reduce((sum, { centreToCentre_m }) => sum + centreToCentre_m, 0) - sum_m)).toBeLessThan(1e-9);
      expect(pieces.some(({ basis }) => basis === 'measured')).toBe(pipes.some(({ measured_m }) => measured_m !== null));
    }),
    { numRuns: 200 },
  );
});
