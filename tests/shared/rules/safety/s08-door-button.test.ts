import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { s08DoorButton as rule } from '#shared/rules/safety/s08-door-button';
import type { DeviceSpec } from '../../../support/devices.ts';
import { doorRoom } from '../../../support/door-room.ts';
import { anyPlacing, check, checkOne } from '../../../support/layout.ts';

const RELEASE: DeviceSpec = { kind: 'manual-release', x: 3.8, y: 0, height_m: 1.2 };
const button = (x: number, height_m: number | null = 1.2): DeviceSpec => ({ kind: 'door-button', x, y: 0, height_m });

describe('S8', () => {
  // 24 in.
  test.each<[string, readonly DeviceSpec[], string]>([
    ['at the limit', [button(3.8 + 0.6096)], 'ok'],
    ['inside', [button(5)], 'ok'],
    ['outside', [button(3.8 + 0.6095)], 'warn'],
    ['none drawn', [], 'ok'],
    ['the nearest counts', [button(5), button(4)], 'warn'],
    ['over one another', [button(3.8, 0.5)], 'ok'],
    ['over one another, but a height is not known', [button(3.8, null)], 'warn'],
  ])('%s', (_, buttons, verdict) => {
    expect(checkOne(rule, doorRoom([RELEASE, ...buttons])).verdict).toBe(verdict);
  });

  test('gives both, and what to do', () => {
    expect(checkOne(rule, doorRoom([RELEASE, button(4)]))).toMatchObject({
      measured: expect.closeTo(0.2, 9),
      limit: 0.6096,
      text: 'Stands only 200 mm from door button “D2”; somebody may take one for the other. Keep them 610 mm apart.',
      place: { dimension: { a: { x: 3.8, y: 0 }, b: { x: 4, y: 0 } } },
      cure: { kind: 'advice' },
    });
  });

  test('without a manual release there is nothing to ask', () => {
    expect(check(rule, doorRoom([button(3)]))).toEqual([]);
  });

  test('turning and mirroring changes nothing', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, doorRoom([RELEASE, button(4.4)], { placing })).verdict).toBe('warn');
        expect(checkOne(rule, doorRoom([RELEASE, button(4.42)], { placing })).verdict).toBe('ok');
      }),
      { numRuns: 20 },
    );
  });
});
