import { expect, test } from 'vitest';
import { newPlan } from '#shared/model/plan';
import { toolBench } from '../../support/tool-bench.ts';

test('a click puts a note there and selects it for its text', () => {
  const drawn = toolBench(newPlan('metric')).use('note').click(2, 3);
  expect(Object.values(drawn.plan().levels['level-0']?.notes ?? {})).toMatchObject([{ at: { x: 2, y: 3 } }]);
  expect(drawn.store.get().session).toMatchObject({ tool: 'select', selection: [{ kind: 'note' }] });
  expect(drawn.steps()).toBe(1);
});

test('Escape leaves without a note', () => {
  const drawn = toolBench(newPlan('metric')).use('note').escape();
  expect(drawn.store.get().session.tool).toBe('select');
  expect(drawn.steps()).toBe(0);
});
