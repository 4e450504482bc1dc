import { describe, expect, test } from 'vitest';
import { toPlan } from '#shared/underlay/placement';
import type { Underlay } from '#shared/model/plan';
import { lineDrawing } from '../../support/line-drawing.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const drawing = lineDrawing([[0, 0, 100, 0], [100, 0, 100, 50]]);
function bench(change: Partial<Underlay>) {
  const { plan } = planBuilder().underlay();
  for (const underlay of Object.values(plan.levels['level-0']?.underlays ?? {})) Object.assign(underlay, { metresPerUnit: null, calibration: 'none' }, change);
  return toolBench(plan, {}, drawing).use('calibrate');
}
const underlayOf = (drawn: ReturnType<typeof bench>): Underlay => {
  const underlay = Object.values(drawn.plan().levels['level-0']?.underlays ?? {})[0];
  if (!underlay) throw new Error('The floor plan has gone.');
  return underlay;
};

describe('setting the scale', () => {
  test('two places and a typed distance', () => {
    const drawn = bench({}).click(0.04, 0.02).click(99.97, 0.05);
    expect(drawn.runner.look().asks).toEqual(['length']);
    drawn.type({ length: 12 });
    expect(underlayOf(drawn)).toMatchObject({ calibration: 'two-points', metresPerUnit: expect.closeTo(0.12, 12), knownLengths: [{ a: { x: 0, y: 0 }, b: { x: 100, y: 0 }, distance_m: 12 }] });
    expect(toPlan(underlayOf(drawn), 100, 0).x).toBeCloseTo(12, 9);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().session.tool).toBe('select');
  });

  test('the floor plan stays where it is on the screen', () => {
    const drawn = bench({});
    drawn.store.session({ camera: { at: { x: 40, y: 10 }, scale_px_m: 6 } });
    drawn.click(20, 0).click(100, 0).type({ length: 8 });
    // The plan is ten times smaller about its place at 20 m: so is what the board shows.
    expect(drawn.store.get().session.camera).toEqual({ at: { x: 22, y: 1 }, scale_px_m: expect.closeTo(60, 9) });
    expect(toPlan(underlayOf(drawn), 100, 0).x).toBeCloseTo(28, 9);
  });

  test('a plan with a scale gets a check length instead', () => {
    const drawn = bench({ metresPerUnit: 0.1, calibration: 'file-units' }).click(0, 0).click(10, 0).type({ length: 10.02 });
    expect(underlayOf(drawn)).toMatchObject({ calibration: 'file-units', metresPerUnit: 0.1, knownLengths: [{ b: { x: expect.closeTo(100, 9), y: 0 }, distance_m: 10.02 }] });
  });

  test('places are kept in the units of a turned and shifted file', () => {
    const turned = { metresPerUnit: 0.1, calibration: 'file-units', rotation_rad: Math.PI / 2, at: { x: 3, y: 4 } } as const;
    const drawn = bench(turned).click(3, 4).click(3, 14).type({ length: 10 });
    expect(underlayOf(drawn).knownLengths[0]).toMatchObject({ a: { x: 0, y: 0 }, b: { x: expect.closeTo(100, 9), y: expect.closeTo(0, 9) } });
  });

  test('a distance of nothing is asked again; Escape steps back', () => {
    const drawn = bench({}).click(0, 0).click(100, 0).type({ length: 0 });
    expect(drawn.refusal()).toContain('true distance');
    expect(drawn.escape().runner.look().hint).toContain('second place');
    expect(drawn.escape().escape().store.get().session.tool).toBe('select');
    expect(drawn.steps()).toBe(0);
  });

  test('without a floor plan, or with several, it says what to do', () => {
    expect(toolBench(planBuilder().plan).use('calibrate').click(0, 0).refusal()).toContain('Import one first');
    const two = toolBench(planBuilder().underlay().underlay().plan).use('calibrate');
    expect(two.click(0, 0).refusal()).toContain('Select the one');
  });
});
