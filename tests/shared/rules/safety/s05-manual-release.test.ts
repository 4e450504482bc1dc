import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '#shared/model/plan';
import { s05ManualRelease as rule } from '#shared/rules/safety/s05-manual-release';
import type { DeviceSpec } from '../../../support/devices.ts';
import { doorRoom } from '../../../support/door-room.ts';
import { anyPlacing, check } from '../../../support/layout.ts';

const FOOT_m = 0.3048;
const GOOD: DeviceSpec = { kind: 'manual-release', x: 3.8, y: 0, height_m: 1.1, isGuarded: true };
const found = (plan: Plan, name: string) => check(rule, plan).find((finding) => finding.name === name);
const door = (devices: readonly DeviceSpec[]) => found(doorRoom(devices), 'Room 1, Door 1');
const release = (change: Partial<DeviceSpec>) => found(doorRoom([{ ...GOOD, ...change }]), 'D1');

describe('S5 at the door', () => {
  test.each<[string, readonly DeviceSpec[], string]>([
    ['none', [], 'stop'],
    ['at the limit', [{ ...GOOD, x: 3.5 + 5 * FOOT_m }], 'ok'],
    ['inside', [GOOD], 'ok'],
    ['outside', [{ ...GOOD, x: 3.5 + 5 * FOOT_m + 0.001 }], 'stop'],
    ['beyond the door, in reach', [{ ...GOOD, y: -1 }], 'ok'],
    ['beyond the door, out of reach', [{ ...GOOD, x: 3, y: -2 }], 'stop'],
  ])('%s', (_, devices, verdict) => {
    expect(door(devices)?.verdict).toBe(verdict);
  });

  test('gives the distance and what to do', () => {
    expect(door([{ ...GOOD, x: 5.9, y: 2 }])).toMatchObject({
      measured: expect.closeTo(Math.hypot(2.4, 2), 9),
      limit: 5 * FOOT_m,
      text: 'The nearest manual release, “D1”, stands 3.124 m from this door; it may be 1.524 m away. Put one beside the door.',
      place: { dimension: { b: { x: 5.9, y: 2 } } },
    });
  });

  test('without a door it is not checked; an unserved room is not asked', () => {
    expect(check(rule, doorRoom([], { hasDoor: false }))).toMatchObject([{ verdict: 'not-checked', name: 'Room 1' }]);
    expect(check(rule, doorRoom([GOOD], { isServed: false }))).toEqual([]);
  });

  test('turning and mirroring changes nothing', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(check(rule, doorRoom([{ ...GOOD, y: 0.05 }], { placing })).map(({ verdict }) => verdict)).toEqual(['ok', 'ok']);
        expect(check(rule, doorRoom([{ ...GOOD, x: 5.9, y: 0.05 }], { placing })).map(({ verdict }) => verdict)).toEqual(['stop', 'ok']);
      }),
      { numRuns: 20 },
    );
  });
});

describe('S5 of the release', () => {
  // 48 in.
  test.each<[string, Partial<DeviceSpec>, string]>([
    ['at the limit', { height_m: 1.2192 }, 'ok'],
    ['inside', { height_m: 1 }, 'ok'],
    ['outside', { height_m: 1.2193 }, 'stop'],
    ['height not known', { height_m: null }, 'not-checked'],
    ['guard not known', { isGuarded: null }, 'not-checked'],
    ['no guard', { isGuarded: false }, 'stop'],
    ['no guard, height not known', { isGuarded: false, height_m: null }, 'stop'],
    ['too high, guard not known', { isGuarded: null, height_m: 1.5 }, 'stop'],
  ])('%s', (_, change, verdict) => {
    expect(release(change)?.verdict).toBe(verdict);
  });

  test('says both', () => {
    expect(release({})).toMatchObject({ measured: 1.1, limit: 1.2192, text: 'Its handle is 1.100 m above the floor; 1.219 m is allowed. It is guarded against being worked by accident.', inputs: [{ label: 'Guarded', value: 'yes' }] });
  });
});
