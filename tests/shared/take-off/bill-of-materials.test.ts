import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { billOfMaterials } from '#shared/take-off/bill-of-materials';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { anyPipePlan } from './any-network.ts';

const INCH_m = 0.0254;
const FOOT_m = 0.3048;

describe('F1 by hand', () => {
  test('one bar of NPS 3/4, three elbows, one nozzle, one cylinder', async () => {
    const bill = billOfMaterials(derivePlan((await buildDemo('F1')).plan));
    expect(bill.pipe).toHaveLength(1);
    const [pipe] = bill.pipe;
    expect(pipe).toMatchObject({ size: '3/4', schedule: '40', uncut: 0, nesting: { isFewest: true, leastBars: 1, bars: { length: 1 } } });
    // 13.1225 + 85.245 + 46.245 + 3.1225 = 147.735 in of a bar of 252 in.
    expect(pipe?.length_m).toBeCloseTo(153 * INCH_m, 9);
    expect((pipe?.nesting.waste_m ?? 0) / INCH_m).toBeCloseTo(252 - 147.735, 6);
    // ASME B36.10M: 1.13 lb/ft.
    expect((bill.stockWeight_kg ?? 0) / 0.45359237).toBeCloseTo(21 * 1.13, 1);
    expect((bill.pipeWeight_kg ?? 0) / 0.45359237).toBeCloseTo((147.735 / 12) * 1.13, 1);
    expect(bill.fittings).toEqual([{ kind: 'elbow-90', sizes: ['3/4'], fittingClass: '300', count: 3 }]);
    expect(bill.nozzles).toMatchObject([{ code: 'S530', count: 1 }]);
    expect(bill.cylinders).toMatchObject([{ mounting: 'wall', count: 1 }]);
  });
});

describe('counts', () => {
  test('every fitting of the plan is counted once, and couplings besides; every piece is in one order', () => {
    fc.assert(
      fc.property(anyPipePlan, (plan) => {
        const derived = derivePlan(plan);
        const bill = billOfMaterials(derived);
        const counted = bill.fittings.filter(({ kind }) => kind !== 'coupling' && kind !== 'joint');
        for (const kind of new Set([...counted.map((each) => each.kind), ...derived.networks.flatMap((each) => each.fittings.map((fitting) => fitting.kind))])) {
          const sum = counted.filter((each) => each.kind === kind).reduce((total, { count }) => total + count, 0);
          expect(sum).toBe(derived.networks.flatMap(({ fittings }) => fittings).filter((fitting) => fitting.kind === kind).length);
        }
        expect(bill.pipe.reduce((sum, { pieces }) => sum + pieces.length, 0)).toBe(bill.pieces.length);
        expect(bill.pipe.reduce((sum, { length_m }) => sum + length_m, 0)).toBeCloseTo(derived.networks.reduce((sum, { totalLength_m }) => sum + totalLength_m, 0), 8);
        for (const { nesting, pieces } of bill.pipe) {
          expect(nesting.tooLong).toEqual([]);
          expect(nesting.bars.flat()).toHaveLength(pieces.length);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('a run of 50 ft takes two couplings', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(1 + 50 * FOOT_m, 5, 3)]).nozzle(1 + 50 * FOOT_m, 5, 3);
    expect(billOfMaterials(derivePlan(plan)).fittings).toEqual([{ kind: 'coupling', sizes: ['3/4'], fittingClass: '300', count: 2 }]);
  });

  test('supports by kind and size, parts, anchors; what is not chosen is counted as such', () => {
    const built = planBuilder().room(40, 40, 5).network({
      assembly: [
        { id: 'a', kind: 'hose', name: '', length_m: 0.4, setPressure_Pa: null, arrowDownstream: true },
        { id: 'b', kind: 'hose', name: '', length_m: 0.4, setPressure_Pa: null, arrowDownstream: true },
      ],
    });
    built.cylinder(1, 5, 0).cylinder(1, 6, 0).run([place3(1, 5, 3), place3(4, 5, 3)]).nozzle(4, 5, 3).support(2, 5, 3).support(3, 5, 3).support(9, 9, 3, 'hanger');
    const [first] = Object.values(built.plan.networks[built.networkId]?.cylinders ?? {});
    if (first) first.anchors = { kind: 'wedge anchor M10', count: 4, tension_N: 1, shear_N: 1, edge_m: 1, leastEdge_m: 1 };
    const bill = billOfMaterials(derivePlan(built.plan));
    expect(bill.supports).toEqual([{ kind: 'rigid', size: '3/4', count: 2 }, { kind: 'hanger', size: null, count: 1 }]);
    expect(bill.assembly).toEqual([{ kind: 'hose', name: '', length_m: 0.4, count: 2 }]);
    expect([bill.anchors, bill.withoutAnchors]).toEqual([[{ kind: 'wedge anchor M10', count: 4 }], 1]);
    expect(bill.nozzles).toEqual([{ code: null, area_m2: null, count: 1 }]);
  });

  test('the weight of stainless pipe is not given by the formula for carbon steel', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(4, 5, 3)], '1', { material: 'stainless-steel' }).nozzle(4, 5, 3);
    expect(billOfMaterials(derivePlan(plan))).toMatchObject({ pipeWeight_kg: null, stockWeight_kg: null });
  });
});
