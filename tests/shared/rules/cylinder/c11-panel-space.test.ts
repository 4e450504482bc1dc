import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { c11PanelSpace as rule } from '#shared/rules/cylinder/c11-panel-space';
import { type LayoutSpec, type Placing, anyPlacing, at3, checkOne, placed, placedAngle_rad, placedLayout } from '../../../support/layout.ts';

const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };
const IN_m = 0.0254;

/** A panel 20 in wide and 6 in deep on the west wall of a room 6 by 4, its middle at y 2, opening east; cylinders at places. */
function panelWith(spec: LayoutSpec & { readonly cylinderAt?: readonly { x: number; y: number }[]; readonly front_rad?: number | null; readonly width_in?: number; readonly top_m?: number }, placing = HERE) {
  const { cylinderAt = [], front_rad = 0, width_in = 20, top_m = 1.9, ...rest } = spec;
  const plan = placedLayout(
    {
      ...rest,
      cylinders: cylinderAt.length,
      obstructions: [{ kind: 'panel', footprint: rectangle(6 * IN_m, width_in * IN_m, planPoint(0, 2 - (width_in / 2) * IN_m)), bottom_m: 0.6, top_m }, ...(rest.obstructions ?? [])],
      limits: { cylinderDiameter_m: 0.3, outletHeight_m: 1.6, ...rest.limits },
    },
    placing,
  );
  const panel = plan.levels['level-0']?.obstructions.o1;
  if (panel && front_rad !== null) panel.front_rad = placedAngle_rad(front_rad, placing);
  Object.values(plan.networks.net?.cylinders ?? {}).forEach((cylinder, i) => {
    cylinder.at = { ...placed(cylinderAt[i] ?? { x: 0, y: 0 }, placing) };
  });
  return plan;
}
const verdict = (...given: Parameters<typeof panelWith>) => checkOne(rule, panelWith(...given)).verdict;
/** The front of the panel lies at x 6 in; its space ends 36 in on, at x 42 in. */
const END_m = 42 * IN_m;

describe('C11', () => {
  test.each([
    ['just beyond the depth', END_m + 0.15, 'ok'],
    ['a little in it', END_m + 0.15 - 1e-4, 'stop'],
  ])('a cylinder straight ahead, %s', (_, x, expected) => {
    expect(verdict({ cylinderAt: [{ x, y: 2 }] })).toBe(expected);
  });

  test('the width may lie off the middle, but takes in the whole panel', () => {
    // One cylinder beside it: 30 in fit on its other side.
    expect(verdict({ cylinderAt: [{ x: 0.5, y: 2 + 10 * IN_m + 0.15 }] })).toBe('ok');
    expect(verdict({ cylinderAt: [{ x: 0.5, y: 2 + 10 * IN_m + 0.15 - 1e-4 }] })).toBe('stop');
  });

  test.each([
    ['30 in apart', 30, 'ok'],
    ['just less', 30 - 0.01, 'stop'],
  ])('two cylinders %s', (_, apart_in, expected) => {
    const half = (apart_in / 2) * IN_m + 0.15;
    const found = checkOne(rule, panelWith({ cylinderAt: [{ x: 0.5, y: 2 - half }, { x: 0.6, y: 2 + half }] }));
    expect(found).toMatchObject({ verdict: expected, measured: expect.closeTo(apart_in * IN_m, 9), limit: expect.closeTo(30 * IN_m, 9) });
  });

  test('a panel wider than 30 in asks for its own width', () => {
    const half = 17 * IN_m + 0.15;
    const found = checkOne(rule, panelWith({ width_in: 36, cylinderAt: [{ x: 0.5, y: 2 - half }, { x: 0.6, y: 2 + half }] }));
    expect(found).toMatchObject({ verdict: 'stop', limit: expect.closeTo(36 * IN_m, 9) });
  });

  test('pipe counts below 6 ft 6 in with its whole thickness, and not above', () => {
    // 3/4 in pipe is 26.7 mm outside (ASME B36.10M).
    const outside_m = 0.0267;
    const over = (z: number): LayoutSpec => ({ runs: [{ places: [at3(0.6, 0.5, z), at3(0.6, 3.5, z)] }] });
    expect(verdict(over(78 * IN_m + outside_m / 2 + 1e-3))).toBe('ok');
    expect(verdict(over(78 * IN_m + outside_m / 2 - 1e-3))).toBe('stop');
    expect(verdict(over(1))).toBe('stop');
    expect(verdict({ ...over(78 * IN_m + outside_m / 2 + 1e-3), top_m: 2.1 })).toBe('stop');
  });

  test('pipe that only passes the side of it', () => {
    expect(verdict({ runs: [{ places: [at3(0.1, 3, 1), at3(5, 3, 1)] }] })).toBe('ok');
    expect(verdict({ runs: [{ places: [at3(0.1, 3, 1), at3(1.5, 1, 1)] }] })).toBe('stop');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(verdict({ cylinderAt: [{ x: END_m + 0.15 + 1e-6, y: 2 }] }, placing)).toBe('ok');
        expect(verdict({ cylinderAt: [{ x: END_m + 0.15 - 1e-6, y: 2 }] }, placing)).toBe('stop');
      }),
    );
  });

  test('its front, a cylinder’s size or the way of an assembly not known: not checked', () => {
    expect(checkOne(rule, panelWith({ front_rad: null })).text).toContain('which way it opens');
    expect(checkOne(rule, panelWith({ cylinderAt: [{ x: 2, y: 3 }], limits: { cylinderDiameter_m: null } })).text).toContain('diameter');
    const hose = { id: 'h', kind: 'hose' as const, name: 'Hose', length_m: 0.6, setPressure_Pa: null, arrowDownstream: true };
    expect(checkOne(rule, panelWith({ cylinderAt: [{ x: 2, y: 3 }], network: { assembly: [hose] } })).text).toContain('discharge assembly');
    expect(verdict({ cylinderAt: [{ x: 5.8, y: 3.8 }], network: { assembly: [hose] } })).toBe('ok');
  });

  test('nothing near it is kept', () => {
    expect(checkOne(rule, panelWith({}))).toMatchObject({ verdict: 'ok', text: expect.stringContaining('free of cylinders') });
  });
});
