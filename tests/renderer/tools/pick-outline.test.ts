import { expect, test } from 'vitest';
import { lineDrawing } from '../../support/line-drawing.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const drawing = lineDrawing([
  [0, 0, 10, 0],
  [10, 0, 10, 4],
  [10, 4, 0, 4],
  [0, 4, 0, 0],
  [6, 0, 6, 4],
]);
const bench = () => toolBench(planBuilder().underlay().plan, {}, drawing).use('pick-outline');

test('an outline lights up under the pointer, and a click takes it', () => {
  const drawn = bench().move(2, 1.3);
  expect(drawn.runner.look().sketch.labels?.[0]?.text).toBe('24.00 m²');
  expect(drawn.move(8, 1.3).runner.look().sketch.labels?.[0]?.text).toBe('16.00 m²');
  drawn.click(8, 1.3);
  const enclosure = Object.values(drawn.plan().levels['level-0']?.enclosures ?? {})[0];
  expect(enclosure?.outline).toHaveLength(4);
  expect(drawn.steps()).toBe(1);
  expect(drawn.store.get().session.tool).toBe('select');
});

test('where no outline is it says so', () => {
  const drawn = bench().click(20, 1.3);
  expect(drawn.refusal()).toContain('No closed outline');
  expect(drawn.steps()).toBe(0);
  expect(drawn.escape().store.get().session.tool).toBe('select');
});

test('Shift takes the next larger outline', () => {
  const square = (size: number) => [{ x: 0, y: 0 }, { x: size, y: 0 }, { x: size, y: size }, { x: 0, y: size }];
  const nested = lineDrawing([], { closed: [square(3), square(8)] });
  const drawn = toolBench(planBuilder().underlay().plan, {}, nested).use('pick-outline').move(1, 1);
  expect(drawn.runner.look().sketch.labels?.[0]?.text).toBe('9.00 m²');
  expect(drawn.move(1, 1, { shift: true }).runner.look().sketch.labels?.[0]?.text).toBe('64.00 m²');
  expect(drawn.click(1, 1, { shift: true }).steps()).toBe(1);
});
