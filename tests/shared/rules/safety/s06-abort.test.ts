import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { s06Abort as rule } from '#shared/rules/safety/s06-abort';
import type { DeviceSpec } from '../../../support/devices.ts';
import { doorRoom } from '../../../support/door-room.ts';
import { anyPlacing, check, checkOne } from '../../../support/layout.ts';

const GOOD: DeviceSpec = { kind: 'abort', x: 3.8, y: 0.05, isHeld: true, yieldsToRelease: true };
const asked = (change: Partial<DeviceSpec>) => checkOne(rule, doorRoom([{ ...GOOD, ...change }]));

describe('S6', () => {
  test.each<[string, Partial<DeviceSpec>, string]>([
    ['by the door', {}, 'ok'],
    ['at the limit', { x: 3, y: 1.524 }, 'ok'],
    ['too far from it', { x: 3, y: 1.525 }, 'stop'],
    ['outside the room', { y: -0.1 }, 'stop'],
    ['goes on by itself', { isHeld: false }, 'stop'],
    ['holds back the manual release', { yieldsToRelease: false }, 'stop'],
    ['nobody knows whether it is held', { isHeld: null }, 'not-checked'],
    ['nobody knows which goes first', { yieldsToRelease: null }, 'not-checked'],
    ['what is not known hides no fault', { isHeld: null, y: 3 }, 'stop'],
  ])('%s', (_, change, verdict) => {
    expect(asked(change).verdict).toBe(verdict);
  });

  test('says what it is like', () => {
    expect(asked({})).toMatchObject({
      limit: 1.524,
      text: 'It stands inside, 304 mm from the nearest door. It works only while it is held. The manual release goes before it.',
      inputs: [{ label: 'Works only while held', value: 'yes' }, { label: 'Manual release goes before it', value: 'yes' }],
      place: { dimension: { a: { x: 3.5, y: 0 }, b: { x: 3.8, y: 0.05 } } },
    });
  });

  test('none is no fault, and it says so', () => {
    expect(checkOne(rule, doorRoom([]))).toMatchObject({ verdict: 'ok', text: expect.stringContaining('None is needed where the authority does not ask for one') });
  });

  test('without a door its place is not checked; an unserved room is not asked', () => {
    expect(checkOne(rule, doorRoom([GOOD], { hasDoor: false })).verdict).toBe('not-checked');
    expect(check(rule, doorRoom([GOOD], { isServed: false }))).toEqual([]);
  });

  test('turning and mirroring changes nothing', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, doorRoom([GOOD], { placing })).verdict).toBe('ok');
        expect(checkOne(rule, doorRoom([{ ...GOOD, y: -0.05 }], { placing })).verdict).toBe('stop');
      }),
      { numRuns: 20 },
    );
  });
});
