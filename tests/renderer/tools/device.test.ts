import { describe, expect, test } from 'vitest';
import type { DeviceKind } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';
import { type ToolBench, toolBench } from '../../support/tool-bench.ts';

const bench = (deviceKind: DeviceKind, options = {}) => toolBench(planBuilder().room(6, 4, 2.7).plan, { deviceKind, ...options }).use('device');
const devices = (drawn: ToolBench) => Object.values(drawn.plan().levels['level-0']?.devices ?? {});
const near = (value: number) => expect.closeTo(value, 9);

describe('placing a device', () => {
  test('a detector goes where it is pointed at and looks every way', () => {
    const drawn = bench('detector').click(2, 1.5).click(4, 1.5);
    expect(devices(drawn)).toMatchObject([
      { kind: 'detector', name: 'D1', at: { x: 2, y: 1.5 }, facing_rad: null, height_m: null, space: 'room' },
      { name: 'D2', at: { x: 4, y: 1.5 } },
    ]);
    expect(drawn.steps()).toBe(2);
    // The tool stays at hand for the next one; what was placed is selected for its form.
    expect(drawn.store.get().session).toMatchObject({ tool: 'device', selection: [{ kind: 'device' }] });
  });

  test('a typed height goes for those that follow; under the floor and over the ceiling it says which space is watched', () => {
    const drawn = bench('detector').type({ height: 2.6 }).click(2, 1).type({ height: -0.2 }).click(3, 1).type({ height: 2.9 }).click(4, 1);
    expect(devices(drawn)).toMatchObject([{ height_m: 2.6, space: 'room' }, { height_m: -0.2, space: 'under-floor' }, { height_m: 2.9, space: 'ceiling-void' }]);
  });

  test('what hangs on a wall catches it and faces into the room', () => {
    const [device] = devices(bench('manual-release').click(2, 0.3));
    expect(device).toMatchObject({ at: { x: near(2), y: near(0.025) }, facing_rad: near(Math.PI / 2) });
  });

  test('on the other side of the wall it faces away from the room, behind the wall', () => {
    const [device] = devices(bench('sign', { signKind: 'entrance' }).click(2, -0.4));
    expect(device).toMatchObject({ sign: 'entrance', at: { x: near(2), y: near(-0.175) }, facing_rad: near((3 * Math.PI) / 2) });
  });

  test('away from walls it stands free', () => {
    expect(devices(bench('control-panel').click(3, 2))).toMatchObject([{ at: { x: 3, y: 2 }, facing_rad: null }]);
  });

  test('a typed length is the distance from the start of the wall, with a height in one go', () => {
    // The south wall runs from its west end.
    const drawn = bench('abort').move(3, 0.2).type({ length: 1.2, height: 1.1 });
    expect(devices(drawn)).toMatchObject([{ at: { x: near(1.2), y: near(0.025) }, height_m: 1.1 }]);
    expect(drawn.store.get().session.toolOptions.deviceHeight_m).toBe(1.1);
    expect(bench('abort').move(3, 0.2).type({ length: 7 }).refusal()).toContain('beyond the end');
    expect(bench('abort').move(3, 2).type({ length: 1 }).refusal()).toContain('Point at a wall');
    expect(bench('abort').move(3, 0.2).type({}).refusal()).toContain('Type a height');
  });

  test('Enter places it where the pointer is, Escape leaves the tool', () => {
    const drawn = bench('detector').move(1, 1).enter();
    expect(devices(drawn)).toHaveLength(1);
    expect(drawn.escape().store.get().session.tool).toBe('select');
    expect(devices(bench('detector').enter())).toHaveLength(0);
  });

  test('its hint says what is placed and how high', () => {
    expect(bench('manual-release').runner.look().hint).toContain('manual release');
    expect(bench('manual-release', { deviceHeight_m: 1.2 }).runner.look().hint).toContain('above the floor');
  });
});

describe('moving a device', () => {
  test('one on a wall keeps to walls and turns with them', () => {
    const built = planBuilder().room(6, 4, 2.7).device('manual-release', 2, 0.025, { facing_rad: Math.PI / 2 });
    const drawn = toolBench(built.plan).use('select').drag([2, 0.025], [5.8, 2]);
    expect(devices(drawn)).toMatchObject([{ at: { x: near(5.975), y: near(2) } }]);
    expect(Math.cos(devices(drawn)[0]?.facing_rad ?? 0)).toBeCloseTo(-1, 12);
    expect(drawn.steps()).toBe(1);
  });
  test('a detector moves freely', () => {
    const built = planBuilder().room(6, 4, 2.7).device('detector', 2, 2);
    expect(devices(toolBench(built.plan).use('select').drag([2, 2], [3, 1]))).toMatchObject([{ at: { x: 3, y: 1 }, facing_rad: null }]);
  });
  test('a locked layer is left alone', () => {
    const built = planBuilder().device('detector', 2, 2);
    const drawn = toolBench(built.plan);
    drawn.store.session(({ layers }) => ({ layers: { ...layers, devices: { visible: true, locked: true } } }));
    expect(devices(drawn.use('select').drag([2, 2], [3, 1]))).toMatchObject([{ at: { x: 2, y: 2 } }]);
  });
});
