import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AT_DOOR_m, devicesOf, doorwaysOf, placedOf } from '#shared/derived/device-place';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import type { Level } from '#shared/model/plan';
import { type Placing, anyPlacing, placed } from '../../support/layout.ts';
import { planBuilder } from '../../support/plan-builder.ts';

/** Two rooms with a wall of 0.2 m between them: a door from each to the south, its middle at x 3 and x 9.2. */
function twoRooms(devices: readonly PlanPoint[], placing?: Placing): Level {
  const at = ({ x, y }: PlanPoint): PlanPoint => (placing ? placed(planPoint(x, y), placing) : planPoint(x, y));
  const ring = (x: number): PlanPoint[] => [at({ x, y: 0 }), at({ x: x + 6, y: 0 }), at({ x: x + 6, y: 4 }), at({ x, y: 4 })];
  const built = planBuilder().outline(ring(0), 2.7).opening(0, 3, 1).outline(ring(6.2), 2.7).opening(0, 3, 1);
  for (const device of devices) built.device('sign', at(device).x, at(device).y);
  const level = built.plan.levels[built.levelId];
  if (!level) throw new Error('The builder has its level.');
  return level;
}

/** Names of the rooms that each device belongs to, with where it stands. */
function owners(level: Level): string[] {
  return Object.values(level.enclosures).flatMap(({ id, name }) => devicesOf(level, id).map(({ where }) => `${name} ${where}`));
}

describe('the room that a device belongs to', () => {
  test.each<[string, PlanPoint, string[]]>([
    ['inside', { x: 3, y: 2 }, ['Room 1 inside']],
    ['on the wall', { x: 6, y: 2 }, ['Room 1 inside']],
    ['in the wall between', { x: 6.1, y: 3.9 }, []],
    ['outside, at the door', { x: 3, y: -1 }, ['Room 1 at-door']],
    ['as far from the doorway as counts', { x: 3, y: -AT_DOOR_m }, ['Room 1 at-door']],
    ['just beyond', { x: 2.5 - AT_DOOR_m - 0.001, y: -0.001 }, []],
    ['just beyond, straight out', { x: 3, y: -AT_DOOR_m - 0.001 }, []],
    ['far outside', { x: 3, y: -5 }, []],
    ['inside the other room, though near a door', { x: 9.2, y: 0.3 }, ['Room 2 inside']],
  ])('%s', (_, device, expected) => {
    expect(owners(twoRooms([device]))).toEqual(expected);
  });

  test('of two doors the nearer one counts', () => {
    const level = planBuilder().room(4, 4, 2.7).opening(0, 3, 1).room(4, 4, 2.7, { x: 4.2, y: 0 }).opening(0, 1, 1).device('sign', 4.3, -0.5).device('sign', 4, -0.5).plan.levels['level-0'];
    expect(level && owners(level)).toEqual(['Room 1 at-door', 'Room 2 at-door']);
  });

  test('of rooms one within another the smaller one counts', () => {
    const level = planBuilder().room(8, 8, 2.7).room(2, 2, 2.7, { x: 3, y: 3 }).device('sign', 4, 4).plan.levels['level-0'];
    expect(level && owners(level)).toEqual(['Room 2 inside']);
  });

  test('knows the distance to the nearest doorway, and Infinity without a door', () => {
    const level = twoRooms([{ x: 3, y: 2 }]);
    const [room] = Object.values(level.enclosures);
    expect(room && devicesOf(level, room.id)[0]).toMatchObject({ fromDoor_m: 2, doorway: { ref: { kind: 'opening' } } });
    const closed = planBuilder().room(4, 4, 2.7).device('sign', 1, 1).plan.levels['level-0'];
    expect(closed && devicesOf(closed, Object.keys(closed.enclosures)[0] ?? '')[0]).toMatchObject({ fromDoor_m: Infinity, doorway: undefined });
  });

  test('picks one kind, and doors only among openings', () => {
    const { plan, enclosure } = planBuilder().room(4, 4, 2.7).opening(0, 2, 1).opening(1, 2, 0.5, { kind: 'grille' }).device('sign', 1, 1).device('abort', 2, 1);
    const level = plan.levels['level-0'];
    expect(level && placedOf(devicesOf(level, enclosure.id), 'abort').map(({ device }) => device.kind)).toEqual(['abort']);
    const room = level?.enclosures[enclosure.id];
    expect(room && doorwaysOf(room, 'level-0').length).toBe(1);
  });

  test('turning and mirroring changes nothing', () => {
    const devices = [{ x: 3, y: 2 }, { x: 3, y: -1 }, { x: 9.2, y: 0.3 }, { x: 6.1, y: 3.9 }, { x: 10.5, y: -1.2 }];
    const straight = owners(twoRooms(devices));
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(owners(twoRooms(devices, placing))).toEqual(straight);
      }),
      { numRuns: 40 },
    );
  });
});
