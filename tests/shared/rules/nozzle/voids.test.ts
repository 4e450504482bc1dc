import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Enclosure } from '#shared/model/plan';
import { n07FreeJet } from '#shared/rules/nozzle/n07-free-jet';
import { n16FloorVoid } from '#shared/rules/nozzle/n16-floor-void';
import { n17CeilingVoid } from '#shared/rules/nozzle/n17-ceiling-void';
import { n18VoidNozzle } from '#shared/rules/nozzle/n18-void-nozzle';
import { expectCured } from '../../../support/cure-check.ts';
import { type LayoutSpec, at3, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

type Void = NonNullable<Enclosure['underFloor']>;
const signed = { reason: 'No cables in it', by: 'A. Reader', date: '2026-11-30' };
const protectedVoid: Void = { depth_m: 0.4, isProtected: true, exclusion: null };

describe.each([
  ['N16', n16FloorVoid, (drawn: Void): Partial<Enclosure> => ({ underFloor: drawn }), -0.2],
  ['N17', n17CeilingVoid, (drawn: Void): Partial<Enclosure> => ({ ceilingVoid: drawn }), 2.9],
] as const)('%s', (_, rule, enclosure, z) => {
  const spec = (drawn: Void, hasNozzle: boolean): LayoutSpec => ({ enclosure: enclosure(drawn), nozzles: [{ at: at3(3, 2, 2.5) }, ...(hasNozzle ? [{ at: at3(3, 2, z) }] : [])] });
  test.each([
    ['protected with a nozzle of its own', spec(protectedVoid, true), 'ok'],
    ['protected without one', spec(protectedVoid, false), 'stop'],
    ['left out, and nobody signed', spec({ ...protectedVoid, isProtected: false }, false), 'stop'],
    ['left out, signed', spec({ ...protectedVoid, isProtected: false, exclusion: signed }, false), 'ok'],
    ['left out without a reason', spec({ ...protectedVoid, isProtected: false, exclusion: { ...signed, reason: ' ' } }, false), 'stop'],
    ['left out without a name', spec({ ...protectedVoid, isProtected: false, exclusion: { ...signed, by: '' } }, false), 'stop'],
    ['left out without a date', spec({ ...protectedVoid, isProtected: false, exclusion: { ...signed, date: '' } }, false), 'stop'],
    ['left out, although a nozzle blows into it', spec({ ...protectedVoid, isProtected: false, exclusion: signed }, true), 'stop'],
  ])('%s', (__, layoutSpec, verdict) => {
    const plan = layout(layoutSpec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing))).toMatchObject({ verdict, subject: { kind: 'enclosure', id: 'e1' } });
  });

  test('a room without such a void is not asked; the void shows as an area', () => {
    expect(check(rule, layout({ nozzles: [{ at: at3(3, 2, 2.5) }] }))).toEqual([]);
    expect(checkOne(rule, layout(spec(protectedVoid, false))).place?.areas).toHaveLength(1);
  });
});

describe('N17', () => {
  test('over tiles there is always a void: while none is drawn it is not checked', () => {
    expect(checkOne(n17CeilingVoid, layout({ nozzles: [{ at: at3(3, 2, 2.5) }], enclosure: { ceiling: { make: 'tiles', clipped_m: null } } })).verdict).toBe('not-checked');
  });
});

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const limits = { voidDepth_m: 0.2, voidFreeJet_m: 0.3, jetSpread_rad: rad(12) };
/** A nozzle 0.15 m under the floor, and a tray east of it. */
const tray = (from_m: number, more: LayoutSpec = {}, top_m = -0.05): LayoutSpec => ({
  room: rectangle(8, 5),
  enclosure: { underFloor: protectedVoid },
  nozzles: [{ at: at3(4, 2.5, -0.15), holes_rad: [0, Math.PI] }],
  obstructions: [{ kind: 'tray', footprint: rectangle(0.3, 3, planPoint(4 + from_m, 1)), bottom_m: -0.38, top_m }],
  limits,
  ...more,
});

describe('N18', () => {
  test.each([
    ['a tray just too near', tray(0.299), 'warn'],
    ['on the limit', tray(0.3), 'ok'],
    ['a tray below the orifice, into which the jet spreads', tray(0.1, {}, -0.2), 'warn'],
    ['one that it only reaches later', tray(0.1, {}, -0.15 - 0.3 * Math.tan(rad(12)) - 0.001), 'ok'],
    ['a void just too low', tray(3, { enclosure: { underFloor: { ...protectedVoid, depth_m: 0.199 } }, nozzles: [{ at: at3(4, 2.5, -0.1) }] }), 'warn'],
    ['a void of the least depth', tray(3, { enclosure: { underFloor: { ...protectedVoid, depth_m: 0.2 } }, nozzles: [{ at: at3(4, 2.5, -0.1) }], obstructions: [] }), 'ok'],
    ['no holes', tray(3, { nozzles: [{ at: at3(4, 2.5, -0.15), holes_rad: [] }] }), 'not-checked'],
    ['blank depth', tray(3, { limits: { ...limits, voidDepth_m: null } }), 'not-checked'],
    ['blank free jet', tray(3, { limits: { ...limits, voidFreeJet_m: null } }), 'not-checked'],
    ['blank spread', tray(3, { limits: { ...limits, jetSpread_rad: null } }), 'not-checked'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(n18VoidNozzle, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('has its own free jet, so that the one of rooms is not asked of it', () => {
    expect(check(n07FreeJet, layout(tray(0.5)))).toEqual([]);
    expect(checkOne(n18VoidNozzle, layout(tray(0.5)))).toMatchObject({ verdict: 'ok', measured: expect.closeTo(0.5, 9) });
    expect(check(n18VoidNozzle, layout({ nozzles: [{ at: at3(3, 2, 2.5) }] }))).toEqual([]);
  });

  test('shows the ray to the tray', () => {
    const finding = checkOne(n18VoidNozzle, layout(tray(0.2)));
    expect(finding.text).toContain('Thing 1');
    expect(finding.place?.rays).toEqual([{ from: { x: 4, y: 2.5 }, to: { x: expect.closeTo(4.2, 9), y: expect.closeTo(2.5, 9) } }]);
  });

  test.each(PLACINGS)('its cure turns it off the tray and stops nothing new: %o', (placing) => {
    expectCured(n18VoidNozzle, placedPlan(layout(tray(0.2)), placing), 'turn-nozzle');
  });
});
