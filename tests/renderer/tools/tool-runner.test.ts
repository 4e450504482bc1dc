import { describe, expect, test, vi } from 'vitest';
import { newPlan } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';
import { toolBench } from '../../support/tool-bench.ts';

describe('tool runner', () => {
  test('gives tools the caught place, and the session too', () => {
    const drawn = toolBench(planBuilder().room(6, 4, 2.7).plan).move(5.97, 4.04);
    expect(drawn.runner.look().snap).toMatchObject({ kind: 'end', at: { x: 6, y: 4 } });
    expect(drawn.store.get().session.pointer).toEqual({ x: 6, y: 4 });
  });

  test('another tool drops what was under way', () => {
    const drawn = toolBench(newPlan('metric')).use('pipe').click(0, 0).click(3, 0);
    expect(drawn.store.get().preview).not.toBeNull();
    drawn.use('measure');
    expect(drawn.store.get().preview).toBeNull();
    expect(drawn.runner.look()).toMatchObject({ tool: 'measure', sketch: {} });
    expect(drawn.use('pipe').runner.look().hint).toContain('where the pipe begins');
  });

  test('another level drops what was under way', () => {
    const drawn = toolBench(planBuilder().level('Upper', 3).plan).use('pipe').click(0, 0).click(3, 0);
    drawn.store.session({ level: 'level-2' });
    expect(drawn.store.get().preview).toBeNull();
    expect(drawn.runner.look().hint).toContain('where the pipe begins');
  });

  test('a finished tool hands over to the select tool', () => {
    const drawn = toolBench(newPlan('metric')).use('note').click(1, 1);
    expect(drawn.runner.look()).toMatchObject({ tool: 'select' });
  });

  test('a look stays identical until something changes, and listeners hear of it', () => {
    const drawn = toolBench(newPlan('metric')).use('enclosure');
    const heard = vi.fn();
    const stop = drawn.runner.subscribe(heard);
    const look = drawn.runner.look();
    expect(drawn.runner.look()).toBe(look);
    drawn.store.session({ benchWidth_px: 400 });
    expect(drawn.runner.look()).toBe(look);
    expect(heard).not.toHaveBeenCalled();
    drawn.move(1, 1);
    expect(drawn.runner.look()).not.toBe(look);
    expect(heard).toHaveBeenCalledTimes(1);
    drawn.use('measure');
    expect(heard).toHaveBeenCalledTimes(2);
    stop();
    drawn.move(2, 2);
    expect(heard).toHaveBeenCalledTimes(2);
  });

  test('undo in the middle of a drawing takes back the last step and keeps the drawing', () => {
    const drawn = toolBench(newPlan('metric')).use('obstruction').click(0, 0).click(1, 1).click(3, 3);
    drawn.store.undo();
    expect(drawn.steps()).toBe(0);
    drawn.click(4, 4);
    expect(Object.values(drawn.plan().levels['level-0']?.obstructions ?? {})).toHaveLength(1);
  });

  test('a refusal stays while the pointer moves and goes with the next action', () => {
    const drawn = toolBench(newPlan('metric')).use('enclosure').click(0, 0).enter();
    expect(drawn.move(1, 1).refusal()).not.toBeNull();
    expect(drawn.click(5, 0).refusal()).toBeNull();
  });

  test('when it is disposed it drops the gesture and hears the store no more', () => {
    const drawn = toolBench(newPlan('metric')).use('pipe').click(0, 0).click(3, 0);
    drawn.runner.dispose();
    expect(drawn.store.get().preview).toBeNull();
    drawn.use('measure');
    expect(drawn.runner.look().tool).toBe('pipe');
  });
});
