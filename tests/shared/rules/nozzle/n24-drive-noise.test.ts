import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Obstruction } from '#shared/model/plan';
import { n24DriveNoise as rule } from '#shared/rules/nozzle/n24-drive-noise';
import { type LayoutSpec, at3, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

/** A rack whose near top edge is 2 m east of the nozzle, at its height. */
const drives = (power_dB: number | null, thing: Partial<Obstruction> = {}, more: LayoutSpec = {}): LayoutSpec => ({
  room: rectangle(10, 6),
  nozzles: [{ at: at3(3, 3, 2.5) }],
  obstructions: [{ kind: 'rack', footprint: rectangle(1, 1, planPoint(5, 2.5)), bottom_m: 0, top_m: 2.6, hasDrives: true, ...thing }],
  limits: { soundPower_dB: power_dB },
  ...more,
});
/** By hand: S = 2·60 + 32·2.7 = 206.4 m², R = 206.4·0.1/0.9 = 22.933 m²; 10·lg(1/(4π·4) + 4/22.933) = −7.1150 dB. */
const ROOM_dB = 10 * Math.log10(1 / (16 * Math.PI) + 4 / ((206.4 * 0.1) / 0.9));

describe('N24', () => {
  test('what the room adds is as it was worked by hand', () => expect(ROOM_dB).toBeCloseTo(-7.115, 3));

  test.each([
    ['just quiet enough', drives(110 - ROOM_dB - 0.001), 'ok'],
    ['on the limit, which is to be kept below', drives(110 - ROOM_dB), 'warn'],
    ['too loud', drives(118), 'warn'],
    ['a rack of which nobody has said', drives(118, { hasDrives: null }), 'not-checked'],
    ['blank sound power', drives(null), 'not-checked'],
    ['unknown height of the room', drives(112, {}, { height_m: null }), 'not-checked'],
    ['too loud even in the open', drives(130, {}, { height_m: null }), 'warn'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('two nozzles are heard together, each from its distance', () => {
    const finding = checkOne(rule, layout(drives(100, {}, { nozzles: [{ at: at3(3, 3, 2.5) }, { at: at3(9, 3, 2.5) }] })));
    // Independent of the code under test: energies of both straight ways and of both in the room.
    const sum = 10 ** 10 * (1 / (4 * Math.PI * 4) + 1 / (4 * Math.PI * 9) + (2 * 4) / ((206.4 * 0.1) / 0.9));
    expect(finding.measured).toBeCloseTo(10 * Math.log10(sum), 9);
    expect(finding.inputs).toHaveLength(4);
    expect(finding.place?.dimension).toMatchObject({ a: { x: 3, y: 3 }, b: { x: 5, y: 3 } });
  });

  test('without drives, or without a nozzle, nothing is asked; all unknown racks of a room are one finding', () => {
    expect(check(rule, layout(drives(118, { hasDrives: false })))).toEqual([]);
    expect(check(rule, layout(drives(118, {}, { nozzles: [] })))).toEqual([]);
    expect(check(rule, layout(drives(118, { kind: 'column', hasDrives: null })))).toEqual([]);
    const racks = [1, 3, 5, 7].map((x) => ({ kind: 'rack' as const, footprint: rectangle(1, 1, planPoint(x, 1)), bottom_m: 0, top_m: 2 }));
    expect(checkOne(rule, layout(drives(118, {}, { obstructions: racks }))).text).toContain('Thing 1, Thing 2 and 2 others');
  });
});
