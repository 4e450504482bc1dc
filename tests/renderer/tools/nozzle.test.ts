import { describe, expect, test } from 'vitest';
import { angleBetween_rad } from '#shared/geometry/angle';
import type { Plan } from '#shared/model/plan';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { type ToolBench, toolBench } from '../../support/tool-bench.ts';

const drop_m = SAMPLE_PROFILE.limits.nozzleToCeiling_m?.value ?? 0;
const hung = (drawn: ToolBench) => nozzlesOf(drawn.plan());
const nozzlesOf = (plan: Plan) =>
  Object.values(plan.networks).flatMap(({ nozzles, nodes, pipes }) =>
    Object.values(nozzles).map((nozzle) => ({ nozzle, at: nodes[nozzle.node]?.at, pipes: Object.values(pipes).filter(({ from, to }) => from === nozzle.node || to === nozzle.node).length })),
  );

describe('hanging a nozzle', () => {
  test('free: as far below the ceiling as the profile allows', () => {
    const drawn = toolBench(planBuilder().room(8, 6, 2.7).plan).use('nozzle').click(4, 3);
    expect(hung(drawn)).toMatchObject([{ at: { x: 4, y: 3, z: expect.closeTo(2.7 - drop_m, 9) }, pipes: 0 }]);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().session).toMatchObject({ tool: 'nozzle', selection: [{ kind: 'nozzle' }] });
  });

  test('at a typed height, until Escape', () => {
    const drawn = toolBench(planBuilder().room(8, 6, 2.7).plan).use('nozzle').type({ height: 2.5 }).click(4, 3).escape().click(4, 4);
    expect(hung(drawn).map(({ at }) => at?.z)).toEqual([2.5, expect.closeTo(2.7 - drop_m, 9)]);
    expect(drawn.escape().store.get().session.tool).toBe('select');
  });

  test('with an unknown ceiling: at the height of pipe', () => {
    const drawn = toolBench(planBuilder().room(8, 6, null).plan, { pipeHeight_m: 2.33 }).use('nozzle').click(4, 3);
    expect(hung(drawn)).toMatchObject([{ at: { z: 2.33 } }]);
  });

  test('on the open lower end of a drop as it stands', () => {
    const built = planBuilder().room(8, 6, 2.7).network().run([place3(1, 3, 2.55), place3(4, 3, 2.55), place3(4, 3, 2.5)]);
    const drawn = toolBench(built.plan).use('nozzle').click(4.03, 3.02);
    expect(hung(drawn)).toMatchObject([{ at: { x: 4, y: 3, z: 2.5 }, pipes: 1 }]);
  });

  test('below a level open end, on a drop of the same size', () => {
    const built = planBuilder().room(8, 6, 2.7).network().run([place3(1, 3, 2.6), place3(4, 3, 2.6)], '1');
    const drawn = toolBench(built.plan).use('nozzle').click(4.03, 3.02);
    expect(hung(drawn)).toMatchObject([{ at: { x: 4, y: 3, z: expect.closeTo(2.7 - drop_m, 9) }, pipes: 1 }]);
    expect(Object.values(drawn.plan().networks).flatMap(({ pipes }) => Object.values(pipes).map(({ size }) => size))).toEqual(['1', '1']);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().session.selection).toEqual([expect.objectContaining({ kind: 'nozzle' })]);
  });

  test('below the middle of a pipe, on a branch', () => {
    const built = planBuilder().room(8, 6, 2.7).network().run([place3(1, 3, 2.6), place3(7, 3, 2.6)]);
    const drawn = toolBench(built.plan).use('nozzle').click(3.3, 3.04);
    expect(hung(drawn)).toMatchObject([{ at: { x: expect.closeTo(3.3, 9), y: 3 }, pipes: 1 }]);
    expect(Object.values(drawn.plan().networks)[0]?.pipes).toSatisfy((pipes: object) => Object.keys(pipes).length === 3);
  });

  test('where one was just hung nothing is said of it; where another hangs it is', () => {
    const drawn = toolBench(planBuilder().room(8, 6, 2.7).plan).use('nozzle').click(2, 3).click(4, 3);
    expect(drawn.runner.look().sketch.labels).toBeUndefined();
    expect(drawn.move(2.01, 3).runner.look().sketch.labels?.[0]?.text).toContain('already');
  });

  test('not where one hangs already', () => {
    const drawn = toolBench(planBuilder().room(8, 6, 2.7).network().nozzle(4, 3, 2.5).plan).use('nozzle').click(4.02, 3);
    expect(drawn.refusal()).toContain('already');
    expect(drawn.steps()).toBe(0);
  });

  test('near a wall its holes are turned along it', () => {
    const drawn = toolBench(planBuilder().room(8, 6, 2.7).plan).use('nozzle').click(0.5, 3);
    const [only] = hung(drawn);
    const holes = only?.nozzle.holes_rad.map((hole) => hole + only.nozzle.rotation_rad) ?? [];
    const tolerance = SAMPLE_PROFILE.limits.nearWallAngle_rad?.value ?? 0;
    expect(holes).toHaveLength(2);
    for (const hole of holes) expect(Math.min(angleBetween_rad(hole, Math.PI / 2), angleBetween_rad(hole, -Math.PI / 2))).toBeLessThanOrEqual(tolerance);
    expect(drawn.steps()).toBe(1);
  });

  test('in the middle they stay east and west', () => {
    expect(hung(toolBench(planBuilder().room(8, 6, 2.7).plan).use('nozzle').click(4, 3))[0]?.nozzle).toMatchObject({ rotation_rad: 0, holes_rad: [0, Math.PI] });
  });
});
