import { expect, test } from 'vitest';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const ring = () => toolBench(planBuilder().room(6, 4, 2.7).plan).use('ceiling-zone').click(1, 1).click(3, 1).click(3, 3).click(1, 3).enter();

test('a ring, then its typed height, in one step', () => {
  const drawn = ring();
  expect(drawn.steps()).toBe(0);
  expect(drawn.runner.look().asks).toEqual(['height']);
  drawn.type({ height: 2.4 });
  const zone = Object.values(Object.values(drawn.plan().levels['level-0']?.enclosures ?? {})[0]?.ceilingZones ?? {})[0];
  expect(zone).toMatchObject({ height_m: 2.4 });
  expect(zone?.outline).toHaveLength(4);
  expect(drawn.steps()).toBe(1);
});

test('without a height it asks again; Escape goes back to the ring', () => {
  const drawn = ring().enter();
  expect(drawn.refusal()).toContain('height');
  expect(drawn.escape().runner.look().sketch.lines?.[0]?.places).toHaveLength(4);
  expect(drawn.escape().enter().type({ height: 2.2 }).steps()).toBe(1);
});

test('outside every enclosure it says what to do', () => {
  const drawn = toolBench(planBuilder().plan).use('ceiling-zone').click(1, 1).click(3, 1).click(3, 3).enter();
  expect(drawn.refusal()).toContain('Draw the enclosure first');
});
