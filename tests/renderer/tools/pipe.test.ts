import { describe, expect, test } from 'vitest';
import type { PlanPoint3 } from '#shared/geometry/point';
import type { Network } from '#shared/model/plan';
import { turnsOf } from '../../../src-renderer/tools/pipe-run.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { type ToolBench, toolBench } from '../../support/tool-bench.ts';

const network = (drawn: ToolBench): Network => {
  const found = Object.values(drawn.plan().networks)[0];
  if (!found) throw new Error('There is no network.');
  return found;
};
/** Ends of every pipe, lower or left end first, in order. */
const pipes = (drawn: ToolBench): string[] =>
  Object.values(drawn.plan().networks)
    .flatMap(({ pipes: all, nodes }) => Object.values(all).map(({ from, to }) => [nodes[from]?.at, nodes[to]?.at]))
    .map((ends) => ends.map((at) => (at ? `${at.x},${at.y},${at.z}` : '?')).join(' > '));

const bench = (options = {}) => toolBench(planBuilder().plan, { pipeHeight_m: 2.4, ...options }).use('pipe');

describe('drawing a run', () => {
  test('clicks at the chosen height, Enter ends it in one step', () => {
    const drawn = bench().click(0, 0).click(3, 0).click(3, 2).enter();
    expect(pipes(drawn)).toEqual(['0,0,2.4 > 3,0,2.4', '3,0,2.4 > 3,2,2.4']);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().session.tool).toBe('pipe');
  });

  test('a typed height makes a riser or drop where the run is', () => {
    const drawn = bench().click(0, 0).click(3, 0).type({ height: 2 }).enter();
    expect(pipes(drawn)).toEqual(['0,0,2.4 > 3,0,2.4', '3,0,2.4 > 3,0,2']);
  });

  test('two heights in a row make one upright', () => {
    expect(pipes(bench().click(0, 0).click(3, 0).type({ height: 2 }).type({ height: 1.8 }).enter())).toEqual(['0,0,2.4 > 3,0,2.4', '3,0,2.4 > 3,0,1.8']);
    expect(pipes(bench().click(0, 0).click(3, 0).type({ height: 2 }).type({ height: 2.4 }).enter())).toEqual(['0,0,2.4 > 3,0,2.4']);
  });

  test('length, direction and height typed together', () => {
    const drawn = bench().click(0, 0).type({ length: 3, angle: 0 }).type({ length: 2, angle: Math.PI / 2, height: 2.6 }).enter();
    expect(pipes(drawn)).toEqual(['0,0,2.4 > 3,0,2.4', '3,0,2.4 > 3,0,2.6', '3,0,2.6 > 3,2,2.6']);
  });

  test('a height typed before the start is kept for what follows', () => {
    const drawn = bench().type({ height: 2.1 }).click(0, 0).click(1, 0).enter();
    expect(pipes(drawn)).toEqual(['0,0,2.1 > 1,0,2.1']);
    expect(drawn.store.get().session.toolOptions.pipeHeight_m).toBe(2.1);
  });

  test('square lines keep it level with the plan', () => {
    expect(pipes(bench({ orthogonal: true }).click(0, 0).click(3, 0.4).click(3.3, 2).enter())).toEqual(['0,0,2.4 > 3,0,2.4', '3,0,2.4 > 3,2,2.4']);
  });

  test('the plan shows the run while it is drawn, without a step', () => {
    const drawn = bench().click(0, 0).click(3, 0);
    expect(Object.values(drawn.store.get().preview?.networks ?? {})).toHaveLength(1);
    expect(Object.values(drawn.plan().networks)).toHaveLength(0);
    expect(drawn.steps()).toBe(0);
  });

  test('tells length and elbows so far', () => {
    const drawn = bench().click(0, 0).click(3, 0).type({ height: 2 }).move(3, 2);
    expect(drawn.runner.look().sketch.labels?.[0]?.text).toBe('2.000 m at 90.0°, 2.000 m high. 5.400 m so far, 2 elbows');
  });

  test('after a typed piece no line runs back to where the pointer still is, until it moves', () => {
    const drawn = bench().click(0, 0).move(1, 0).type({ length: 3 });
    expect(drawn.runner.look().sketch.labels?.[0]?.text).toBe('2.400 m high. 3.000 m so far, 0 elbows');
    expect(drawn.type({ length: 1 }).refusal()).toContain('point the way');
    expect(drawn.move(3, 1).runner.look().sketch.labels?.[0]?.text).toContain('1.000 m at 90.0°');
  });

  test('Back and Escape go back piece by piece, then leave', () => {
    const drawn = bench().click(0, 0).click(3, 0).click(9, 9).back().click(3, 1).enter();
    expect(pipes(drawn)).toEqual(['0,0,2.4 > 3,0,2.4', '3,0,2.4 > 3,1,2.4']);
    const left = bench().click(0, 0).click(3, 0).escape().escape();
    expect(left.store.get().preview).toBeNull();
    expect(left.runner.look().hint).toContain('where the pipe begins');
    expect(left.escape().store.get().session.tool).toBe('select');
  });

  test('one place alone is no pipe', () => {
    expect(bench().click(0, 0).enter().refusal()).toContain('two places');
  });
});

describe('joining', () => {
  test('from a cylinder it rises from over its outlet to the chosen height', () => {
    const built = planBuilder().network().cylinder(0.2, 1, Math.PI);
    const drawn = toolBench(built.plan, { pipeHeight_m: 2.4 }).use('pipe').click(0.22, 1.03).click(3, 1).enter();
    // Sample outlet 66 in above the floor, and twice the bend radius of its hose.
    expect(pipes(drawn)).toEqual(['0.2,1,1.98 > 0.2,1,2.4', '0.2,1,2.4 > 3,1,2.4']);
    expect(network(drawn).nodes[network(drawn).source ?? '']?.at.z).toBeCloseTo(1.98, 9);
    expect(Object.keys(drawn.plan().networks)).toEqual([built.networkId]);
  });

  test('from an open end it goes on at its height, in the same network', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.2), place3(3, 0, 2.2)]);
    const drawn = toolBench(built.plan, { pipeHeight_m: 2.4 }).use('pipe').click(3.03, 0.02).click(3, 2).enter();
    expect(pipes(drawn)).toEqual(['0,0,2.2 > 3,0,2.2', '3,0,2.2 > 3,2,2.2']);
    expect(Object.keys(network(drawn).nodes)).toHaveLength(3);
  });

  test('from the middle of a pipe it branches off', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.2), place3(4, 0, 2.2)]);
    const drawn = toolBench(built.plan, { pipeHeight_m: 2.4 }).use('pipe').click(1, 0.05).click(1, 2).enter();
    expect(Object.keys(network(drawn).pipes)).toHaveLength(3);
    expect(pipes(drawn)).toContain('1,0,2.2 > 1,2,2.2');
  });

  test('onto a nozzle it ends with the drop down to it', () => {
    const built = planBuilder().network().nozzle(3, 0, 2.1);
    const drawn = toolBench(built.plan, { pipeHeight_m: 2.4 }).use('pipe').click(0, 0).click(3.02, 0.01);
    expect(pipes(drawn)).toEqual(['0,0,2.4 > 3,0,2.4', '3,0,2.4 > 3,0,2.1']);
    expect(drawn.steps()).toBe(1);
    expect(Object.keys(network(drawn).nodes)).toHaveLength(3);
  });

  test('pipe of another network is refused in words', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.4), place3(3, 0, 2.4)]).network().run([place3(0, 5, 2.4), place3(3, 5, 2.4)]);
    const drawn = toolBench(built.plan).use('pipe').click(3, 0).click(3, 5);
    expect(drawn.refusal()).toContain('another network');
    expect(drawn.steps()).toBe(0);
  });
});

test('turns are where the way bends', () => {
  const way: PlanPoint3[] = [place3(0, 0, 0), place3(1, 0, 0), place3(2, 0, 0), place3(2, 1, 0), place3(2, 1, 1)];
  expect(turnsOf(way)).toBe(2);
});
