import { describe, expect, test } from 'vitest';
import { area_m2 } from '#shared/geometry/outline';
import { newPlan } from '#shared/model/plan';
import { toolBench } from '../../support/tool-bench.ts';

const bench = () => toolBench(newPlan('metric'), { obstructionKind: 'beam', obstructionBottom_m: 2.2, obstructionTop_m: 2.6 }).use('obstruction');
const things = (drawn: ReturnType<typeof bench>) => Object.values(drawn.plan().levels['level-0']?.obstructions ?? {});

describe('drawing an obstruction', () => {
  test('two corners', () => {
    const drawn = bench().click(1, 1).click(3, 2);
    expect(things(drawn)).toMatchObject([{ kind: 'beam', bottom_m: 2.2, top_m: 2.6 }]);
    expect(area_m2(things(drawn)[0]?.footprint ?? [])).toBeCloseTo(2, 9);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().session.tool).toBe('obstruction');
  });

  test('typed width and depth go to the side of the pointer', () => {
    const drawn = bench().click(5, 5).move(4, 4).type({ length: 2 }).move(4, 4).type({ length: 1 });
    const xs = things(drawn)[0]?.footprint.map(({ x }) => x) ?? [];
    const ys = things(drawn)[0]?.footprint.map(({ y }) => y) ?? [];
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([3, 5, 4, 5]);
  });

  test('a typed direction turns it', () => {
    const drawn = bench().click(0, 0).type({ length: 2, angle: Math.PI / 4 }).move(-1, 1).type({ length: 1 });
    expect(area_m2(things(drawn)[0]?.footprint ?? [])).toBeCloseTo(2, 9);
    expect(Math.min(...(things(drawn)[0]?.footprint.map(({ x }) => x) ?? []))).toBeCloseTo(-Math.SQRT1_2, 9);
  });

  test('a typed height before the first corner sets the top of what follows', () => {
    const drawn = bench().type({ height: 2.5 }).click(1, 1).click(3, 2);
    expect(things(drawn)).toMatchObject([{ top_m: 2.5 }]);
    expect(bench().type({ height: 2 }).refusal()).toContain('above the bottom');
  });

  test('nothing without width or depth; Escape steps back', () => {
    const drawn = bench().click(1, 1).click(3, 1);
    expect(drawn.refusal()).toContain('no width or no depth');
    expect(drawn.escape().store.get().session.tool).toBe('obstruction');
    expect(drawn.escape().store.get().session.tool).toBe('select');
    expect(drawn.steps()).toBe(0);
  });
});
