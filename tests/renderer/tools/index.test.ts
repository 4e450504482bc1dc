import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '#shared/model/plan';
import type { ToolId } from '../../../src-renderer/store/state.ts';
import { TOOLS } from '../../../src-renderer/tools/index.ts';
import { lineDrawing } from '../../support/line-drawing.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { type ToolBench, toolBench } from '../../support/tool-bench.ts';

const drawing = lineDrawing([[0, 0, 6, 0], [6, 0, 6, 4], [6, 4, 0, 4], [0, 4, 0, 0]]);
const plan = (): Plan =>
  planBuilder()
    .underlay()
    .room(6, 4, 2.7)
    .opening(0, 2, 1)
    .ceilingZone([{ x: 4, y: 0.5 }, { x: 5.5, y: 0.5 }, { x: 5.5, y: 1.5 }, { x: 4, y: 1.5 }], 2.4)
    .obstruction('rack', [{ x: 4.5, y: 2 }, { x: 5.5, y: 2 }, { x: 5.5, y: 3 }, { x: 4.5, y: 3 }], 0, 2)
    .dimension({ x: 0, y: -1 }, { x: 6, y: -1 }, -0.5)
    .device('manual-release', 0.025, 1, { facing_rad: 0 })
    .adjoining('corridor', [{ x: 0, y: -2 }, { x: 6, y: -2 }, { x: 6, y: -0.2 }, { x: 0, y: -0.2 }])
    .note(1, 6, 'Ask')
    .network()
    .cylinder(0.14, 3, Math.PI)
    .run([place3(0.14, 3, 2), place3(0.14, 3, 2.4), place3(3.5, 3, 2.4), place3(3.5, 1, 2.4), place3(3.5, 1, 2.2)])
    .nozzle(3.5, 1, 2.2).plan;

const ids = Object.keys(TOOLS) as ToolId[];
/** Most stages that a gesture can have in these tests. */
const MOST_STAGES = 40;

type Act = (bench: ToolBench) => ToolBench;
const place = fc.tuple(fc.double({ min: -2, max: 8, noNaN: true }), fc.double({ min: -2, max: 7, noNaN: true }));
const keys = fc.record({ shift: fc.boolean(), alt: fc.boolean(), mod: fc.boolean() });
const optional = (min: number, max: number) => fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined });
const typed = fc.record({ length: optional(-1, 8), angle: optional(0, 6.3), height: optional(-0.5, 3) });
const acts: fc.Arbitrary<Act> = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(place, keys).map(([[x, y], held]): Act => (bench) => bench.click(x, y, held)) },
  { weight: 2, arbitrary: fc.tuple(place, keys).map(([[x, y], held]): Act => (bench) => bench.press(x, y, held)) },
  { weight: 2, arbitrary: place.map(([x, y]): Act => (bench) => bench.move(x, y)) },
  { weight: 2, arbitrary: place.map(([x, y]): Act => (bench) => bench.release(x, y)) },
  { weight: 1, arbitrary: place.map(([x, y]): Act => (bench) => bench.doubleClick(x, y)) },
  { weight: 2, arbitrary: typed.map((values): Act => (bench) => bench.type(values)) },
  { weight: 1, arbitrary: fc.constant<Act>((bench) => bench.enter()) },
  { weight: 1, arbitrary: fc.constant<Act>((bench) => bench.back()) },
  { weight: 1, arbitrary: fc.constant<Act>((bench) => bench.escape()) },
);

describe('every tool', () => {
  test('names itself', () => {
    for (const id of ids) expect(TOOLS[id].id).toBe(id);
  });

  test.each(ids)('%s: Escape from any point leaves the plan as it was committed, without a preview', (id) => {
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 9 }), fc.boolean(), (script, orthogonal) => {
        const bench = toolBench(plan(), { orthogonal, snapGrid: orthogonal }, drawing).use(id);
        for (const act of script) {
          act(bench);
          bench.runner.look();
        }
        const committed = bench.plan();
        const steps = bench.steps();
        for (let stage = 0; stage < MOST_STAGES; stage += 1) bench.escape();
        expect(bench.plan()).toBe(committed);
        expect(bench.steps()).toBe(steps);
        expect(bench.store.get().preview).toBeNull();
        expect(bench.store.get().session.tool).toBe('select');
      }),
      { numRuns: 60 },
    );
  });

  test.each(ids)('%s: whatever was done, undo leads back to the start', (id) => {
    const start = plan();
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 8 }), (script) => {
        const bench = toolBench(start, {}, drawing).use(id);
        for (const act of script) act(bench);
        for (let step = bench.steps(); step > 0; step -= 1) bench.store.undo();
        expect(bench.plan()).toEqual(start);
      }),
      { numRuns: 40 },
    );
  });

  test.each(ids)('%s: its hint is one or more sentences', (id) => {
    const { hint } = toolBench(plan(), {}, drawing).use(id).runner.look();
    expect(hint).toMatch(/^[A-Z].*[.]$/);
  });
});
