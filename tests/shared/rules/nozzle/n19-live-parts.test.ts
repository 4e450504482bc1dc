import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Obstruction } from '#shared/model/plan';
import { n19LiveParts as rule } from '#shared/rules/nozzle/n19-live-parts';
import { expectCured } from '../../../support/cure-check.ts';
import { type LayoutSpec, at3, check, checkOne, layout } from '../../../support/layout.ts';
import { PLACINGS, placedPlan } from '../../../support/placed-plan.ts';

const INCH_m = 0.0254;
/** Half the outside of NPS 3/4, 1.050 in (ASME B36.10M). */
const HALF_m = (1.05 * INCH_m) / 2;
/** A pipe 2.5 m up along y = 2, and a bus bar whose near side is `off_m` north of its outside. */
const bar = (off_m: number, thing: Partial<Obstruction> = {}, more: LayoutSpec = {}): LayoutSpec => ({
  cylinders: 0,
  runs: [{ places: [at3(1, 2, 2.5), at3(5, 2, 2.5)] }],
  obstructions: [{ kind: 'live-part', footprint: rectangle(1, 0.1, planPoint(2.5, 2 + HALF_m + off_m)), bottom_m: 2.3, top_m: 2.6, voltage_V: 240, ...thing }],
  ...more,
});

describe('N19', () => {
  test.each([
    ['240 V, just too near', bar(7 * INCH_m - 1e-4), 'stop'],
    ['240 V, on 7 in', bar(7 * INCH_m), 'ok'],
    ['7,967 V to earth are 13.8 kV', bar(7 * INCH_m, { voltage_V: 7967 }), 'ok'],
    ['a little more takes 10 in', bar(7 * INCH_m, { voltage_V: 7968 }), 'stop'],
    ['and keeps them', bar(10 * INCH_m, { voltage_V: 13_279 }), 'ok'],
    ['touching', bar(0), 'stop'],
    ['unknown voltage, even far away', bar(1, { voltage_V: null }), 'not-checked'],
    ['above the table', bar(1, { voltage_V: 500_000 }), 'not-checked'],
    ['apart by height alone', bar(0, { footprint: rectangle(1, 1, planPoint(2.5, 1.5)), bottom_m: 2.5 + HALF_m + 7 * INCH_m, top_m: 3 }), 'ok'],
    ['too near by height alone', bar(0, { footprint: rectangle(1, 1, planPoint(2.5, 1.5)), bottom_m: 2.5 + HALF_m + 7 * INCH_m - 1e-4, top_m: 3 }), 'stop'],
  ])('%s', (_, spec, verdict) => {
    const plan = layout(spec);
    for (const placing of PLACINGS) expect(checkOne(rule, placedPlan(plan, placing)).verdict).toBe(verdict);
  });

  test('measures in space to the nearest part, and shows the way', () => {
    const finding = checkOne(rule, layout(bar(0.1)));
    expect(finding).toMatchObject({ subject: { kind: 'obstruction', id: 'o1' }, name: 'Thing 1 and Network', measured: expect.closeTo(0.1, 9), limit: expect.closeTo(7 * INCH_m, 9) });
    const { a, b } = finding.place?.dimension ?? {};
    expect(a?.y).toBeCloseTo(2, 6);
    expect(b?.y).toBeCloseTo(2 + HALF_m + 0.1, 6);
    expect(finding.inputs?.map(({ value }) => value)).toEqual(['240.0 V', 'the 3/4 in pipe']);
  });

  test('cylinders and nozzles count; an electrical panel and other things do not', () => {
    const nozzle = [{ at: at3(3, 2, 2.5) }];
    expect(checkOne(rule, layout(bar(0.1 + HALF_m, {}, { runs: [], nozzles: nozzle }))).text).toContain('nozzle N1');
    const beside = { footprint: rectangle(0.2, 0.2, planPoint(0.4, 0.1)), bottom_m: 0, top_m: 2 };
    expect(checkOne(rule, layout(bar(0, beside, { cylinders: 1 }))).text).toContain('cylinder C1');
    expect(check(rule, layout(bar(0.01, { kind: 'panel' })))).toEqual([]);
    expect(check(rule, layout(bar(0.01, {}, { runs: [] })))).toEqual([]);
  });

  test.each(PLACINGS)('its cure moves a nozzle that comes nearest away, and stops nothing new: %o', (placing) => {
    const plan = placedPlan(layout(bar(0.1 + HALF_m, {}, { runs: [], nozzles: [{ at: at3(3, 2, 2.5), holes_rad: [0, Math.PI] }] })), placing);
    expectCured(rule, plan, 'move-nozzle');
  });

  test('pipe is led elsewhere by hand', () => {
    expect(checkOne(rule, layout(bar(0.1))).cure).toMatchObject({ kind: 'advice', text: expect.stringContaining('farther away') });
  });
});
