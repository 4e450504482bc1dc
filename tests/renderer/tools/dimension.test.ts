import { expect, test } from 'vitest';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const bench = () => toolBench(planBuilder().room(6, 4, 2.7).plan).use('dimension');
const dimensions = (drawn: ReturnType<typeof bench>) => Object.values(drawn.plan().levels['level-0']?.dimensions ?? {});

test('two places, then the side it is written on', () => {
  const drawn = bench().click(0.02, 0.03).click(6.02, 0.03);
  expect(drawn.steps()).toBe(0);
  expect(drawn.move(3, -0.6).runner.look().sketch.labels?.[0]?.text).toBe('6.000 m');
  expect(dimensions(drawn.click(3, -0.6))).toMatchObject([{ a: { x: 0, y: 0 }, b: { x: 6, y: 0 }, offset_m: expect.closeTo(-0.6, 9) }]);
  expect(drawn.steps()).toBe(1);
});

test('a typed offset goes to the side of the pointer', () => {
  expect(dimensions(bench().click(0, 0).click(6, 0).move(3, -2).type({ length: 0.4 }))).toMatchObject([{ offset_m: -0.4 }]);
  expect(dimensions(bench().click(0, 0).click(6, 0).move(3, 1).type({ length: 0.4 }))).toMatchObject([{ offset_m: 0.4 }]);
});

test('Escape goes back to the second place, then the first, then leaves', () => {
  const drawn = bench().click(0, 0).click(6, 0).escape();
  expect(drawn.runner.look().hint).toContain('second place');
  expect(drawn.escape().runner.look().hint).toContain('first place');
  expect(drawn.escape().store.get().session.tool).toBe('select');
});
