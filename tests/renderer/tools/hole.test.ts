import { expect, test } from 'vitest';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const room = () => planBuilder().room(6, 4, 2.7);

test('cuts a ring out of the enclosure around it, in one step', () => {
  const drawn = toolBench(room().plan).use('hole').click(2, 1).click(3, 1).click(3, 2).click(2, 2).enter();
  const enclosure = Object.values(drawn.plan().levels['level-0']?.enclosures ?? {})[0];
  expect(enclosure?.holes[0]).toHaveLength(4);
  expect(drawn.steps()).toBe(1);
  expect(drawn.store.get().session.tool).toBe('select');
});

test('a ring that reaches past the walls is refused and stays to be changed', () => {
  const drawn = toolBench(room().plan).use('hole').click(4, 1).click(7, 1).click(7, 2).click(4, 2).enter();
  expect(drawn.steps()).toBe(0);
  expect(drawn.refusal()).toMatch(/\.$/);
  expect(drawn.runner.look().sketch.lines?.[0]?.places).toHaveLength(4);
});

test('without an enclosure it says what to do', () => {
  const drawn = toolBench(planBuilder().plan).use('hole').click(4, 1).click(7, 1).click(7, 2).enter();
  expect(drawn.refusal()).toContain('Draw the enclosure first');
});
