import { describe, expect, test } from 'vitest';
import type { Plan } from '#shared/model/plan';
import { hitForEnd, hitForStart, isOpenEnd, pipeBegin_m, stackOf } from '../../../src-renderer/tools/network-hits.ts';
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

  test('a cylinder so far over its outlet that the hose can turn back, or up under a manifold', () => {
    const begin = (z_in: number) => ({ kind: 'cylinder', at: { x: 1, y: 1, z: expect.closeTo(z_in * 0.0254, 9) } });
    const inFeet = (plan: Plan): Plan => ({ ...plan, settings: { ...plan.settings, lengths: 'feet' } });
    // Outlet 66 in, bend radius 150 mm: 11.8 in over it, in whole inches.
    const bare = planBuilder().network().cylinder(1, 1, 0);
    expect(hitForStart(inFeet(bare.plan), level, { x: 1, y: 1 }, 2.4)).toMatchObject(begin(78));
    const part = { id: 'p', name: '', setPressure_Pa: null, arrowDownstream: true, length_m: 0.25 };
    const assembly = (['hose', 'check-valve', 'manifold', 'regulator'] as const).map((kind) => ({ ...part, kind }));
    const manifolded = planBuilder().network({ assembly }).cylinder(1, 1, 0);
    expect(hitForStart(inFeet(manifolded.plan), level, { x: 1, y: 1 }, 2.4)).toMatchObject(begin(82));
    expect(hitForStart(manifolded.plan, level, { x: 1, y: 1 }, 2.4)).toMatchObject({ at: { z: expect.closeTo(2.08, 9) } });
  });

  test('a cylinder at its outlet with the stiff parts above it, while the bend of its hose is blank', () => {
    const part = { id: 'p', name: '', setPressure_Pa: null, arrowDownstream: true, length_m: 0.25 };
    const { plan: fitted, networkId } = planBuilder().network({ assembly: [{ ...part, kind: 'hose' }, { ...part, kind: 'regulator' }] });
    const of = fitted.networks[networkId];
    const profiles = Object.fromEntries(Object.entries(fitted.profiles).map(([id, { limits: { hoseBendRadius_m: _, ...limits }, ...profile }]) => [id, { ...profile, limits }]));
    expect(of && pipeBegin_m({ ...fitted, profiles }, of)).toBeCloseTo(66 * 0.0254 + 0.25, 9);
    expect(of && pipeBegin_m({ ...fitted, profiles: {} }, of)).toBeUndefined();
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
