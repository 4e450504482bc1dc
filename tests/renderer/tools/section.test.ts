import { expect, test } from 'vitest';
import { newPlan } from '#shared/model/plan';
import { toolBench } from '../../support/tool-bench.ts';

test('two places set the cut, without a step', () => {
  const drawn = toolBench(newPlan('metric')).use('section').click(0, 1).click(5, 1);
  expect(drawn.store.get().session).toMatchObject({ cut: { a: { x: 0, y: 1 }, b: { x: 5, y: 1 } }, tool: 'select' });
  expect(drawn.steps()).toBe(0);
});

test('Escape steps back, and leaves the old cut', () => {
  const drawn = toolBench(newPlan('metric')).use('section').click(0, 1).escape().escape();
  expect(drawn.store.get().session).toMatchObject({ cut: null, tool: 'select' });
});
