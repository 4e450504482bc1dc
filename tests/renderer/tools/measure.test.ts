import { expect, test } from 'vitest';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const bench = () => toolBench(planBuilder('feet').room(6.096, 4.572, 2.7).plan).use('measure');

test('tells distance, direction, and how far east and north', () => {
  const drawn = bench().click(0, 0).click(6.1, 4.58);
  expect(drawn.runner.look().sketch.labels?.map(({ text }) => text)).toEqual([`25'-0" at 36.9°: 20'-0" east, 15'-0" north`]);
  expect(drawn.steps()).toBe(0);
});

test('catches the foot of the perpendicular even while square lines are locked', () => {
  const drawn = toolBench(planBuilder().room(6, 4, 2.7).plan, { orthogonal: true }).use('measure').click(2.3, 1.7).move(2.34, 4.03);
  expect(drawn.runner.look().snap).toMatchObject({ kind: 'perpendicular', at: { x: 2.3, y: 4 } });
  expect(drawn.move(5, 3).runner.look().snap?.at).toEqual({ x: 5, y: 3 });
});

test('what was measured stays until the next click; Escape clears it, then leaves', () => {
  const drawn = bench().click(0, 0).click(1, 0).move(3, 3);
  expect(drawn.runner.look().sketch.labels).toHaveLength(1);
  expect(drawn.escape().runner.look().sketch.labels).toBeUndefined();
  expect(drawn.escape().store.get().session.tool).toBe('select');
});
