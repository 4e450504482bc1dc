import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { l10TwoDetectors as rule } from '#shared/rules/release/l10-two-detectors';
import { type DeviceSpec, devicesFrom } from '../../../support/devices.ts';
import { type LayoutSpec, anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const detector = (x: number, zone: string, space = 'room'): DeviceSpec => ({ kind: 'detector', x, y: 2, zone, space, senses: 'smoke' });
const SERVED: LayoutSpec = { nozzles: [{ at: at3(3, 2, 2.5) }] };
const asked = (devices: readonly DeviceSpec[]) => checkOne(rule, layout({ ...SERVED, level: { devices: devicesFrom(devices) } }));

describe('L10', () => {
  test.each<[string, readonly DeviceSpec[], string]>([
    ['two of two zones', [detector(2, '1'), detector(4, '2')], 'ok'],
    ['three of two zones', [detector(2, '1'), detector(3, '1'), detector(4, '2')], 'ok'],
    ['none', [], 'stop'],
    ['one', [detector(2, '1')], 'stop'],
    ['one of which the zone is not known', [detector(2, '')], 'stop'],
    ['two of one zone', [detector(2, 'A'), detector(4, ' a ')], 'stop'],
    ['a zone not known', [detector(2, '1'), detector(4, ' ')], 'not-checked'],
    ['two zones known, a third detector not', [detector(2, '1'), detector(4, '2'), detector(5, '')], 'ok'],
    ['one outside the room', [detector(2, '1'), detector(7, '2')], 'stop'],
    ['one in the void under it', [detector(2, '1'), detector(4, '2', 'under-floor')], 'stop'],
  ])('%s', (_, devices, verdict) => {
    expect(asked(devices).verdict).toBe(verdict);
  });

  test('shows its detectors', () => {
    expect(asked([detector(2, '1'), detector(4, '2')])).toMatchObject({ measured: 2, limit: 2, margin: 0, text: '2 detectors of 2 zones watch it.', place: { at: [{ x: 2, y: 2 }, { x: 4, y: 2 }] }, inputs: [{ label: 'D1', value: 'smoke, zone 1' }, { label: 'D2', value: 'smoke, zone 2' }] });
    expect(asked([detector(2, '1'), detector(4, '1')]).text).toBe('Its 2 detectors are all of one zone: one false alarm releases the agent. Put one on another zone.');
  });

  test('asks each protected void as well', () => {
    const devices = devicesFrom([detector(2, '1'), detector(4, '2'), detector(2, '1', 'under-floor')]);
    const findings = (isProtected: boolean) => check(rule, layout({ ...SERVED, underFloor: { depth_m: 0.4, isProtected, exclusion: null }, level: { devices } }));
    expect(findings(true).map(({ name, verdict }) => [name, verdict])).toEqual([['Room', 'ok'], ['Room, under floor', 'stop']]);
    expect(findings(false)).toHaveLength(1);
  });

  test('a room that no nozzle serves is not asked', () => {
    expect(check(rule, layout({ level: { devices: devicesFrom([detector(2, '1')]) } }))).toEqual([]);
  });

  test('turning and mirroring changes nothing', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const laid = (zones: readonly [string, string]) => placedLayout({ ...SERVED, level: { devices: devicesFrom([detector(0.01, zones[0]), detector(5.99, zones[1])], placing) } }, placing);
        expect(checkOne(rule, laid(['1', '2'])).verdict).toBe('ok');
        expect(checkOne(rule, laid(['1', '1'])).verdict).toBe('stop');
      }),
      { numRuns: 15 },
    );
  });
});
