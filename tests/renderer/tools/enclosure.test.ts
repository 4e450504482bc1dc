import { describe, expect, test } from 'vitest';
import { area_m2 } from '#shared/geometry/outline';
import { type Plan, newPlan, ringOf } from '#shared/model/plan';
import { toolBench } from '../../support/tool-bench.ts';

const rooms = (plan: Plan) => Object.values(plan.levels['level-0']?.enclosures ?? {});
const corners = (plan: Plan) => ringOf(rooms(plan)[0]?.outline ?? []);
const bench = (options = {}) => toolBench(newPlan('metric'), options).use('enclosure');

describe('drawing an enclosure', () => {
  test('clicks and a click on the first corner make one step, and the enclosure is selected', () => {
    const drawn = bench().click(0, 0).click(6, 0).click(6, 4).click(0, 4).click(0.05, 0.04);
    expect(corners(drawn.plan())).toEqual([{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 4 }, { x: 0, y: 4 }]);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().session).toMatchObject({ tool: 'select', selection: [{ kind: 'enclosure' }] });
  });

  test('typed lengths and directions with Enter', () => {
    const drawn = bench().click(1, 1).type({ length: 6, angle: 0 }).type({ length: 4, angle: Math.PI / 2 }).type({ length: 6, angle: Math.PI }).enter();
    expect(corners(drawn.plan())).toEqual([{ x: 1, y: 1 }, { x: 7, y: 1 }, { x: 7, y: 5 }, { x: 1, y: 5 }]);
    expect(drawn.steps()).toBe(1);
  });

  test('a typed length alone goes toward the pointer, square when lines are locked', () => {
    const drawn = bench({ orthogonal: true }).click(0, 0).move(3, 0.4).type({ length: 6 }).move(5.9, 2).type({ length: 4 }).click(0, 3.7).enter();
    expect(corners(drawn.plan())).toEqual([{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 4 }, { x: 0, y: 4 }]);
  });

  test('a typed direction alone keeps the next side on it', () => {
    const drawn = bench().click(0, 0).type({ angle: Math.PI / 4 }).click(3, 1).click(0, 5).enter();
    const [, second] = corners(drawn.plan());
    expect(second?.x).toBeCloseTo(second?.y ?? 0, 12);
    expect(second?.x).toBeCloseTo(2, 12);
  });

  test('Shift frees a locked side, and the last side stops level with the first corner', () => {
    const drawn = bench({ orthogonal: true }).click(0, 0).click(6, 0.3).click(5.8, 4, { shift: true }).click(0.06, 4.2).enter();
    expect(corners(drawn.plan())).toEqual([{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 5.8, y: 4 }, { x: 0, y: 4 }]);
  });

  test('a double click closes', () => {
    expect(area_m2(corners(bench().click(0, 0).click(6, 0).doubleClick(6, 4).plan()))).toBeCloseTo(12, 9);
  });

  test('Back and Escape take one corner off at a time, then Escape leaves the tool', () => {
    const drawn = bench().click(0, 0).click(6, 0).click(9, 9).back().click(6, 4).escape().click(6, 3).enter();
    expect(corners(drawn.plan())).toEqual([{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 3 }]);
    const left = bench().click(0, 0).click(6, 0).escape();
    expect(left.store.get().session.tool).toBe('enclosure');
    expect(left.escape().store.get().session.tool).toBe('enclosure');
    expect(left.escape().store.get().session.tool).toBe('select');
    expect(left.steps()).toBe(0);
  });
});

describe('what cannot be an enclosure', () => {
  test('two corners', () => {
    const drawn = bench().click(0, 0).click(6, 0).enter();
    expect(drawn.refusal()).toContain('three corners');
    expect(drawn.click(6, 4).enter().steps()).toBe(1);
  });

  test('a side that crosses another, or runs back on the last', () => {
    const drawn = bench().click(0, 0).click(6, 0).click(6, 4).click(3, -2);
    expect(drawn.refusal()).toContain('cross');
    expect(drawn.click(6, 2).refusal()).toContain('run back');
    expect(drawn.click(0, 4).refusal()).toBeNull();
    expect(corners(drawn.enter().plan())).toHaveLength(4);
  });

  test('a closing side that crosses', () => {
    const drawn = bench().click(0, 0).click(4, 0).click(4, 4).click(6, 4).click(6, 2).enter();
    expect(drawn.refusal()).toContain('cross');
    expect(drawn.steps()).toBe(0);
  });
});

test('the sketch tells length, direction and area in the units of the plan', () => {
  const drawn = toolBench(newPlan('feet')).use('enclosure').click(0, 0).click(3.048, 0).move(3.048, 1.524);
  const { sketch, hint, asks } = drawn.runner.look();
  expect(sketch.labels?.map(({ text }) => text)).toEqual([`10'-0" at 0.0°`, `5'-0" at 90.0°`, '25.00 ft²']);
  expect(asks).toEqual(['length', 'angle']);
  expect(hint).toContain('next corner');
});
