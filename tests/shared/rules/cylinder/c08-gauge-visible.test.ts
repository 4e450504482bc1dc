import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { c08GaugeVisible as rule } from '#shared/rules/cylinder/c08-gauge-visible';
import { type LayoutSpec, type Placing, anyPlacing, check, placed, placedAngle_rad, placedLayout } from '../../../support/layout.ts';

const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };
const FOOT_m = 0.3048;
const SIGHT_m = 3 * FOOT_m;

/** A cylinder at (0.2, 2) in a room 6 by 4, its gauge facing east at 1.5 m. */
function gauged(spec: LayoutSpec = {}, { height_m = 1.5, facing_rad = 0, placing = HERE } = {}) {
  const plan = placedLayout({ ...spec, limits: { cylinderDiameter_m: 0.3, outletHeight_m: 1.7, ...spec.limits } }, placing);
  const cylinders = Object.values(plan.networks.net?.cylinders ?? {});
  cylinders.forEach((cylinder, i) => {
    cylinder.at = { ...placed({ x: 0.2, y: 2 + i * 0.4 }, placing) };
    cylinder.gauge = { height_m, facing_rad: placedAngle_rad(facing_rad, placing) };
  });
  return plan;
}
const first = (plan: ReturnType<typeof gauged>) => check(rule, plan)[0];
const box = (away: number, bottom_m = 0, top_m = 2): LayoutSpec => ({ obstructions: [{ kind: 'cabinet', footprint: rectangle(0.5, 1, planPoint(0.2 + away, 1.5)), bottom_m, top_m }] });

describe('C8', () => {
  test.each([
    ['3 ft', 3 * FOOT_m, 'ok'],
    ['just lower', 3 * FOOT_m - 1e-4, 'warn'],
    ['5.5 ft', 5.5 * FOOT_m, 'ok'],
    ['just higher', 5.5 * FOOT_m + 1e-4, 'warn'],
  ])('a gauge at %s', (_, height_m, verdict) => {
    expect(first(gauged({}, { height_m }))?.verdict).toBe(verdict);
  });

  test.each([
    ['at the limit', SIGHT_m, 'ok'],
    ['just farther', SIGHT_m + 1e-4, 'ok'],
    ['just nearer', SIGHT_m - 1e-4, 'warn'],
  ])('a cabinet before it, %s', (_, away, verdict) => {
    expect(first(gauged(box(away)))?.verdict).toBe(verdict);
  });

  test('only what crosses the height of the gauge hides it', () => {
    expect(first(gauged(box(0.4, 0, 1.49)))?.verdict).toBe('ok');
    expect(first(gauged(box(0.4, 1.51, 2)))?.verdict).toBe('ok');
    expect(first(gauged(box(0.4, 0, 1.5)))).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.4, 9) });
  });

  test('a gauge that faces its wall, or stands inside a thing', () => {
    expect(first(gauged({}, { facing_rad: Math.PI }))).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.2, 9), text: expect.stringContaining('the wall') });
    expect(first(gauged(box(-0.3)))).toMatchObject({ verdict: 'warn', measured: 0 });
  });

  test('the cylinder beside it hides it, unless it is lower than the gauge', () => {
    const north = { facing_rad: Math.PI / 2 };
    // From its axis to the near side of a circle of 0.15 around 0.4 on: 0.25.
    expect(first(gauged({ cylinders: 2 }, north))).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.25, 9), text: expect.stringContaining('C2') });
    expect(first(gauged({ cylinders: 2, limits: { outletHeight_m: 1.4 } }, north))?.verdict).toBe('ok');
    expect(first(gauged({ cylinders: 2, limits: { cylinderDiameter_m: null } }, north))?.text).toContain('diameter');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(first(gauged(box(SIGHT_m + 1e-6), { placing }))?.verdict).toBe('ok');
        expect(first(gauged(box(SIGHT_m - 1e-6), { placing }))?.verdict).toBe('warn');
      }),
    );
  });

  test('no gauge, or no room around it, is not checked', () => {
    const blank = gauged();
    const [cylinder] = Object.values(blank.networks.net?.cylinders ?? {});
    if (!cylinder) throw new Error('The layout has its cylinder.');
    cylinder.at = { x: 50, y: 50 };
    expect(first(blank)?.text).toContain('stands in no drawn room');
    cylinder.gauge = null;
    expect(first(blank)).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('gauge') });
  });
});
