import { describe, expect, test } from 'vitest';
import { boundsOf } from '#shared/geometry/outline';
import type { Ref } from '#shared/model/plan';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

const built = planBuilder()
  .room(6, 4, 2.7)
  .opening(0, 2, 1)
  .ceilingZone([{ x: 1, y: 2 }, { x: 2, y: 2 }, { x: 1, y: 3 }], 2.2)
  .obstruction('rack', [{ x: 4, y: 1 }, { x: 5, y: 1 }, { x: 5, y: 2 }, { x: 4, y: 2 }], 0, 2)
  .dimension({ x: 0, y: -1 }, { x: 6, y: -1 }, -0.5);
const level = (plan: typeof built.plan) => {
  const found = plan.levels['level-0'];
  if (!found) throw new Error('The level has gone.');
  return found;
};
const rack = built.onLevel('obstruction');
const bench = (selected: Ref) => toolBench(built.plan, { snapPlan: false }, undefined, { selection: [selected] });
const footprint = (drawn: ReturnType<typeof bench>) => boundsOf(level(drawn.plan()).obstructions[rack.id]?.footprint ?? []);

describe('a handle of the selected thing', () => {
  test('makes an obstacle larger from the corner across; elsewhere it is moved', () => {
    expect(footprint(bench(rack).drag([5.02, 1.98], [5.52, 2.48]))).toEqual({ minX: 4, minY: 1, maxX: 5.5, maxY: 2.5 });
    expect(footprint(bench(rack).drag([4.5, 1.5], [5, 1.5]))).toEqual({ minX: 4.5, minY: 1, maxX: 5.5, maxY: 2 });
  });

  test('takes a typed length and direction', () => {
    const drawn = bench(rack).press(5, 2).move(5.3, 2.1).type({ length: 1, angle: 0 });
    expect(footprint(drawn)).toEqual({ minX: 4, minY: 1, maxX: 6, maxY: 2 });
    expect(drawn.steps()).toBe(1);
  });

  test('leaves an obstacle as it was when nothing would be left of it', () => {
    const drawn = bench(rack).drag([5, 2], [5, 1]);
    expect(drawn.plan()).toBe(built.plan);
    expect(drawn.refusal()).toMatch(/footprint/i);
  });

  test('moves the one corner of a zone that is no rectangle', () => {
    const drawn = bench(built.lastZone).drag([2, 2], [3, 2.5]);
    const [room] = Object.values(level(drawn.plan()).enclosures);
    expect(room?.ceilingZones[built.lastZone.id]?.outline).toContainEqual({ x: 3, y: 2.5 });
    expect(room?.ceilingZones[built.lastZone.id]?.outline).toContainEqual({ x: 1, y: 3 });
  });

  test('widens an opening at one jamb, as far as its wall goes', () => {
    const opening = (drawn: ReturnType<typeof bench>) => Object.values(Object.values(level(drawn.plan()).enclosures)[0]?.openings ?? {})[0];
    expect(opening(bench(built.lastOpening).drag([2.5, 0.02], [3, 0.4]))).toMatchObject({ along_m: expect.closeTo(2.25, 9), width_m: expect.closeTo(1.5, 9) });
    expect(opening(bench(built.lastOpening).drag([1.5, 0], [-3, 0]))).toMatchObject({ along_m: expect.closeTo(1.25, 9), width_m: expect.closeTo(2.5, 9) });
  });

  test('moves an end of a dimension, though nothing is drawn there', () => {
    const drawn = bench(built.onLevel('dimension')).drag([6, -1], [5, -1]);
    expect(level(drawn.plan()).dimensions[built.onLevel('dimension').id]).toMatchObject({ a: { x: 0, y: -1 }, b: { x: 5, y: -1 }, offset_m: -0.5 });
  });

  test('is none while its layer is locked, or several things are selected', () => {
    const { layers } = startSession('test');
    const locked = toolBench(built.plan, { snapPlan: false }, undefined, { selection: [rack], layers: { ...layers, obstructions: { visible: true, locked: true } } });
    expect(locked.drag([5, 2], [5.5, 2.5]).plan()).toBe(built.plan);
    const both = toolBench(built.plan, { snapPlan: false }, undefined, { selection: [rack, built.onLevel('dimension')] });
    expect(footprint(both.drag([5, 2], [5.5, 2]))).toMatchObject({ minX: 4.5, maxX: 5.5 });
  });
});
