import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { newDevice } from '#shared/model/new-device';
import type { Device, DeviceKind, Plan, Ref } from '#shared/model/plan';
import { DEVICE_WORDS } from '#shared/model/thing-name';
import { WALL_DEVICES, deviceMiddle, deviceShape } from '#shared/sheets/device-shape';
import { zigzagRows } from '#shared/sheets/zigzag';
import { drawAdjoining } from '../../../src-renderer/canvas/draw-adjoining.ts';
import { drawDevices } from '../../../src-renderer/canvas/draw-devices.ts';
import { drawObstructions } from '../../../src-renderer/canvas/draw-obstructions.ts';
import { labelsOf } from '../../../src-renderer/canvas/label-wishes.ts';
import { detailAt } from '../../../src-renderer/canvas/level-of-detail.ts';
import type { Scene } from '../../../src-renderer/canvas/scene.ts';
import { cutSection } from '../../../src-renderer/canvas/section-cut.ts';
import { heightCommand, heightHandleOf } from '../../../src-renderer/canvas/section-heights.ts';
import { findSectionPath } from '../../../src-renderer/canvas/section-path.ts';
import { heightHandleAt, sectionThingAt } from '../../../src-renderer/canvas/section-pick.ts';
import { fittedSection, sectionPx } from '../../../src-renderer/canvas/section-view.ts';
import { LIGHT_INK } from '../../../src-renderer/ink.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { drawnPieces, named, recordingPen } from './support/recording-pen.ts';
import { smallPlan } from './support/small-plan.ts';

const KINDS = Object.keys(DEVICE_WORDS) as DeviceKind[];
const device = (kind: DeviceKind, change: object = {}): Device => ({ ...newDevice(kind, kind, kind, { x: 3, y: 2 }), ...change }) as Device;
const places = (of: Device): number[][] => deviceShape(of).flatMap(({ places: run }) => run.flatMap((x, i) => (i % 2 === 0 ? [[x, run[i + 1] ?? 0]] : [])));
const reach = (of: Device): number => Math.max(...places(of).map(([x = 0, y = 0]) => Math.hypot(x, y)));

describe('the signs of devices', () => {
  test('every kind has one of its own', () => {
    const drawn = KINDS.map((kind) => JSON.stringify(deviceShape(device(kind, { facing_rad: 0 }))));
    expect(new Set(drawn).size).toBe(KINDS.length);
  });
  test.each(KINDS)('%s: turning it turns its sign and changes nothing else', (kind) => {
    const east = places(device(kind, { facing_rad: 0 }));
    const north = places(device(kind, { facing_rad: Math.PI / 2 }));
    expect(north.length).toBe(east.length);
    north.forEach(([x = 0, y = 0], i) => {
      expect(x).toBeCloseTo(-(east[i]?.[1] ?? 0), 9);
      expect(y).toBeCloseTo(east[i]?.[0] ?? 0, 9);
    });
    expect(reach(device(kind, { facing_rad: 0 }))).toBeLessThan(6);
  });
  test.each(KINDS.filter((kind) => WALL_DEVICES.has(kind)))('%s on a wall stands off into the room: nothing of it is behind the face', (kind) => {
    const hung = device(kind, { facing_rad: 0 });
    for (const [x = 0] of places(hung)) expect(x).toBeGreaterThanOrEqual(-1e-9);
    expect(deviceMiddle(hung).x).toBeGreaterThan(0);
    expect(deviceMiddle(device(kind))).toEqual({ x: 0, y: 0 });
  });
  test('a detector in a void has a broken ring, a sounder shows whether it is heard or seen, a diffuser which way the air goes', () => {
    expect(deviceShape(device('detector', { space: 'under-floor' }))[0]?.isDashed).toBe(true);
    expect(deviceShape(device('detector'))[0]?.isDashed).toBe(false);
    const sign = (change: object) => JSON.stringify(deviceShape(device('sounder', change)));
    expect(new Set([sign({}), sign({ isSeen: false }), sign({ isHeard: false })]).size).toBe(3);
    expect(JSON.stringify(deviceShape(device('diffuser', { air: 'supply' })))).not.toBe(JSON.stringify(deviceShape(device('diffuser', { air: 'extract' }))));
  });
});

test('zigzag rows stay with their anchor, and a low box still holds one', () => {
  const rows = [...zigzagRows({ minX: 0, maxX: 20, minY: 0, maxY: 30 }, { x: 0, y: 0 }, 4, 10)];
  expect(rows.map(([first]) => first?.y)).toEqual([8, 18]);
  expect(rows[0]?.slice(0, 3)).toEqual([{ x: 0, y: 8 }, { x: 4, y: 12 }, { x: 8, y: 8 }]);
  expect([...zigzagRows({ minX: 0, maxX: 20, minY: 4, maxY: 6 }, { x: 0, y: 0 }, 4, 10)]).toHaveLength(1);
});

const furnished = (): Plan =>
  produce(smallPlan(), (draft) => {
    const level = draft.levels['level-0'];
    if (!level) return;
    level.devices.d1 = { ...newDevice('detector', 'd1', 'D1', { x: 4.5, y: 1 }), height_m: 1.5, zone: 'A' } as Device;
    level.devices.m1 = { ...newDevice('manual-release', 'm1', 'Manual release 1', { x: 4, y: 0.025 }), facing_rad: Math.PI / 2 } as Device;
    level.adjoining.hall = { id: 'hall', name: 'Hall', kind: 'corridor', outline: [{ x: 0, y: -2 }, { x: 6, y: -2 }, { x: 6, y: -0.2 }, { x: 0, y: -0.2 }], floor_m: 0, gas: 'not-assessed', note: '' };
    level.obstructions.bar = { id: 'bar', name: 'Busbar', kind: 'live-part', footprint: [{ x: 3, y: 3 }, { x: 5, y: 3 }, { x: 5, y: 3.3 }, { x: 3, y: 3.3 }], bottom_m: 0, top_m: 2, front_rad: null, voltage_V: 480, hasLooseItems: null, hasDrives: null, isPermeable: true };
    level.obstructions.desk = { id: 'desk', name: 'Desk', kind: 'work-place', footprint: [{ x: 2, y: 3 }, { x: 2.8, y: 3 }, { x: 2.8, y: 3.6 }, { x: 2, y: 3.6 }], bottom_m: 0, top_m: 0.8, front_rad: null, voltage_V: null, hasLooseItems: null, hasDrives: null, isPermeable: true };
  });
const sceneOf = (plan: Plan, shows: (key: string) => boolean = () => true): Scene =>
  ({ evaluation: { derived: derivePlan(plan), design: { enclosures: [], networks: [] }, findings: [] }, level: 'level-0', ink: LIGHT_INK, lengths: 'metric', layers: startSession('t').layers, shows }) as unknown as Scene;
const viewAt = (scale_px_m: number) => ({ camera: { at: { x: 3, y: 1 }, scale_px_m }, width: 900, height: 700 });

describe('on the board', () => {
  test('devices are signs, and dots while the scale is small', () => {
    const { pen, calls } = recordingPen();
    drawDevices(pen, viewAt(100), sceneOf(furnished()));
    expect(named(calls, 'stroke').length).toBeGreaterThan(3);
    const far = recordingPen();
    drawDevices(far.pen, viewAt(5), sceneOf(furnished()));
    expect(named(far.calls, 'arc')).toHaveLength(2);
    const other = recordingPen();
    drawDevices(other.pen, viewAt(100), sceneOf(furnished(), (key) => !key.startsWith('device')));
    expect(other.calls).toHaveLength(0);
  });
  test('an adjoining space has a thin broken outline', () => {
    const { pen, calls } = recordingPen();
    drawAdjoining(pen, viewAt(100), sceneOf(furnished()));
    expect(calls.filter(({ name, dash }) => name === 'stroke' && dash.length > 0)).not.toHaveLength(0);
  });
  test('a live part has zigzag rows, a work place a seat', () => {
    const { pen, calls } = recordingPen();
    drawObstructions(pen, viewAt(100), sceneOf(furnished()));
    const slanted = drawnPieces(calls).filter(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => Math.abs(Math.abs(x2 - x1) - 5) < 1e-9 && Math.abs(Math.abs(y2 - y1) - 5) < 1e-9);
    expect(slanted.length).toBeGreaterThan(20);
    expect(named(calls, 'arc')).toHaveLength(2);
  });
  test('their names stand beside them: the zone of a detector, what a space is', () => {
    const scene = sceneOf(furnished());
    const view = viewAt(100);
    const labels = labelsOf({ scene, view, detail: detailAt(100), measure: (text) => text.length * 6, region: { minX: -99, minY: -99, maxX: 99, maxY: 99 } });
    const texts = labels.map(({ lines }) => lines.map(({ text }) => text).join('/'));
    expect(texts).toContain('D1 zone A/at 1.500 m');
    expect(texts).toContain('Manual release 1/height not known');
    expect(texts).toContain('Hall/corridor');
  });
});

describe('in the section', () => {
  const derived = derivePlan(furnished());
  const path = findSectionPath(derived, { level: 'level-0', cut: null, selection: [] });
  if (!path) throw new Error('there is a way');
  const cut = cutSection(derived, path, 'level-0');
  const view = fittedSection(cut, 800, 300);
  const detector: Ref = { kind: 'device', level: 'level-0', id: 'd1' };
  test('a device stands at its height; one whose height nobody knows is left out', () => {
    expect(cut.devices.map(({ device: { name }, at }) => [name, at.z])).toEqual([['D1', 1.5]]);
  });
  test('its height can be taken hold of and typed', () => {
    const [shown] = cut.devices;
    if (!shown) throw new Error('there is one');
    const p = sectionPx(view, shown.at);
    expect(heightHandleAt(cut, view, p, 9)).toMatchObject({ kind: 'device', z_m: 1.5 });
    expect(sectionThingAt(cut, view, p, 9)).toEqual(detector);
    const handle = heightHandleOf(cut, [detector]);
    if (!handle) throw new Error('it has a height');
    const outcome = heightCommand(handle, 2.2)(furnished());
    expect(outcome.ok && outcome.next.levels['level-0']?.devices.d1?.height_m).toBe(2.2);
  });
});
