import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Nozzle, Obstruction } from '#shared/model/plan';
import { type PlanBuilder, planBuilder } from '../../support/plan-builder.ts';
import { nozzleOf } from './one-nozzle.ts';

const voids = { underFloor: { depth_m: 0.4, isProtected: true, exclusion: null }, ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } };
const spaceAt = (built: PlanBuilder, x: number, y: number, z: number, change: Partial<Nozzle> = {}) => nozzleOf(built.nozzle(x, y, z, [0], change)).space?.kind;

describe('the space a nozzle hangs in', () => {
  test.each([
    [2.5, 'room'],
    [0, 'room'],
    [3, 'room'],
    [-0.001, 'under-floor'],
    [-0.4, 'under-floor'],
    [-2, 'under-floor'],
    [3.001, 'ceiling-void'],
    [3.5, 'ceiling-void'],
    [9, 'ceiling-void'],
  ])('at height %d m, with both voids', (z, kind) => {
    expect(spaceAt(planBuilder().room(6, 4, 3, undefined, voids), 2, 2, z)).toBe(kind);
  });

  test('is the room where the enclosure has no void, so that the height gets reported', () => {
    for (const z of [-1, 1, 4]) expect(spaceAt(planBuilder().room(6, 4, 3), 2, 2, z)).toBe('room');
  });

  test('is the room from the floor up while its ceiling is unknown', () => {
    expect(spaceAt(planBuilder().room(6, 4, null, undefined, voids), 2, 2, 50)).toBe('room');
  });

  test.each([
    ['on a wall', 0, 2, 'room'],
    ['on a corner', 6, 4, 'room'],
    ['just outside', -0.001, 2, undefined],
    ['in a shaft', 3.5, 2.5, undefined],
    ['on the wall of a shaft', 3, 2.5, 'room'],
  ])('%s', (_, x, y, kind) => {
    expect(spaceAt(planBuilder().room(6, 4, 3).hole(rectangle(1, 1, planPoint(3, 2))), x, y, 2.5)).toBe(kind);
  });

  test('is the smallest of several enclosures around it', () => {
    const built = planBuilder().room(20, 20, 3).room(4, 4, 3, planPoint(2, 2)).room(10, 10, 3);
    expect(nozzleOf(built.nozzle(3, 3, 2)).space?.name).toBe('Room 2');
  });

  test('is looked for on the level of its network only', () => {
    const built = planBuilder().room(6, 4, 3).level('Level 2', 4).network().nozzle(2, 2, 2);
    expect(nozzleOf(built).space).toBeUndefined();
  });

  test('is the one the user chose, if that exists', () => {
    const built = planBuilder().room(6, 4, 3, undefined, voids);
    const enclosure = built.enclosure.id;
    expect(spaceAt(built, 2, 2, 2, { serves: { enclosure, space: 'under-floor' } })).toBe('under-floor');
    const without = planBuilder().room(6, 4, 3);
    expect(spaceAt(without, 2, 2, 2, { serves: { enclosure: without.enclosure.id, space: 'under-floor' } })).toBeUndefined();
  });

  test('is not found for a nozzle that lost its node', () => {
    const built = planBuilder().room(6, 4, 3).nozzle(2, 2, 2);
    const network = built.plan.networks[built.networkId];
    if (network) network.nodes = {};
    expect(nozzleOf(built)).toMatchObject({ at: undefined, space: undefined, localCeiling_m: undefined, blockers: [] });
  });
});

describe('a nozzle', () => {
  test('has the ceiling of its place over it', () => {
    const built = () => planBuilder().room(6, 4, 3).ceilingZone(rectangle(2, 4), 2.4);
    expect(nozzleOf(built().nozzle(1, 1, 2.2)).localCeiling_m).toBe(2.4);
    expect(nozzleOf(built().nozzle(4, 1, 2.2)).localCeiling_m).toBe(3);
    expect(nozzleOf(planBuilder().room(6, 4, null).nozzle(4, 1, 2.2)).localCeiling_m).toBeUndefined();
  });

  test('has its holes turned with it', () => {
    const { holes_rad } = nozzleOf(planBuilder().room(6, 4, 3).nozzle(2, 2, 2, [0, Math.PI], { rotation_rad: (3 * Math.PI) / 2 }));
    expect(holes_rad[0]).toBeCloseTo((3 * Math.PI) / 2, 12);
    expect(holes_rad[1]).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe('blockers', () => {
  const blockedBy = (bottom_m: number, top_m: number, kind: Obstruction['kind'] = 'rack', x = 4) =>
    nozzleOf(planBuilder().room(6, 4, 3).obstruction(kind, rectangle(1, 1, planPoint(x, 1)), bottom_m, top_m).nozzle(2, 1.5, 2.5)).blockers.length;

  test.each([
    ['ending below the orifice', 0, 2.4, 0],
    ['ending at the orifice', 0, 2.5, 0],
    ['rising past it', 0, 2.501, 1],
    ['hanging past it', 2.499, 3, 1],
    ['beginning at it', 2.5, 3, 0],
    ['hanging above it', 2.6, 3, 0],
  ])('a thing %s', (_, bottom_m, top_m, count) => {
    expect(blockedBy(bottom_m, top_m)).toBe(count);
  });

  test('a thing that the orifice touches from below or above is one', () => {
    expect(blockedBy(0, 2.5, 'rack', 1.5)).toBe(1);
    expect(blockedBy(2.5, 3, 'beam', 1.5)).toBe(1);
    expect(blockedBy(2.6, 3, 'beam', 1.5)).toBe(0);
  });

  test('a thing outside the space is none', () => {
    expect(blockedBy(0, 3, 'rack', 7)).toBe(0);
  });
});
