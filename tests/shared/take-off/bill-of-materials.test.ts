import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boughtFittingsOf } from '#shared/derived/bought-fittings';
import { derivePlan } from '#shared/derived/derive-plan';
import { billOfMaterials } from '#shared/take-off/bill-of-materials';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { anyPipePlan } from './any-network.ts';

const INCH_m = 0.0254;
const FOOT_m = 0.3048;

describe('F1 by hand', () => {
  test('one bar of NPS 3/4, two elbows, a tee with its dirt trap, one nozzle, one cylinder', async () => {
    const bill = billOfMaterials(derivePlan((await buildDemo('F1')).plan));
    expect(bill.pipe).toHaveLength(1);
    const [pipe] = bill.pipe;
    expect(pipe).toMatchObject({ size: '3/4', schedule: '40', uncut: 0, nesting: { isFewest: true, leastBars: 1, bars: { length: 1 } } });
    // 13.1225 + 85.245 + 46.245 + 3.1225 + 3.1225 = 150.8575 in of a bar of 252 in.
    expect(pipe?.length_m).toBeCloseTo(157 * INCH_m, 9);
    expect((pipe?.nesting.waste_m ?? 0) / INCH_m).toBeCloseTo(252 - 150.8575, 6);
    // ASME B36.10M: 1.13 lb/ft.
    expect(bill.stockWeight_kg / 0.45359237).toBeCloseTo(21 * 1.13, 1);
    expect(bill.pipeWeight_kg / 0.45359237).toBeCloseTo((150.8575 / 12) * 1.13, 1);
    expect(bill.fittings).toMatchObject([
      { kind: 'elbow-90', sizes: ['3/4'], fittingClass: '300', place: 'node', weightFrom: 'estimate', count: 2 },
      { kind: 'tee', sizes: ['3/4'], place: 'node', weightFrom: 'estimate', count: 1 },
      { kind: 'cap', sizes: ['3/4'], place: 'node', weight_kg: null, count: 1 },
    ]);
    expect(bill.nozzles).toMatchObject([{ code: 'S530', count: 1 }]);
    expect(bill.cylinders).toMatchObject([{ mounting: 'wall', weight_kg: 110, count: 1 }]);
    expect(bill.mounts).toEqual([{ kind: 'rail', count: 1 }, { kind: 'clamp', count: 1 }, { kind: 'restraint', count: 1 }]);
    // Five pieces with two threads; runs of 14, 87 and 48 in have a label each, the two of 4 in none.
    expect(bill.sealant.threads).toEqual([{ size: '3/4', count: 10 }]);
    expect(Object.values(bill.labels)).toEqual([{ count: 3, spacing_m: expect.closeTo(10 * FOOT_m, 9), isStated: true }]);
    // Sleeves around 1.05 in pipe, 0.219 in thick: two legs of 1.44 in at each elbow, three at the tee; 7850 kg/m³.
    const ring_m2 = Math.PI * (1.05 + 0.219) * 0.219 * INCH_m ** 2;
    expect(bill.weights.fittings_kg).toBeCloseTo(7850 * ring_m2 * 7 * 1.44 * INCH_m, 6);
    expect(bill.weights.estimated_kg).toBe(bill.weights.fittings_kg);
    expect(bill.weights.cylinders_kg).toBe(110);
    expect(bill.weights.total_kg).toBeCloseTo(110 + bill.weights.fittings_kg + bill.pipeWeight_kg, 9);
    expect(bill.weights.unknown.join()).toContain('1 fitting');
  });
});

describe('counts', () => {
  test('every bought fitting is counted once, and couplings of the stock besides; every piece is in one order', () => {
    fc.assert(
      fc.property(anyPipePlan, (plan) => {
        const derived = derivePlan(plan);
        const bill = billOfMaterials(derived);
        const atNodes = bill.fittings.filter(({ place }) => place === 'node').reduce((total, { count }) => total + count, 0);
        expect(atNodes).toBe(derived.networks.flatMap(boughtFittingsOf).length);
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
    expect(billOfMaterials(derivePlan(plan)).fittings).toMatchObject([{ kind: 'coupling', sizes: ['3/4'], fittingClass: '300', place: 'stock', count: 2 }]);
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
// Without a manifold each of the two cylinders has both.
    expect(bill.assembly).toEqual([{ kind: 'hose', name: '', length_m: 0.4, count: 4 }]);
    expect([bill.anchors, bill.withoutAnchors]).toEqual([[{ kind: 'wedge anchor M10', count: 4 }], 1]);
    expect(bill.nozzles).toEqual([{ code: null, area_m2: null, count: 1 }]);
  });

  test('what stands before the manifold counts once for each cylinder, the manifold and what follows once', () => {
    const part = (id: string, kind: 'hose' | 'check-valve' | 'manifold' | 'regulator') => ({ id, kind, name: id, length_m: 0.2, setPressure_Pa: null, arrowDownstream: true });
    const built = planBuilder().network({ assembly: [part('h', 'hose'), part('c', 'check-valve'), part('m', 'manifold'), part('r', 'regulator')] });
    built.cylinder(1, 1, 0).cylinder(1, 2, 0).cylinder(1, 3, 0);
    const counts = () => Object.fromEntries(billOfMaterials(derivePlan(built.plan)).assembly.map(({ kind, count }) => [kind, count]));
    expect(counts()).toEqual({ hose: 3, 'check-valve': 3, manifold: 1, regulator: 1 });
    for (const network of Object.values(built.plan.networks)) network.cylinders = {};
    expect(counts()).toEqual({ hose: 1, 'check-valve': 1, manifold: 1, regulator: 1 });
  });

  test('further restraints are counted one by one; a cylinder whose mass is blank is named, not weighed as nothing', () => {
    const built = planBuilder().network().cylinder(1, 1, 0);
    for (const network of Object.values(built.plan.networks)) for (const cylinder of Object.values(network.cylinders)) cylinder.restraints_m = [0.4, 1.4];
    for (const profile of Object.values(built.plan.profiles)) profile.limits = {};
    const bill = billOfMaterials(derivePlan(built.plan));
    expect(bill.mounts).toEqual([{ kind: 'rail', count: 1 }, { kind: 'clamp', count: 1 }, { kind: 'restraint', count: 2 }]);
    expect(bill.cylinders).toMatchObject([{ weight_kg: null, count: 1 }]);
    expect(bill.weights.unknown).toContain('1 cylinder');
  });

  test('sealant for the outside threads of pipe, plug and street elbow; none for welded pipe', () => {
    const built = planBuilder().network().run([place3(1, 5, 3), place3(4, 5, 3), place3(4, 8, 3)]).run([place3(4, 8, 3), place3(4, 8, 5)], '1', { joint: 'welded' });
    const parts = [[place3(4, 5, 3), 'street-elbow'], [place3(4, 8, 5), 'plug']] as const;
    for (const [{ x, y, z }, part] of parts) Object.assign(built.plan.networks[built.networkId]?.nodes[built.nodeAt(x, y, z).id] ?? {}, { part });
    // Two pieces of 3/4 with two threads and the street elbow; the plug of the welded riser.
    expect(billOfMaterials(derivePlan(built.plan)).sealant.threads).toEqual([{ size: '1', count: 1 }, { size: '3/4', count: 5 }]);
  });

  test('stainless pipe weighs by its density', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(4, 5, 3)], '1', { material: 'stainless-steel' }).nozzle(4, 5, 3);
    // A ring of 33.401 mm outside and 3.3782 mm wall, 3 m long, 8000 kg/m³.
    expect(billOfMaterials(derivePlan(plan)).pipeWeight_kg).toBeCloseTo(3 * 8000 * Math.PI * (0.033401 - 0.0033782) * 0.0033782, 2);
  });
});

describe('labels', () => {
  const labelsOf = (length_m: number, marking: string) => {
    const { plan } = planBuilder().network({ installation: { bonding: 'unknown', marking, finish: '' } }).run([place3(0, 5, 3), place3(length_m, 5, 3)]).nozzle(length_m, 5, 3);
    return Object.values(billOfMaterials(derivePlan(plan)).labels)[0];
  };
  test.each([
    [0.3, 'every 3 m', 0],
    [0.3048, 'every 3 m', 1],
    [3, 'every 3 m', 1],
    [3.001, 'every 3 m', 2],
    [9, 'Nitrogen, with an arrow, every 10 ft', 3],
  ] as const)('a run of %d m marked “%s” takes %d', (length_m, marking, count) => {
    expect(labelsOf(length_m, marking)).toMatchObject({ count, isStated: true });
  });

  test.each(['', 'Nitrogen', 'every 10', 'every wall', 'every 2 mm'])('“%s” names no spacing: 25 ft, as is common', (marking) => {
    expect(labelsOf(7.62, marking)).toEqual({ count: 1, spacing_m: 7.62, isStated: false });
    expect(labelsOf(7.63, marking)?.count).toBe(2);
  });
});
