import { describe, expect, test } from 'vitest';
import { hitForEnd, hitForStart, isOpenEnd, outletHeight_m, stackOf } from '../../../src-renderer/tools/network-hits.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const built = planBuilder()
  .network()
  .cylinder(0, 0, Math.PI)
  .run([place3(0, 0, 2), place3(0, 0, 2.4), place3(4, 0, 2.4), place3(4, 0, 2.6), place3(4, 3, 2.6)])
  .run([place3(2, 0, 2.4), place3(2, 2, 2.4)]);
const network = () => {
  const found = built.plan.networks[built.networkId];
  if (!found) throw new Error('The network has gone.');
  return found;
};
const { plan } = built;
const level = built.levelId;

describe('what a run begins and ends on', () => {
  test('of several nodes on one place the one nearest to the height', () => {
    expect(hitForStart(plan, level, { x: 4, y: 0 }, 2.6)).toMatchObject({ kind: 'node', at: { z: 2.6 } });
    expect(hitForEnd(plan, level, { x: 4, y: 0 }, 2.3)).toMatchObject({ kind: 'node', at: { z: 2.4 } });
  });

  test('a pipe between its ends, at its height there', () => {
    expect(hitForStart(plan, level, { x: 3, y: 0 }, 2)).toMatchObject({ kind: 'pipe', at: { x: 3, y: 0, z: 2.4 } });
  });

  test('a cylinder at its outlet, with the stiff parts above it', () => {
    const bare = planBuilder().network().cylinder(1, 1, 0);
    expect(hitForStart(bare.plan, level, { x: 1, y: 1 }, 2.4)).toMatchObject({ kind: 'cylinder', at: { x: 1, y: 1, z: expect.closeTo(66 * 0.0254, 9) } });
    const part = { id: 'p', name: '', setPressure_Pa: null, arrowDownstream: true, length_m: 0.25 };
    const fitted = planBuilder().network({ assembly: [{ ...part, kind: 'hose' }, { ...part, kind: 'regulator' }] });
    const of = fitted.plan.networks[fitted.networkId];
    expect(of && outletHeight_m(fitted.plan, of)).toBeCloseTo(66 * 0.0254 + 0.25, 9);
    expect(of && outletHeight_m({ ...fitted.plan, profiles: {} }, of)).toBeUndefined();
  });

  test('nothing beside them, nor on another level', () => {
    expect(hitForStart(plan, level, { x: 3, y: 1 }, 2.4)).toBeUndefined();
    expect(hitForEnd(plan, 'elsewhere', { x: 4, y: 0 }, 2.4)).toBeUndefined();
  });
});

test('an open end has one pipe, no nozzle, and is not the source', () => {
  expect(isOpenEnd(network(), built.nodeAt(4, 3, 2.6).id)).toBe(true);
  expect(isOpenEnd(network(), built.nodeAt(0, 0, 2).id)).toBe(false);
  expect(isOpenEnd(network(), built.nodeAt(4, 0, 2.4).id)).toBe(false);
  const hung = planBuilder().network().run([place3(0, 0, 2), place3(1, 0, 2)]).nozzle(1, 0, 2);
  const of = hung.plan.networks[hung.networkId];
  expect(of && isOpenEnd(of, hung.nodeAt(1, 0, 2).id)).toBe(false);
});

test('a stack is what upright pipes join on one place of the plan', () => {
  expect(stackOf(network(), built.nodeAt(4, 0, 2.4).id).map(({ id }) => id).sort()).toEqual([built.nodeAt(4, 0, 2.4).id, built.nodeAt(4, 0, 2.6).id].sort());
  expect(stackOf(network(), built.nodeAt(4, 3, 2.6).id)).toHaveLength(1);
  expect(stackOf(network(), 'gone')).toEqual([]);
});
