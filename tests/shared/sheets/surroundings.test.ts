import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { newDevice } from '#shared/model/new-device';
import type { Device, DeviceKind, Plan } from '#shared/model/plan';
import { DEVICE_WORDS } from '#shared/model/thing-name';
import { adjoiningSchedule } from '#shared/sheets/adjoining-schedule';
import { deviceFacts, deviceSchedule } from '#shared/sheets/device-schedule';
import { deviceSymbol } from '#shared/sheets/symbols';
import type { Sheet } from '#shared/sheets/sheet';
import { type PlanBuilder, planBuilder } from '../../support/plan-builder.ts';
import { levelIn } from '../../support/try-command.ts';
import { allMarks, sheetsOf, wordsOf } from '../../support/sheet-set.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const PLANS = ['Hazard and site plan', 'Reflected ceiling plan', 'Electrical and safety plan'];
const planSheetsOf = (plan: Plan, options: Parameters<typeof sheetsOf>[1] = {}): Sheet[] => sheetsOf(plan, options).filter(({ title }) => PLANS.some((each) => title.startsWith(each)));
const titled = (plan: Plan, title: string, options: Parameters<typeof sheetsOf>[1] = {}): Sheet => {
  const found = planSheetsOf(plan, options).find((sheet) => sheet.title.startsWith(title));
  if (!found) throw new Error(`No sheet ${title}.`);
  return found;
};

/** A room with one of every device, a corridor beside it and a duct over it. */
const furnished = (): PlanBuilder => {
  const built = planBuilder()
    .room(6, 4, 2.7)
    .opening(0, 4, 0.9, { name: 'South door', leadsTo: 'corridor' })
    .ceilingZone(rectangle(1.5, 4, planPoint(4.5, 0)), 2.4)
    .obstruction('duct', rectangle(6, 0.4, planPoint(0, 3)), 2.3, 2.6, { name: 'Duct 1' })
    .obstruction('live-part', rectangle(1, 0.2, planPoint(2, 2)), 0, 2, { name: 'Busbar' })
    .obstruction('work-place', rectangle(0.8, 0.8, planPoint(1, 1)), 0, 0.75, { name: 'Desk' })
    .adjoining('corridor', rectangle(6, 1.6, planPoint(0, -1.8)), { name: 'Hall', floor_m: -0.3 })
    .device('detector', 2, 1, { name: 'D1', zone: 'A', senses: 'smoke', height_m: 2.6 })
    .device('detector', 2.5, 1, { name: 'D2', zone: 'B', space: 'under-floor', height_m: -0.1 })
    .device('diffuser', 3, 1.5, { name: 'Diffuser 1' });
  const wall: DeviceKind[] = ['sounder', 'sign', 'manual-release', 'abort', 'disconnect', 'door-button', 'control-panel'];
  wall.forEach((kind, i) => void built.device(kind, 0.4 + i * 0.4, 0.025, { name: `W${i + 1}`, facing_rad: Math.PI / 2 }));
  return built.device('lock-out-valve', 0.3, 3.5, { name: 'Lock-out valve 1' }).device('air-intake', 5, -1, { name: 'Air intake 1' });
};

describe('the sheets of the surroundings', () => {
  const { plan } = furnished();
  test.each(['ANSI-B', 'A3'] as const)('on %s each of the three is there, and no text runs into another', (paper) => {
    const sheets = planSheetsOf(plan, { paper });
    expect(sheets.map(({ title }) => title.replace(/: .*/, ''))).toEqual(PLANS);
    for (const sheet of sheets) expect(textOverlaps(allMarks(sheet.marks).filter((mark) => mark.kind !== 'text' || !mark.text.startsWith('SAMPLE')))).toEqual([]);
  });
  test('the ceiling shows what hangs there, and nothing under the floor', () => {
    const words = wordsOf(titled(plan, 'Reflected'));
    expect(words).toEqual(expect.arrayContaining(['D1 zone A', 'Diffuser 1']));
    expect(words.some((text) => text.startsWith('Duct 1'))).toBe(true);
    expect(words.some((text) => text.includes('ceiling 2.400 m'))).toBe(true);
    for (const absent of ['D2 zone B', 'W1', 'Busbar']) expect(words.some((text) => text.includes(absent))).toBe(false);
  });
  test('the electrical plan shows every device but those of the air, with the doors', () => {
    const words = wordsOf(titled(plan, 'Electrical'));
    for (const name of ['D1 zone A', 'D2 zone B', 'W1', 'W2', 'W3', 'W4', 'W5', 'W6', 'W7', 'Lock-out valve 1']) expect(words).toContain(name);
    expect(words.some((text) => text.startsWith('South door'))).toBe(true);
    expect(words).not.toContain('Diffuser 1');
    expect(words).not.toContain('Air intake 1');
  });
  test('the site plan shows what lies beside it and where doors lead', () => {
    const words = wordsOf(titled(plan, 'Hazard'));
    expect(words).toEqual(expect.arrayContaining(['Hall, corridor', 'gas: NOBODY HAS LOOKED', 'to a corridor', 'Air intake 1']));
  });
  test('the legend of each names the signs in use and no others', () => {
    const ceiling = wordsOf(titled(plan, 'Reflected'));
    expect(ceiling).toEqual(expect.arrayContaining(['detector', 'diffuser, arrow with the air']));
    expect(ceiling).not.toContain('abort switch');
    const electrical = wordsOf(titled(plan, 'Electrical'));
    expect(electrical).toEqual(expect.arrayContaining(['abort switch', 'detector in a void', 'releasing panel']));
    expect(electrical).not.toContain('diffuser, arrow with the air');
  });
  test('live parts and work places have their signs on the nozzle plan', () => {
    const words = sheetsOf(plan).flatMap(wordsOf);
    expect(words).toEqual(expect.arrayContaining(['live part', 'work place']));
  });
  test('a plan without any of it has none of these sheets', () => {
    expect(planSheetsOf(planBuilder().room(6, 4, 2.7).plan)).toEqual([]);
  });
});

describe('the schedule of devices', () => {
  const { plan } = furnished();
  const table = deviceSchedule(derivePlan(plan), levelIn(plan));
  const row = (name: string) => table.rows.find(([first]) => first === name)?.map(String) ?? [];
  test('says where each is from two datum faces, as high as it is known', () => {
    expect(row('D1').slice(1, 6)).toEqual(['Detector', 'Room 1', 'west face 2.000 m', 'south face 1.000 m', '+2.600 m']);
    expect(row('W3')[5]).toBe('not known');
    // Behind the south wall it lies outside, in figures that cannot be taken for a distance into the room.
    expect(row('Air intake 1')[2]).toContain('outside');
    expect(row('Air intake 1')[4]).toBe('south face 1.000 m behind it');
  });
  test('lists every device once', () => {
    expect(table.rows).toHaveLength(Object.keys(levelIn(plan).devices).length);
  });
  const facts = (kind: DeviceKind, change: object = {}) => deviceFacts({ ...newDevice(kind, 'x', 'X', planPoint(0, 0)), ...change } as Device, 'metric');
  test.each<[DeviceKind, object, string]>([
    ['detector', {}, 'what it senses not known, zone not known, in the room'],
    ['detector', { senses: 'smoke', zone: 'A' }, 'smoke, zone A, in the room'],
    ['sounder', {}, 'heard, loudness not known; seen, light not known'],
    ['sounder', { isHeard: false, isSeen: false }, 'neither heard nor seen'],
    ['sign', {}, 'at an entrance: wording not known'],
    ['sign', { sign: 'inside', wording: 'Leave at\nthe alarm.' }, 'inside the enclosure: “Leave at the alarm.”'],
    ['manual-release', {}, 'guard not known'],
    ['manual-release', { isGuarded: false }, 'NOT guarded against a chance pull'],
    ['abort', { isHeld: true, yieldsToRelease: false }, 'works only while held; HOLDS manual release up'],
    ['disconnect', { isKeyed: true }, 'keyed, supervision not known'],
    ['lock-out-valve', { isSupervised: false }, 'NOT supervised'],
    ['door-button', {}, ''],
  ])('of a %s says what is known and what nobody has looked at', (kind, change, words) => {
    expect(facts(kind, change)).toBe(words);
  });
});

test('the schedule of adjoining spaces says which lies lower and what nobody has looked at', () => {
  const [row] = adjoiningSchedule(levelIn(furnished().plan), 'feet').rows;
  expect(row?.slice(0, 2)).toEqual(['Hall', 'Corridor']);
  expect(row?.[3]).toContain('LOWER');
  expect(row?.[4]).toBe('NOBODY HAS LOOKED');
});

test.each(Object.keys(DEVICE_WORDS) as DeviceKind[])('%s: its printed sign stays within its paper', (kind) => {
  const device = { ...newDevice(kind, 'x', 'X', planPoint(0, 0)), facing_rad: 0 } as Device;
  for (const mark of deviceSymbol(50, 50, device, 1)) {
    if (mark.kind === 'line') for (const value of mark.places) expect(Math.abs(value - 50)).toBeLessThan(6.5);
  }
});
