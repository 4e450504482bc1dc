import { describe, expect, test } from 'vitest';
import { planBuilder } from '../../support/plan-builder.ts';
import { lineDrawing } from '../../support/line-drawing.ts';
import { type ToolBench, toolBench } from '../../support/tool-bench.ts';

const spaces = (drawn: ToolBench) => Object.values(drawn.plan().levels['level-0']?.adjoining ?? {});
const bench = (options = {}) => toolBench(planBuilder().room(6, 4, 2.7).plan, options).use('adjoining');

describe('drawing an adjoining space', () => {
  test('corner by corner, closed on its first, of the kind that was chosen', () => {
    const drawn = bench({ adjoiningKind: 'pit' }).click(0, -2).click(6, -2).click(6, -0.2).click(0, -0.2).click(0, -2);
    expect(spaces(drawn)).toMatchObject([{ kind: 'pit', name: 'Pit 1', gas: 'not-assessed', outline: [{ x: 0, y: -2 }, { x: 6, y: -2 }, { x: 6, y: -0.2 }, { x: 0, y: -0.2 }] }]);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().session).toMatchObject({ tool: 'select', selection: [{ kind: 'adjoining' }] });
  });
  test('typed lengths and Enter', () => {
    const drawn = bench().click(0, -2).type({ length: 6, angle: 0 }).type({ length: 1.8, angle: Math.PI / 2 }).type({ length: 6, angle: Math.PI }).enter();
    expect(spaces(drawn)[0]?.outline[2]).toEqual({ x: 6, y: expect.closeTo(-0.2, 9) });
  });
  test('two corners are no space, and Escape steps back', () => {
    const drawn = bench().click(0, -2).click(6, -2).enter();
    expect(drawn.refusal()).toContain('A space needs three corners');
    expect(drawn.escape().escape().escape().store.get().session.tool).toBe('select');
    expect(drawn.steps()).toBe(0);
  });
  test('Enter takes the outline of the floor plan around the pointer', () => {
    const drawing = lineDrawing([[0, 0, 6, 0], [6, 0, 6, 2], [6, 2, 0, 2], [0, 2, 0, 0]]);
    const drawn = toolBench(planBuilder().underlay().plan, {}, drawing).use('adjoining').move(3, 1).enter();
    expect(spaces(drawn)[0]?.outline).toHaveLength(4);
    expect(bench().move(3, 1).enter().refusal()).toContain('no closed outline');
  });
});

describe('reshaping one', () => {
  const built = () => planBuilder().adjoining('corridor', [{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 2 }, { x: 0, y: 2 }]);
  test('a corner of a rectangle is dragged and it stays one', () => {
    const drawn = toolBench(built().plan).use('select').click(3, 1).drag([6, 2], [5, 3]);
    expect(spaces(drawn)[0]?.outline).toEqual([{ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 5, y: 3 }, { x: 0, y: 3 }]);
  });
  test('taken at its floor it moves as a whole', () => {
    const drawn = toolBench(built().plan).use('select').drag([3, 1], [4, 1]);
    expect(spaces(drawn)[0]?.outline[0]).toEqual({ x: 1, y: 0 });
  });
});
