import { expect, test } from 'vitest';
import type { Ref } from '#shared/model/plan';
import { findThing } from '#shared/model/find-thing';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const built = planBuilder()
  .underlay()
  .room(6, 4, 2.7)
  .hole([{ x: 1, y: 1 }, { x: 1, y: 2 }, { x: 2, y: 2 }])
  .opening(0, 2, 1)
  .ceilingZone([{ x: 4, y: 1 }, { x: 5, y: 1 }, { x: 5, y: 2 }], 2.4)
  .obstruction('rack', [{ x: 3, y: 1 }, { x: 4, y: 1 }, { x: 4, y: 2 }], 0, 2)
  .dimension({ x: 0, y: 0 }, { x: 6, y: 0 })
  .note(1, 6, 'Ask')
  .network()
  .cylinder(0.2, 3, Math.PI)
  .run([place3(0.2, 3, 2.4), place3(3, 3, 2.4)])
  .nozzle(3, 3, 2.4);
const inHole = Object.values(built.plan.levels['level-0']?.enclosures ?? {})[0]?.holes[0]?.[1]?.id ?? '';

const refs: Ref[] = [
  built.enclosure, built.wall(2), built.corner(2), { ...built.corner(0), id: inHole }, built.lastOpening, built.lastZone, built.networkRef,
  ...(['underlay', 'obstruction', 'dimension', 'note'] as const).map((kind) => built.onLevel(kind)),
  ...(['cylinder', 'node', 'pipe', 'nozzle'] as const).map((kind) => built.inNetwork(kind)),
];

test.each(refs.map((ref) => [ref.kind, ref] as const))('finds a %s, and nothing once it has gone', (_, ref) => {
  expect(findThing(built.plan, ref)).toMatchObject({ kind: ref.kind, ref, thing: { id: ref.id } });
  expect(findThing(built.plan, { ...ref, id: 'gone' })).toBeUndefined();
});

test('nothing of an owner that has gone', () => {
  expect(findThing(built.plan, { ...built.lastNozzle, network: 'gone' })).toBeUndefined();
  expect(findThing(built.plan, { ...built.lastOpening, enclosure: 'gone' })).toBeUndefined();
  expect(findThing(built.plan, { ...built.enclosure, level: 'gone' })).toBeUndefined();
});
