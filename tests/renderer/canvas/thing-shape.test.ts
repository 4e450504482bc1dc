import { describe, expect, test } from 'vitest';
import type { Ref } from '#shared/model/plan';
import { thingShape } from '../../../src-renderer/canvas/thing-shape.ts';
import { smallPlan } from './support/small-plan.ts';

const plan = smallPlan();
const level = 'level-0';

describe('where a thing is marked', () => {
  test('an enclosure along its walls, with a handle at every corner', () => {
    const { rings, handles } = thingShape(plan, { kind: 'enclosure', level, id: 'room' });
    expect(rings).toHaveLength(1);
    expect(handles).toHaveLength(4);
  });

  test('a wall, an opening and a pipe from end to end', () => {
    expect(thingShape(plan, { kind: 'wall', level, enclosure: 'room', id: 'w-south' }).lines).toEqual([[{ x: 0, y: 0 }, { x: 6, y: 0 }]]);
    const [door] = thingShape(plan, { kind: 'opening', level, enclosure: 'room', id: 'door' }).lines;
    expect(door?.[0].x).toBeCloseTo(4.05);
    expect(door?.[1].x).toBeCloseTo(4.95);
    expect(thingShape(plan, { kind: 'pipe', network: 'net', id: 'p2' }).lines[0]?.map(({ x }) => x)).toEqual([0.3, 3]);
  });

  test('a cylinder around its outside', () => {
    const [ring] = thingShape(plan, { kind: 'cylinder', network: 'net', id: 'c1' }).rings;
    for (const p of ring ?? []) expect(Math.hypot(p.x - 0.3, p.y - 2)).toBeCloseTo((10.5 * 0.0254) / 2);
  });

  test('a thing that has gone is not marked', () => {
    const gone: Ref[] = [
      { kind: 'enclosure', level, id: 'gone' },
      { kind: 'opening', level, enclosure: 'room', id: 'gone' },
      { kind: 'note', level: 'gone', id: 'gone' },
      { kind: 'nozzle', network: 'net', id: 'gone' },
      { kind: 'pipe', network: 'gone', id: 'gone' },
      { kind: 'network', id: 'gone' },
    ];
    for (const ref of gone) expect(thingShape(plan, ref)).toEqual({ rings: [], lines: [], points: [], handles: [] });
  });
});
