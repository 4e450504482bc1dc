import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Enclosure } from '#shared/model/plan';
import { s03AlarmReach as rule } from '#shared/rules/safety/s03-alarm-reach';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { type DeviceSpec, devicesFrom } from '../../../support/devices.ts';
import { type LayoutSpec, anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const EAR_m = 1.524;
const SERVED: LayoutSpec = { nozzles: [{ at: at3(3, 2, 2.5) }] };
/** In the middle of the south wall of the room of 6 by 4 m; 20 ft of light reach all of it. */
const GOOD: DeviceSpec = { kind: 'sounder', x: 3, y: 0, height_m: EAR_m, facing_rad: Math.PI / 2, sound_dBA: 90, light_cd: 15 };
const room = (ambientSound_dBA: number | null, change: Partial<Enclosure> = {}): Partial<Enclosure> => ({ ambientSound_dBA, occupancy: 'normally-occupied', ...change });
const asked = (devices: readonly DeviceSpec[], ambient_dBA: number | null = 65, more: LayoutSpec = {}) => checkOne(rule, layout({ ...SERVED, enclosure: room(ambient_dBA), level: { devices: devicesFrom(devices) }, ...more }));

/** By hand: the far corners are 5 m off: 90 − 20·lg(5/3) = 85.563 dB; 15 dB over the noise is kept up to 70.563 dB. */
const FAINTEST_dBA = 90 - 20 * Math.log10(5 / 3);

describe('S3', () => {
  test.each<[string, readonly DeviceSpec[], number | null, string]>([
    ['at the limit', [GOOD], FAINTEST_dBA - 15, 'ok'],
    ['inside', [GOOD], 60, 'ok'],
    ['outside', [GOOD], FAINTEST_dBA - 14.99, 'stop'],
    ['no sounder', [], 65, 'stop'],
    ['none that is heard', [{ ...GOOD, isHeard: false }], 65, 'stop'],
    ['none that is seen', [{ ...GOOD, isSeen: false }], 65, 'stop'],
    ['one outside the room does not count', [{ ...GOOD, y: -0.5 }], 65, 'stop'],
    ['usual noise not known', [GOOD], null, 'not-checked'],
    ['loudness not known', [{ ...GOOD, sound_dBA: null }], 65, 'not-checked'],
    ['height not known', [{ ...GOOD, height_m: null }], 65, 'not-checked'],
    ['light not known', [{ ...GOOD, light_cd: null }], 65, 'not-checked'],
    ['another light that is known reaches all', [{ ...GOOD, light_cd: null }, GOOD], 65, 'ok'],
    ['another sounder whose loudness is not known', [{ ...GOOD, sound_dBA: null }, GOOD], 65, 'not-checked'],
    ['light too weak', [{ ...GOOD, light_cd: 14 }], 65, 'stop'],
    ['what is not known hides no fault of the other', [{ ...GOOD, sound_dBA: null, isSeen: false }], 65, 'stop'],
    ['nor does the noise', [{ ...GOOD, light_cd: 1 }], null, 'stop'],
  ])('%s', (_, devices, ambient_dBA, verdict) => {
    expect(asked(devices, ambient_dBA).verdict).toBe(verdict);
  });

  test('gives the faintest place with figures and inputs', () => {
    expect(asked([GOOD], 60)).toMatchObject({
      measure: 'sound',
      measured: expect.closeTo(FAINTEST_dBA, 6),
      limit: 75,
      margin: expect.closeTo(FAINTEST_dBA - 75, 6),
      text: 'The alarm comes to 85.6 dB (A) where it is faintest; 75.0 dB is enough. Its alarm lights reach all of its floor.',
      inputs: [{ label: 'Usual noise', value: '60.0 dB (A)' }, { label: 'D1', value: '90.0 dB (A) at 3 m, 15 cd' }],
    });
    expect([0, 6]).toContain(asked([GOOD], 60).place?.at[0]?.x);
  });

  // By hand: with 65 dB of noise 110 dB are reached by 109.99986 dB, 1 m from a sounder of 100.4573 dB at 3 m.
  test.each([
    ['at the limit', 100.4572, 'ok'],
    ['outside', 100.4575, 'stop'],
  ])('too loud: %s', (_, sound_dBA, verdict) => {
    expect(asked([{ ...GOOD, sound_dBA }])).toMatchObject({ verdict });
  });
  test('says that it harms the ear', () => {
    expect(asked([{ ...GOOD, sound_dBA: 105 }])).toMatchObject({ limit: 110, text: expect.stringMatching(/^Noise and alarm together come to 114\.5 dB \(A\) where they are loudest; more than 110\.0 dB harms the ear/), place: { at: [{ x: 3, y: 0 }] } });
  });

  test('shows the floor that is not reached', () => {
    const faint = asked([{ ...GOOD, sound_dBA: 80 }], 62);
    expect(faint).toMatchObject({ verdict: 'stop', text: expect.stringContaining('it needs 77.0 dB, 15 dB over the usual noise. Add a sounder near the marked place.'), cure: { kind: 'advice' } });
    expect(faint.place?.areas?.length).toBeGreaterThan(0);
    const dark = asked([{ ...GOOD, x: 0, y: 2, facing_rad: 0, light_cd: 15 }], 50);
    expect(dark.verdict).toBe('ok');
    expect(asked([{ ...GOOD, light_cd: 1 }], 50)).toMatchObject({ measure: 'area', measured: expect.closeTo(24, 6), place: { areas: [[expect.anything()]] } });
  });

  test('where a part is walled off it says so', () => {
    const obstructions = [{ kind: 'partition' as const, footprint: rectangle(0.1, 4, planPoint(4, 0)), bottom_m: 0, top_m: 2.7 }];
    expect(asked([GOOD], 60, { obstructions })).toMatchObject({ verdict: 'stop', text: expect.stringContaining('A part of it is walled off from every sounder') });
  });

  test('where it is too noisy for any alarm it says so', () => {
    expect(asked([GOOD], 97)).toMatchObject({ verdict: 'stop', text: expect.stringContaining('More than 110.0 dB is not allowed') });
  });

  test('is asked of served rooms in which somebody can be', () => {
    const level = { devices: devicesFrom([GOOD]) };
    expect(check(rule, layout({ enclosure: room(65), level }))).toEqual([]);
    expect(check(rule, layout({ ...SERVED, enclosure: room(65, { occupancy: 'unoccupiable' }), level }))).toEqual([]);
    expect(check(rule, layout({ ...SERVED, enclosure: room(60, { occupancy: 'unknown' }), level }))).toHaveLength(1);
  });

  test('turning and mirroring changes no verdict and no figure', () => {
    const near = (ambient_dBA: number) => fc.property(anyPlacing, (placing) => {
      const found = checkOne(rule, placedLayout({ ...SERVED, enclosure: room(ambient_dBA), level: { devices: devicesFrom([{ ...GOOD, y: 0.01 }], placing) } }, placing));
      expect(found.verdict).toBe(ambient_dBA > 71 ? 'stop' : 'ok');
      expect(found.measured).toBeCloseTo(90 - 20 * Math.log10(Math.hypot(3, 3.99) / 3), 4);
    });
    fc.assert(near(69), { numRuns: 15 });
    fc.assert(near(72), { numRuns: 8 });
  });
});
