import { describe, expect, test } from 'vitest';
import { addAdjoining } from '#shared/commands/add-adjoining';
import { addDevice } from '#shared/commands/add-device';
import { addLevel } from '#shared/commands/add-level';
import { addObstruction } from '#shared/commands/add-obstruction';
import { alignToWall } from '#shared/commands/align-to-wall';
import { copyThings } from '#shared/commands/copy-things';
import { deleteThings } from '#shared/commands/delete-things';
import { editAdjoining } from '#shared/commands/edit-adjoining';
import { editDevice } from '#shared/commands/edit-device';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { editObstruction } from '#shared/commands/edit-obstruction';
import { editOpening } from '#shared/commands/edit-opening';
import { mirrorThings } from '#shared/commands/mirror-things';
import { moveThings } from '#shared/commands/move-things';
import { nextAdjoiningName, nextDeviceName } from '#shared/commands/next-name';
import { rotateThings } from '#shared/commands/rotate-things';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { newDevice } from '#shared/model/new-device';
import type { DeviceKind, Plan, RefOf } from '#shared/model/plan';
import { DEVICE_WORDS, thingName } from '#shared/model/thing-name';
import { planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll, levelIn, only, refusal } from '../../support/try-command.ts';

const KINDS = Object.keys(DEVICE_WORDS) as DeviceKind[];
const empty = () => planBuilder().plan;
const deviceIn = (plan: Plan) => only(levelIn(plan).devices);
const spaceIn = (plan: Plan) => only(levelIn(plan).adjoining);
const corridor = [planPoint(0, -2), planPoint(6, -2), planPoint(6, 0), planPoint(0, 0)];

describe('addDevice', () => {
  test.each(KINDS)('puts a %s down of which only the place is known', (kind) => {
    const { next, created, label } = done(empty(), addDevice('level-0', kind, planPoint(1, 2), null));
    const device = deviceIn(next);
    expect(device).toEqual({ ...newDevice(kind, device.id, device.name, planPoint(1, 2)) });
    expect(created).toEqual([{ kind: 'device', level: 'level-0', id: device.id }]);
    expect(label).toBe(`Place ${DEVICE_WORDS[kind].toLowerCase()}`);
    // Its name says once what it is.
    expect(thingName(next, created[0] as RefOf<'device'>)).toBe(kind === 'detector' ? 'Detector D1' : `${DEVICE_WORDS[kind]} 1`);
  });
  test('takes a height, a direction and what its kind has besides', () => {
    const { next } = done(empty(), addDevice('level-0', 'sign', planPoint(1, 2), -Math.PI / 2, { height_m: 1.6, sign: 'inside' }));
    expect(deviceIn(next)).toMatchObject({ height_m: 1.6, facing_rad: (3 * Math.PI) / 2, sign: 'inside', wording: '' });
  });
  test('names go on in each series of its own', () => {
    const plan = doneAll(empty(), addDevice('level-0', 'detector', planPoint(1, 1), null), addDevice('level-0', 'detector', planPoint(2, 1), null), addDevice('level-0', 'sign', planPoint(3, 1), null));
    expect(Object.values(levelIn(plan).devices).map(({ name }) => name)).toEqual(['D1', 'D2', 'Sign 1']);
    expect(nextDeviceName(plan, 'detector')).toBe('D3');
    expect(nextDeviceName(plan, 'abort')).toBe('Abort switch 1');
  });
  test('is refused where it would not be sound', () => {
    expect(refusal(empty(), addDevice('gone', 'sign', planPoint(0, 0), null))).toBe('This level is no longer in the plan.');
    expect(refusal(empty(), addDevice('level-0', 'sign', planPoint(Number.NaN, 0), null))).toContain('too far off');
    expect(refusal(empty(), addDevice('level-0', 'sign', planPoint(0, 0), Number.NaN))).toContain('not a number');
    expect(refusal(empty(), addDevice('level-0', 'sign', planPoint(0, 0), null, { height_m: 1e9 }))).toContain('Height must be at most');
    expect(refusal(empty(), addDevice('level-0', 'sign', planPoint(0, 0), null, { zone: 'A' }))).toContain('no plan has');
  });
});

describe('editDevice', () => {
  const built = planBuilder().device('detector', 1, 1, { name: 'D1', height_m: 2.4 });
  const ref = built.onLevel('device');
  const edited = (change: Parameters<typeof editDevice>[1]) => deviceIn(done(built.plan, editDevice(ref, change)).next);
  test('changes what is known', () => {
    expect(edited({ zone: 'A', senses: 'smoke', space: 'under-floor', height_m: null })).toMatchObject({ zone: 'A', senses: 'smoke', space: 'under-floor', height_m: null });
    expect(edited({ facing_rad: -Math.PI / 2 }).facing_rad).toBeCloseTo((3 * Math.PI) / 2, 12);
    expect(edited({ at: planPoint(3, 3), name: 'D9' })).toMatchObject({ at: { x: 3, y: 3 }, name: 'D9' });
  });
  test('one that becomes another kind keeps name, place and height, and nothing is known of the rest', () => {
    expect(edited({ kind: 'abort' })).toEqual({ kind: 'abort', id: ref.id, name: 'D1', at: { x: 1, y: 1 }, height_m: 2.4, facing_rad: null, isHeld: null, yieldsToRelease: null });
    expect(edited({ kind: 'detector' })).toMatchObject({ kind: 'detector', zone: '' });
  });
  test.each<[string, Parameters<typeof editDevice>[1], string]>([
    ['no name', { name: ' ' }, 'needs a name'],
    ['a field of another kind', { isGuarded: true }, 'no plan has'],
    ['what it cannot sense', { senses: 'sound' as 'smoke' }, 'Senses must be one of'],
    ['a height out of range', { height_m: Number.NaN }, 'Height'],
  ])('is refused for %s', (_, change, reason) => {
    expect(refusal(built.plan, editDevice(ref, change))).toContain(reason);
  });
  test('is refused for one that has gone', () => {
    expect(refusal(built.plan, editDevice({ ...ref, id: 'gone' }, {}))).toBe('This device is no longer in the plan.');
  });
});

describe('adjoining spaces', () => {
  const built = planBuilder().adjoining('corridor', corridor, { name: 'Corridor 1' });
  const ref = built.onLevel('adjoining');
  test('are drawn with their floor level with the room and nothing assessed', () => {
    const { next, created } = done(built.plan, addAdjoining('level-0', [...corridor].reverse(), 'corridor'));
    const space = levelIn(next).adjoining[created[0]?.id ?? ''];
    expect(space).toMatchObject({ name: 'Corridor 2', kind: 'corridor', floor_m: 0, gas: 'not-assessed', note: '' });
    expect(space?.outline).toHaveLength(4);
    expect(nextAdjoiningName(next, 'pit')).toBe('Pit 1');
  });
  test('are refused without area, crossed, and on a level that has gone', () => {
    expect(refusal(built.plan, addAdjoining('level-0', corridor.slice(0, 2), 'pit'))).toBe('The outline needs three corners or more.');
    expect(refusal(built.plan, addAdjoining('level-0', [planPoint(0, 0), planPoint(2, 2), planPoint(2, 0), planPoint(0, 2)], 'pit'))).toBe('The outline would cross or touch itself.');
    expect(refusal(built.plan, addAdjoining('gone', corridor, 'pit'))).toContain('level is no longer');
  });
  test('are edited', () => {
    const change = { name: 'Low corridor', kind: 'pit', floor_m: -1.2, gas: 'alarmed', note: 'Meter at the stair' } as const;
    expect(spaceIn(done(built.plan, editAdjoining(ref, change)).next)).toMatchObject(change);
    expect(spaceIn(done(built.plan, editAdjoining(ref, { outline: rectangle(3, 2) })).next).outline).toHaveLength(4);
  });
  test.each<[string, Parameters<typeof editAdjoining>[1], string]>([
    ['no name', { name: '' }, 'needs a name'],
    ['an outline without area', { outline: [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 2, y: 0 }] }, 'touch itself'],
    ['a floor out of range', { floor_m: 1e9 }, 'Floor must be'],
  ])('are not edited to %s', (_, change, reason) => {
    expect(refusal(built.plan, editAdjoining(ref, change))).toContain(reason);
  });
  test('are refused when they have gone', () => {
    expect(refusal(built.plan, editAdjoining({ ...ref, id: 'gone' }, {}))).toBe('This adjoining space is no longer in the plan.');
  });
});

describe('moving, turning, copying and deleting', () => {
  const built = planBuilder().room(6, 4, 2.7).device('sign', 1, 1, { name: 'Sign 1', facing_rad: 0, height_m: 1.5 }).adjoining('corridor', corridor, { name: 'Corridor 1', floor_m: -1 });
  const sign = built.onLevel('device');
  const space = built.onLevel('adjoining');
  test('moves, and rises where a height is known', () => {
    const { next } = done(built.plan, moveThings([sign, space], 1, 2, 0.5));
    expect(deviceIn(next)).toMatchObject({ at: { x: 2, y: 3 }, height_m: 2, facing_rad: 0 });
    expect(spaceIn(next).floor_m).toBe(-0.5);
    expect(spaceIn(next).outline[0]).toEqual({ x: 1, y: 0 });
    const unknown = done(built.plan, editDevice(sign, { height_m: null })).next;
    expect(deviceIn(done(unknown, moveThings([sign], 0, 0, 1)).next).height_m).toBeNull();
  });
  test('turns and mirrors where it looks', () => {
    expect(deviceIn(done(built.plan, rotateThings([sign], planPoint(0, 0), Math.PI / 2)).next)).toMatchObject({ at: { x: -1, y: 1 }, facing_rad: Math.PI / 2 });
    const mirrored = deviceIn(done(built.plan, mirrorThings([sign, space], planPoint(0, 0), planPoint(0, 1))).next);
    expect(mirrored.at.x).toBeCloseTo(-1, 9);
    expect(mirrored.facing_rad).toBeCloseTo(Math.PI, 9);
    const everyWay = done(built.plan, editDevice(sign, { facing_rad: null })).next;
    expect(deviceIn(done(everyWay, rotateThings([sign], planPoint(0, 0), 1)).next).facing_rad).toBeNull();
  });
  test('is brought to a distance from a wall', () => {
    expect(deviceIn(done(built.plan, alignToWall([sign], built.wall(0), 0.1)).next).at.y).toBeCloseTo(0.1, 12);
  });
  test('copies have names of their own, also on another level', () => {
    const { next } = done(built.plan, copyThings([sign, space], 1, 0));
    expect(Object.values(levelIn(next).devices).map(({ name, at }) => [name, at.x])).toEqual([['Sign 1', 1], ['Sign 2', 2]]);
    expect(Object.values(levelIn(next).adjoining).map(({ name }) => name)).toEqual(['Corridor 1', 'Corridor 2']);
    const { next: higher } = done(built.plan, addLevel('Level 2', 3));
    const upper = Object.keys(higher.levels).find((id) => id !== 'level-0') ?? '';
    const above = done(higher, copyThings([sign, space], 0, 0, upper)).next.levels[upper];
    expect(Object.values(above?.devices ?? {}).map(({ name, at }) => [name, at.x])).toEqual([['Sign 2', 1]]);
    expect(Object.values(above?.adjoining ?? {}).map(({ name }) => name)).toEqual(['Corridor 2']);
  });
  test('deletes, and what has gone cannot be deleted again', () => {
    const { next, label } = done(built.plan, deleteThings([sign]));
    expect(levelIn(next).devices).toEqual({});
    expect(label).toBe('Delete Sign 1');
    expect(levelIn(done(built.plan, deleteThings([space])).next).adjoining).toEqual({});
    expect(refusal(next, deleteThings([sign]))).toBe('This device is no longer in the plan.');
    expect(refusal(built.plan, deleteThings([{ ...space, id: 'gone' }]))).toBe('This adjoining space is no longer in the plan.');
  });
});

describe('rows of the release matrix', () => {
  const built = planBuilder().room(6, 4, 2.7).opening(0, 3, 1, { kind: 'damper', name: 'Damper 1' }).device('diffuser', 2, 2);
  built.shutdown('damper', built.lastOpening.id, { name: 'Damper of the supply' }).shutdown('fan', built.onLevel('device').id, { name: 'Supply fan' });
  const rows = (plan: Plan) => Object.values(only(levelIn(plan).enclosures).shutdowns).map(({ name, target }) => [name, target]);
  test('stay when what they shut goes, and name it no longer', () => {
    expect(rows(done(built.plan, deleteThings([built.lastOpening])).next)).toEqual([['Damper of the supply', null], ['Supply fan', built.onLevel('device').id]]);
    expect(rows(done(built.plan, deleteThings([built.onLevel('device')])).next)[1]).toEqual(['Supply fan', null]);
  });
  test('of a copied room shut its own openings', () => {
    const room: RefOf<'enclosure'> = { kind: 'enclosure', level: 'level-0', id: built.lastOpening.enclosure };
    const { next, created } = done(built.plan, copyThings([room], 10, 0));
    const copy = levelIn(next).enclosures[created[0]?.id ?? ''];
    expect(Object.values(copy?.shutdowns ?? {}).map(({ name, target }) => [name, target])).toEqual([['Damper of the supply', Object.keys(copy?.openings ?? {})[0]], ['Supply fan', null]]);
    expect(Object.keys(copy?.shutdowns ?? {})).not.toEqual(Object.keys(only(levelIn(built.plan).enclosures).shutdowns));
  });
  test('and what is known of the room and its openings are edited with them', () => {
    const room: RefOf<'enclosure'> = { kind: 'enclosure', level: 'level-0', id: built.lastOpening.enclosure };
    const change = { shutdowns: {}, dischargedWith: 'East rooms', ambientSound_dBA: 62, ceiling: { make: 'tiles' as const, clipped_m: 1.2 }, afterDischarge: { extract: 'fixed' as const, extractFlow_m3_s: 0.2, procedure: 'Air, meter, then in.', hasMeter: true } };
    expect(only(levelIn(done(built.plan, editEnclosure(room, change)).next).enclosures)).toMatchObject(change);
    expect(refusal(built.plan, editEnclosure(room, { ambientSound_dBA: -1 }))).toBe('Ambient sound cannot be less than 0.');
    const way = { undercut_m: 0.01, ventPath: [{ name: 'Duct', through: 'duct' as const, freeArea_m2: 0.02 }] };
    const opening = only(only(levelIn(done(built.plan, editOpening(built.lastOpening, way)).next).enclosures).openings);
    expect(opening).toMatchObject(way);
  });
});

describe('obstacles of the new kinds', () => {
  test.each([['partition', false], ['live-part', true], ['work-place', true]] as const)('a %s lets agent through: %s', (kind, isPermeable) => {
    const { next } = done(empty(), addObstruction('level-0', kind, rectangle(1, 0.1), 0, 2));
    expect(only(levelIn(next).obstructions)).toMatchObject({ kind, isPermeable, voltage_V: null, hasLooseItems: null, hasDrives: null });
  });
  const built = planBuilder().obstruction('live-part', rectangle(1, 0.1), 2, 2.2);
  const ref = built.onLevel('obstruction');
  test('say their voltage, what lies on them and whether disks run in them', () => {
    const change = { voltage_V: 480, hasLooseItems: false, hasDrives: true };
    expect(only(levelIn(done(built.plan, editObstruction(ref, change)).next).obstructions)).toMatchObject(change);
    expect(refusal(built.plan, editObstruction(ref, { voltage_V: -1 }))).toBe('Voltage cannot be less than 0.');
  });
});
