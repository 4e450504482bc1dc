import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { newDevice } from '#shared/model/new-device';
import { n15AboveEquipment as rule } from '#shared/rules/nozzle/n15-above-equipment';
import { expectCured } from '../../../support/cure-check.ts';
import { type LayoutSpec, at3, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
// 12 in: common practice.
const CLEAR_m = 0.3048;
const limits = { freeJet_m: 0.9, jetSpread_rad: rad(12) };
/** A nozzle 2.5 m up in a room 3 m high, over a cabinet as high as that. */
const over = (top_m: number, more: LayoutSpec = {}): LayoutSpec => ({
  room: rectangle(10, 6),
  height_m: 2.7,
  nozzles: [{ at: at3(5, 3, 2.5), holes_rad: [0, Math.PI] }],
  obstructions: [{ kind: 'cabinet', footprint: rectangle(0.8, 0.8, planPoint(4.6, 2.6)), bottom_m: 0, top_m }],
  limits: { ...limits, nozzleToCeiling_m: 0.3048, nozzleReach_m: 20, nozzleArea_m2: 400 },
  footprint: { shape: 'circle', radius_m: 12, source: 'test' },
  ...more,
});
const intake = (x: number, y: number, height_m: number | null): LayoutSpec['level'] => ({ devices: { d1: { ...newDevice('air-intake', 'd1', 'Intake 1', planPoint(x, y)), height_m } } });

describe('N15', () => {
  test.each([
    ['just too near', over(2.5 - CLEAR_m + 0.001), 'warn'],
    ['on the limit', over(2.5 - CLEAR_m), 'ok'],
    ['open floor', over(0, { obstructions: [] }), 'ok'],
    ['beside the nozzle', over(2.4, { obstructions: [{ kind: 'cabinet', footprint: rectangle(0.8, 0.8, planPoint(5.001, 2.6)), bottom_m: 0, top_m: 2.4 }] }), 'ok'],
    ['a work place is nothing to hang above', over(2.4, { obstructions: [{ kind: 'work-place', footprint: rectangle(0.8, 0.8, planPoint(4.6, 2.6)), bottom_m: 0, top_m: 2.4 }] }), 'ok'],
    // The cone of 12° is 0.3188 m wide either way after 1.5 m.
    ['an intake in the jet', over(0, { obstructions: [], level: intake(6.5, 3, 2.2) }), 'warn'],
    ['an intake just under the jet', over(0, { obstructions: [], level: intake(6.5, 3, 2.5 - 1.5 * Math.tan(rad(12)) - 0.001) }), 'ok'],
    ['an intake just in it', over(0, { obstructions: [], level: intake(6.5, 3, 2.5 - 1.5 * Math.tan(rad(12))) }), 'warn'],
    ['an intake of unknown height near the jet', over(0, { obstructions: [], level: intake(6.5, 3, null) }), 'not-checked'],
    ['one that no height brings into it', over(0, { obstructions: [], level: intake(5, 5, null) }), 'ok'],
    ['beyond the end of the jet', over(0, { obstructions: [], level: intake(8.7, 3, 2.5) }), 'ok'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('the highest thing under it counts, and shows with its height', () => {
    const finding = checkOne(rule, layout(over(2.3, { obstructions: [1.2, 2.3, 0.9].map((top_m) => ({ kind: 'rack' as const, footprint: rectangle(1, 1, planPoint(4.5, 2.5)), bottom_m: 0, top_m })) })));
    expect(finding).toMatchObject({ measured: expect.closeTo(0.2, 9), margin: expect.closeTo(0.2 - CLEAR_m, 9), place: { heights: [{ z: 2.5 }, { z: 2.3 }] } });
    expect(finding.text).toContain('Thing 2');
  });

  test.each(['freeJet_m', 'jetSpread_rad'] as const)('while %s is blank a room with an air intake is not checked, one without is', (key) => {
    expect(checkOne(rule, layout(over(1, { level: intake(2, 5, 1), limits: { [key]: null } }))).verdict).toBe('not-checked');
    expect(checkOne(rule, layout(over(1, { limits: { [key]: null } }))).verdict).toBe('ok');
  });

  test.each(PLACINGS)('its cure raises it, moves it off or turns it, and stops nothing new: %o', (placing) => {
    const raised = expectCured(rule, placedPlan(layout(over(2.3)), placing), 'move-nozzle');
    expect(checkOne(rule, raised).measured).toBeCloseTo(CLEAR_m, 6);
    // Nothing is left to raise: it goes beside the cabinet.
    const off = expectCured(rule, placedPlan(layout(over(2.45)), placing), 'move-nozzle');
    expect(checkOne(rule, off).text).toContain('open floor');
    expectCured(rule, placedPlan(layout(over(0, { obstructions: [], level: intake(6.5, 3, 2.2) })), placing), 'turn-nozzle');
  });
});
