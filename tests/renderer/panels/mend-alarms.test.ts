import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Device, Plan, Release } from '#shared/model/plan';
import { whereToMend } from '../../../src-renderer/panels/findings/where-to-mend.ts';
import { batteryFigure, batteryWith } from '../../../src-renderer/panels/network/battery-with.ts';
import type { DeviceSpec } from '../../support/devices.ts';
import { doorRoom } from '../../support/door-room.ts';
import { withRelease } from '../../support/releasing-circuit.ts';

/** Labels to which the first open finding of a rule leads. */
function leadsTo(rule: string, plan: Plan): string[] {
  const { derived, findings } = evaluate(plan);
  const finding = findings.find((each) => each.rule === rule && each.verdict !== 'ok');
  if (!finding) throw new Error(`${rule} found nothing.`);
  return whereToMend(derived, finding).map((field) => ('label' in field ? field.label : field.text));
}

function room(devices: readonly DeviceSpec[], ambientSound_dBA: number | null = 60, basis: Partial<Plan['basis']> = { lockOutValve: 'not-required' }): Plan {
  const plan = doorRoom(devices);
  Object.assign(plan.basis, basis);
  for (const enclosure of Object.values(plan.levels['level-0']?.enclosures ?? {})) Object.assign(enclosure, { ambientSound_dBA });
  return plan;
}

const SOUNDER: DeviceSpec = { kind: 'sounder', x: 3, y: 0.01, height_m: 2.2, facing_rad: Math.PI / 2, sound_dBA: 95, light_cd: 15 };
const at = (kind: Device['kind'], more: object = {}): DeviceSpec => ({ kind, x: 3.8, y: 0.05, ...more });

describe('what is not said of devices', () => {
  test.each<[string, readonly string[], Plan]>([
    ['S3', ['Loudest usual noise'], room([SOUNDER], null)],
    ['S3', ['Loudness at 3 m'], room([{ ...SOUNDER, sound_dBA: null }])],
    ['S3', ['Height above floor'], room([{ ...SOUNDER, height_m: null }])],
    ['S3', ['Light in candela'], room([{ ...SOUNDER, light_cd: null }])],
    // A sounder has to be placed.
    ['S3', [], room([])],
    ['S4', ['Wording'], room([{ kind: 'sign', x: 2.4, y: -0.05, sign: 'entrance', wording: '' }, { kind: 'sign', x: 1, y: 1, sign: 'inside', wording: 'x' }, { kind: 'sign', x: 0.3, y: 1, sign: 'cylinder', wording: 'x' }])],
    ['S5', ['Height above floor'], room([at('manual-release', { isGuarded: true })])],
    ['S5', ['Guarded against a chance pull'], room([at('manual-release', { height_m: 1 })])],
    ['S6', ['Works only while it is held'], room([at('abort')])],
    ['S6', ['Manual release works although it is held'], room([at('abort', { isHeld: true })])],
    ['S7', ['Needs a key'], room([at('disconnect')])],
    ['S7', ['Supervised'], room([at('disconnect', { isKeyed: true })])],
    ['S7', ['Lock-out valve'], room([at('disconnect', { isKeyed: true, isSupervised: true })], 60, { lockOutValve: 'unknown' })],
    ['L10', ['Zone'], room([at('detector', { zone: '' }), { ...at('detector', { zone: '1' }), x: 1 }])],
  ])('%s leads to %j', (rule, labels, plan) => {
    expect(leadsTo(rule, plan)).toEqual(labels);
  });
});

describe('what is not said of a circuit', () => {
  const panel = { isListed: true, isCompatible: true, listing: 'x' };
  test.each<[string, readonly string[], Partial<Release>]>([
    ['L5', ['Wired'], { devices: [{ id: 'd', name: 'Horn', kind: 'other', distance_m: 1, current_A: 1, leastVoltage_V: 1, wiring: 'tapped' }] }],
    ['L5', ['End-of-line part'], { endOfLine: 'unknown' }],
    ['L7', ['Taking the actuator off shows at the panel'], { isActuatorWatched: null }],
    ['L8', ['Listed for releasing'], { panel: { ...panel, isListed: false } }],
    ['L8', ['Listed with this solenoid'], { panel: { ...panel, isCompatible: null } }],
    ['L8', ['Which listing says so'], { panel: { ...panel, listing: '' } }],
    ['L9', ['Battery', 'Current while it stands by', 'Current in alarm'], { battery: null }],
  ])('%s leads to %j', (rule, labels, given) => {
    expect(leadsTo(rule, withRelease(given))).toEqual(labels);
  });

  test('L9 leads to the times, then to a battery that is too small', () => {
    expect(leadsTo('L9', withRelease({}))).toEqual(['Battery stands by for, hours', 'Then sounds the alarm for, minutes']);
    expect(leadsTo('L9', withRelease({ battery: { capacity_Ah: 1, standby_A: 1, alarm_A: 1 } }, { basis: { batteryStandby_s: 86_400, batteryAlarm_s: 300 } }))).toEqual(['Battery']);
  });
});

describe('a battery typed figure by figure', () => {
  test('begins with the first and goes with the last', () => {
    const first = batteryWith(null, 'standby_A', 0.3);
    expect(first).toEqual({ capacity_Ah: 0, standby_A: 0.3, alarm_A: 0 });
    expect(batteryFigure(first, 'capacity_Ah')).toBeNull();
    expect(batteryFigure(first, 'standby_A')).toBe(0.3);
    expect(batteryFigure(null, 'alarm_A')).toBeNull();
    expect(batteryWith(first, 'capacity_Ah', 18)).toEqual({ capacity_Ah: 18, standby_A: 0.3, alarm_A: 0 });
    expect(batteryWith(first, 'standby_A', null)).toBeNull();
  });
});
