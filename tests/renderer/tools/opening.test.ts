import { describe, expect, test } from 'vitest';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const bench = (options = {}) => toolBench(planBuilder().room(6, 4, 2.7).plan, options).use('opening');
const openings = (drawn: ReturnType<typeof bench>) => Object.values(Object.values(drawn.plan().levels['level-0']?.enclosures ?? {})[0]?.openings ?? {});

describe('setting openings', () => {
  test('a click on a wall sets one of the chosen kind, and the tool goes on', () => {
    const drawn = bench({ openingKind: 'relief-vent', openingWidth_m: 0.5 }).click(6.03, 1.5).click(2, 4.02);
    expect(openings(drawn)).toMatchObject([
      { kind: 'relief-vent', width_m: 0.5, along_m: expect.closeTo(1.5, 9) },
      { kind: 'relief-vent', along_m: expect.closeTo(4, 9) },
    ]);
    expect(drawn.steps()).toBe(2);
    expect(drawn.store.get().session.tool).toBe('opening');
  });

  test('a typed distance is from the start of the wall to the nearer side', () => {
    const drawn = bench({ openingWidth_m: 1 }).move(3.3, 0.04).type({ length: 2 });
    expect(openings(drawn)).toMatchObject([{ along_m: expect.closeTo(2.5, 9), width_m: 1 }]);
    expect(drawn.type({ length: 5.5 }).refusal()).toContain('beyond the end');
  });

  test('near a corner it stays in the wall', () => {
    expect(openings(bench({ openingWidth_m: 1, snapPlan: false }).click(0.2, 0.02))).toMatchObject([{ along_m: 0.5 }]);
  });

  test('the sketch tells the distance to both ends of the wall', () => {
    const texts = bench({ openingWidth_m: 1 }).move(2.5, 0.02).runner.look().sketch.labels?.map(({ text }) => text);
    expect(texts).toEqual(['2.000 m from start', '1.000 m', '3.000 m']);
  });

  test('away from walls, and in too short a wall, it says why not', () => {
    expect(bench().click(3, 2).refusal()).toContain('Point at the wall');
    expect(bench({ openingWidth_m: 5 }).click(6, 2).refusal()).toContain('shorter');
  });
});
