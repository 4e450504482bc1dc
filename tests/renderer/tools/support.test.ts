import { describe, expect, test } from 'vitest';
import { addSupport } from '#shared/commands/add-support';
import type { Plan, Support } from '#shared/model/plan';
import { slideSupports } from '../../../src-renderer/tools/support-place.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

/** A run east at 2.4 m, then 0.3 m down to a nozzle. */
const run = (): Plan =>
  planBuilder()
    .room(6, 4, 2.7)
    .network()
    .run([place3(1, 2, 2.4), place3(4, 2, 2.4), place3(4, 2, 2.1)])
    .nozzle(4, 2, 2.1).plan;

const supportsOf = (plan: Plan): Support[] => Object.values(plan.networks).flatMap(({ supports }) => Object.values(supports));
const networkOf = (plan: Plan): string => Object.keys(plan.networks)[0] ?? '';

function withSupport(x: number, z = 2.4): Plan {
  const plan = run();
  const outcome = addSupport(networkOf(plan), { x, y: 2, z }, 'rigid')(plan);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.next;
}

describe('the support tool', () => {
  test('puts a rigid support on the pipe under the pointer, which stays at hand for the next', () => {
    const drawn = toolBench(run()).use('support').click(2, 2.05).click(3, 1.95);
    expect(supportsOf(drawn.plan()).map(({ at, kind }) => ({ at, kind }))).toEqual([
      { at: { x: 2, y: 2, z: 2.4 }, kind: 'rigid' },
      { at: { x: 3, y: 2, z: 2.4 }, kind: 'rigid' },
    ]);
    expect(drawn.steps()).toBe(2);
    expect(drawn.store.get().session).toMatchObject({ tool: 'support', selection: [{ kind: 'support' }] });
  });

  test('keeps clear of the fittings at the ends', () => {
    const drawn = toolBench(run()).use('support').click(3.99, 2);
    expect(supportsOf(drawn.plan())[0]?.at.x).toBeCloseTo(3.95, 9);
  });

  test('takes a typed distance from the nearer end, and says how long the pipe is', () => {
    const drawn = toolBench(run()).use('support').move(3.2, 2).type({ length: 0.25 });
    expect(supportsOf(drawn.plan())[0]?.at.x).toBeCloseTo(3.75, 9);
    drawn.move(3.2, 2).type({ length: 5 });
    expect(drawn.refusal()).toContain('3.000 m long');
    expect(supportsOf(drawn.plan())).toHaveLength(1);
  });

  test('Enter puts it where the sketch shows it; Escape leaves', () => {
    const drawn = toolBench(run()).use('support').move(2, 2).enter();
    expect(supportsOf(drawn.plan())).toHaveLength(1);
    drawn.escape();
    expect(drawn.store.get().session.tool).toBe('select');
  });

  test('refuses a place where no pipe runs', () => {
    const drawn = toolBench(run()).use('support').click(2, 3);
    expect(drawn.refusal()).toContain('No pipe runs here');
    expect(drawn.steps()).toBe(0);
  });
});

describe('a support on the board', () => {
  test('is picked before its pipe and slides along it, never off it', () => {
    const drawn = toolBench(withSupport(2)).drag([2, 2], [2.6, 2.7]);
    expect(supportsOf(drawn.plan())[0]?.at).toEqual({ x: expect.closeTo(2.6, 9), y: 2, z: 2.4 });
    drawn.drag([2.6, 2], [5.5, 2]);
    expect(supportsOf(drawn.plan())[0]?.at.x).toBeCloseTo(3.95, 9);
    expect(drawn.steps()).toBe(2);
  });

  test('moves by a typed length along its pipe', () => {
    const drawn = toolBench(withSupport(2)).press(2, 2).move(2.4, 2).type({ length: 0.5 });
    expect(supportsOf(drawn.plan())[0]?.at.x).toBeCloseTo(2.5, 9);
  });

  test('of a drop comes up with a second click on the nozzle below it, and is not dragged off over the plan', () => {
    const drawn = toolBench(withSupport(4, 2.25)).click(4, 2);
    expect(drawn.store.get().session.selection).toMatchObject([{ kind: 'nozzle' }]);
    drawn.click(4, 2);
    expect(drawn.store.get().session.selection).toMatchObject([{ kind: 'support' }]);
    drawn.drag([4, 2], [3, 2]);
    expect(supportsOf(drawn.plan())[0]?.at).toEqual({ x: 4, y: 2, z: 2.25 });
  });

  test('is found by a box and rides on its pipe', () => {
    const drawn = toolBench(withSupport(2)).press(1.9, 1.5).move(2.2, 2.2).release(2.2, 2.2);
    expect(drawn.store.get().session.selection).toMatchObject([{ kind: 'support' }]);
    drawn.escape().drag([3, 2], [3, 2.5]);
    expect(supportsOf(drawn.plan())[0]?.at).toEqual({ x: 2, y: 2.5, z: 2.4 });
  });

  test('is nudged along its pipe', () => {
    const plan = withSupport(2);
    const refs = supportsOf(plan).map(({ id }) => ({ kind: 'support' as const, network: networkOf(plan), id }));
    const outcome = slideSupports(plan, refs, 0.1, 0.3)(plan);
    expect(outcome.ok && supportsOf(outcome.next)[0]?.at.x).toBeCloseTo(2.1, 9);
  });
});
