import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { n06NearWallShot as rule } from '#shared/rules/nozzle/n06-near-wall-shot';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const rad = (deg: number): number => (deg * Math.PI) / 180;
const limits = { nearWallZone_m: 0.9, nearWallAngle_rad: rad(10), cornerZone_m: 1.5 };
/** Half a metre off the middle of the south wall, which runs east-west. */
const byWall = (hole_deg: number, y = 0.5) => ({ nozzles: [{ at: at3(3, y, 2.5), holes_rad: [rad(hole_deg), rad(hole_deg + 180)] }], limits });

describe('N6', () => {
  test.each([
    ['along the wall', 0, 'ok', 0],
    ['on the tolerance', 10, 'ok', 10],
    ['on the tolerance, other way', -10, 'ok', 10],
    ['just beyond', 10.1, 'stop', 10.1],
    ['at the wall', 90, 'stop', 90],
  ])('%s', (_, hole_deg, verdict, off_deg) => {
    const finding = checkOne(rule, layout(byWall(hole_deg)));
    expect(finding.verdict).toBe(verdict);
    expect(finding.measured).toBeCloseTo(rad(off_deg), 9);
  });

  test.each([
    ['on the edge of the zone', 0.9, 'stop'],
    ['just outside the zone', 0.901, 'ok'],
  ])('%s', (_, y, verdict) => {
    expect(checkOne(rule, layout(byWall(90, y))).verdict).toBe(verdict);
  });

  test('an angle just beyond the tolerance never prints as the tolerance', () => {
    expect(checkOne(rule, layout(byWall(10.03))).text).toContain('10.03° off parallel to the wall 500 mm away, and 10° is allowed');
  });

  test('in a corner the corner rule governs instead', () => {
    const nozzles = [{ at: at3(0.5, 0.5, 2.5), holes_rad: [rad(90)] }];
    expect(checkOne(rule, layout({ nozzles, limits })).verdict).toBe('ok');
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(9.9, 10, 10.1), (placing, off_deg) => {
        expect(checkOne(rule, placedLayout(byWall(off_deg), placing)).verdict).toBe(off_deg > 10 ? 'stop' : 'ok');
      }),
    );
  });

  test('its cure turns the nozzle to where the rule is kept', () => {
    const plan = layout(byWall(60));
    const { cure } = checkOne(rule, plan);
    const nozzle = plan.networks.net?.nozzles.n1;
    expect(cure?.kind).toBe('turn-nozzle');
    if (cure?.kind === 'turn-nozzle' && nozzle) nozzle.rotation_rad = cure.rotation_rad;
    expect(checkOne(rule, plan).verdict).toBe('ok');
  });

  test('blank figures, no holes or no enclosure are not checked', () => {
    for (const key of ['nearWallZone_m', 'nearWallAngle_rad', 'cornerZone_m'] as const) {
      expect(checkOne(rule, layout({ ...byWall(0), limits: { ...limits, [key]: null } })).verdict).toBe('not-checked');
    }
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(3, 0.5, 2.5), holes_rad: [] }], limits })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout(byWall(0, -2))).verdict).toBe('not-checked');
  });
});
